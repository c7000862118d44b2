/** The full text: on which pages words stand, and what stands there. */
import type { FoundExcerpt } from '#shared-types/search.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import { goesOn, type SearchItem } from '#analysis/search/search-text.ts';

import type { Db } from '../open-library.ts';

/** FTS5 cuts what stands in quotes into words itself: nothing in it is taken for a command of its query language. */
const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;

/**
 * Numbers of the pages on which the item stands, in rising order. What is joined in it by hyphens and the like stands
 * side by side in the text too: 26-0147 is not 0147 and 26.
 * @param whole its last word must be a whole one, where otherwise a longer one would do
 */
export function pagesWith(db: Db, item: SearchItem, whole: boolean): number[] {
  const query = `${quoted(item.written)}${goesOn(item) && !whole ? '*' : ''}`;
  return db
    .prepare<[string], number>('SELECT rowid FROM search_text WHERE search_text MATCH ? ORDER BY rowid')
    .pluck()
    .all(query);
}

export type SearchDocument = {
  readonly subject: Extract<FoundExcerpt['where'], 'case' | 'finding' | 'photo' | 'party' | 'custody'>;
  readonly row: number;
  readonly title: string;
  readonly body: string;
};

/** What the things on one page say. */
export function readPage(db: Db, page: number): SearchDocument[] {
  return db
    .prepare<[number], SearchDocument>(
      `SELECT subject, subject_row AS row, title, body FROM search_document WHERE page = ? ORDER BY subject_row`,
    )
    .all(page);
}

export type NamedPhoto = { readonly caseRow: number; readonly photoId: PhotoId; readonly name: string };

/** Photos from a file of this name, with or without its ending, whatever the case of its letters from A to Z. */
export function photosFromFile(db: Db, name: string): NamedPhoto[] {
  return db
    .prepare<[{ name: string }], NamedPhoto>(
      `SELECT p.case_row AS caseRow, p.uuid AS photoId, p.source_name AS name FROM photo p
       WHERE p.source_name COLLATE NOCASE = @name AND p.removed_at IS NULL
       UNION ALL
       SELECT p.case_row, p.uuid, p.source_name FROM photo p
       WHERE p.source_name COLLATE NOCASE >= @name || '.' AND p.source_name COLLATE NOCASE < @name || '/'
         AND p.removed_at IS NULL`,
    )
    .all({ name });
}

/** The public id of a photo. */
export function photoIdOf(db: Db, row: number): PhotoId | null {
  return db.prepare<[number], PhotoId>('SELECT p.uuid FROM photo p WHERE p.id = ?').pluck().get(row) ?? null;
}
