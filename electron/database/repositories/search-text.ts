/** Finding cases by what was written in them: by words, and by pieces of serial and part numbers. */
import type { Presence } from '#shared-types/finding.ts';
import type { Excerpt } from '#shared-types/search.ts';

import type { Db } from '../open-library.ts';

export type TextMatch = {
  readonly caseRow: number;
  readonly subject: 'case' | 'photo' | 'finding';
  readonly excerpt: Excerpt;
  /** Of the finding, where the subject is one. */
  readonly presence: Presence | null;
};

/** How well a case fits: the lower, the better. SQLite's bm25() stays above -25 for these weights. */
export type CaseFit = { readonly caseRow: number; readonly score: number };

/** FTS5 cuts what stands in quotes into words itself: nothing in it is taken for a command of its query language. */
const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
const beginning = (word: string) => `${quoted(word)}*`;

/**
 * Cases in which something written has a word that is, or begins with, `word`. What is joined in it by hyphens and the
 * like stands side by side in the text too: 26-0147 is not 0147 and 26.
 */
export function casesWithWord(db: Db, word: string): CaseFit[] {
  return db
    .prepare<[string], CaseFit>(
      `WITH fit AS MATERIALIZED (
         SELECT rowid AS id, bm25(search_text, 4.0, 1.0) AS score FROM search_text WHERE search_text MATCH ?
       )
       SELECT d.case_row AS caseRow, min(fit.score) AS score
       FROM fit JOIN search_document d ON d.id = fit.id GROUP BY d.case_row`,
    )
    .all(beginning(word));
}

/** Rows of the cases whose number, model, serial or part number contains `part`: at least three characters. */
export function casesWithIdentifier(db: Db, part: string): number[] {
  if (tooShort(part)) return [];
  return db
    .prepare<[string], number>(
      `SELECT DISTINCT d.case_row FROM search_identifier JOIN search_document d ON d.id = search_identifier.rowid
       WHERE search_identifier MATCH ?`,
    )
    .pluck()
    .all(quoted(part));
}

/** The trigram index knows nothing shorter. */
const tooShort = (part: string) => [...part].length < 3;

/** Marks round a match inside SQLite's answer: characters no text of ours contains. */
const opening = '\u{F0001}';
const closing = '\u{F0002}';

type MarkedRow = {
  caseRow: number;
  subject: TextMatch['subject'];
  excerpt: string;
  presence: Presence | null;
};
const toMatch = (row: MarkedRow): TextMatch => ({ ...row, excerpt: toExcerpt(row.excerpt) });

/** The identifiers of these cases that contain one of the parts. */
export function identifierExcerpts(
  db: Db,
  input: { caseRows: readonly number[]; parts: readonly string[] },
): TextMatch[] {
  const parts = input.parts.filter((part) => !tooShort(part));
  if (parts.length === 0) return [];
  return db
    .prepare<[string, string, string, string], MarkedRow>(
      `SELECT d.case_row AS caseRow, d.subject, NULL AS presence, highlight(search_identifier, 0, ?, ?) AS excerpt
       FROM search_identifier CROSS JOIN search_document d ON d.id = search_identifier.rowid
       WHERE search_identifier MATCH ? AND d.case_row IN (SELECT value FROM json_each(?)) ORDER BY d.id`,
    )
    .all(opening, closing, parts.map(quoted).join(' OR '), JSON.stringify(input.caseRows))
    .map(toMatch);
}

/** What was written round the words in these cases, the best first, at most `most` pieces of each case. */
export function wordExcerpts(
  db: Db,
  input: { caseRows: readonly number[]; words: readonly string[]; most: number },
): TextMatch[] {
  if (input.words.length === 0) return [];
  const query = input.words.map(beginning).join(' OR ');
  // The index is read from end to end, twice: asked about one document at a time it would be begun anew for each.
  const best = db
    .prepare<[string, string, number], number>(
      `WITH fit AS MATERIALIZED (
         SELECT d.id, d.case_row, bm25(search_text, 4.0, 1.0) AS score
         FROM search_text CROSS JOIN search_document d ON d.id = search_text.rowid
         WHERE search_text MATCH ? AND d.case_row IN (SELECT value FROM json_each(?))
       ),
       placed AS (SELECT id, score, row_number() OVER (PARTITION BY case_row ORDER BY score, id) AS place FROM fit)
       SELECT id FROM placed WHERE place <= ? ORDER BY score, id`,
    )
    .pluck()
    .all(query, JSON.stringify(input.caseRows), input.most);
  const matches = db
    .prepare<[string, string, string, string], MarkedRow & { id: number }>(
      `SELECT d.id, d.case_row AS caseRow, d.subject, snippet(search_text, -1, ?, ?, '…', 16) AS excerpt,
         CASE d.subject WHEN 'finding' THEN (SELECT f.presence FROM finding f WHERE f.id = d.subject_row) END
           AS presence
       FROM search_text CROSS JOIN search_document d ON d.id = search_text.rowid
       WHERE search_text MATCH ? AND +search_text.rowid IN (SELECT value FROM json_each(?))`,
    )
    .all(opening, closing, query, JSON.stringify(best));
  const byId = new Map(matches.map(({ id, ...match }) => [id, match]));
  return best.flatMap((id) => byId.get(id) ?? []).map(toMatch);
}

function toExcerpt(marked: string): Excerpt {
  return marked
    .split(opening)
    .flatMap((piece, index) => {
      if (index === 0) return [{ text: piece, matched: false }];
      const [matched = '', rest = ''] = piece.split(closing);
      return [
        { text: matched, matched: true },
        { text: rest, matched: false },
      ];
    })
    .filter((piece) => piece.text !== '');
}
