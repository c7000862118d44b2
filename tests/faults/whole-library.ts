/** What must hold of a library whatever happened to the program: nothing half there. */
import Database from 'better-sqlite3';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect } from 'vitest';

import type { Photo } from '#shared-types/photo.ts';
import type { CaseId } from '#shared-types/ids.ts';

import { libraryContent, type LibraryContent } from '../support/library-content.ts';
import type { LibraryWork } from './library-work.ts';

type Row = Readonly<Record<string, unknown>>;

/** The rows as another connection sees them: what is committed, and nothing else. */
export function rowsOf<Shape extends Row = Row>(library: string, sql: string): Shape[] {
  const db = new Database(join(library, 'library.sqlite'), { readonly: true });
  try {
    return db.prepare<[], Shape>(sql).all();
  } finally {
    db.close();
  }
}

export function sha256Of(file: string): string {
  return createHash('sha256').update(readFileSync(file)).digest('hex');
}

/** Names of all originals on disk. */
export function originalsOf(library: string): string[] {
  const folder = join(library, 'originals');
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .flatMap((shelf) => readdirSync(join(folder, shelf)))
    .sort();
}

/** Structure and references of the database, lines of jobs against photos, journal and search against rows. */
export function expectSoundDatabase(library: string): void {
  expect(rowsOf(library, 'PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }]);
  expect(rowsOf(library, 'PRAGMA foreign_key_check')).toEqual([]);
  const photos = rowsOf<{ uuid: string }>(library, 'SELECT uuid FROM photo ORDER BY uuid');
  // Each photo came in by one line of one job, and each such line has its photo.
  const added = "SELECT photo_uuid AS uuid FROM job_item WHERE outcome = 'added' ORDER BY photo_uuid";
  expect(rowsOf(library, added)).toEqual(photos);
  const journal = "SELECT json_extract(details, '$.photo') AS uuid FROM journal WHERE what = 'photo added'";
  expect(rowsOf(library, `${journal} ORDER BY uuid`)).toEqual(photos);
  // A document for every thing that says something, and no other.
  const said = `SELECT page, subject_row, title, body FROM (
    SELECT * FROM case_words UNION ALL SELECT * FROM photo_words UNION ALL SELECT * FROM finding_words)
    WHERE title <> '' OR body <> ''`;
  expect(rowsOf(library, 'SELECT page, subject_row, title, body FROM search_document ORDER BY 1, 2')).toEqual(
    rowsOf(library, `${said} ORDER BY 1, 2`),
  );
  expect(faultOfWordIndex(library)).toBeNull();
  const miscounted =
    "SELECT uuid FROM job WHERE kind = 'photo-import' AND done <> (SELECT count(*) FROM job_item WHERE job_row = job.id)";
  expect(rowsOf(library, miscounted)).toEqual([]);
  expect(rowsOf(library, 'SELECT id FROM blob WHERE id NOT IN (SELECT blob_row FROM photo)')).toEqual([]);
}

/** What the word index finds at odds with the words it was made from, or null. */
function faultOfWordIndex(library: string): string | null {
  const db = new Database(join(library, 'library.sqlite'));
  try {
    // 1 as rank: compared with the content too. https://sqlite.org/fts5.html#the_integrity_check_command
    db.exec("INSERT INTO search_text (search_text, rank) VALUES ('integrity-check', 1)");
    return null;
  } catch (error) {
    return String(error);
  } finally {
    db.close();
  }
}

/** All that the library says, table by table. */
export function contentOf(library: string): LibraryContent {
  const db = new Database(join(library, 'library.sqlite'), { readonly: true });
  try {
    return libraryContent(db);
  } finally {
    db.close();
  }
}

/** Names of the tables that differ. */
export function tablesUnlike(one: LibraryContent, other: LibraryContent): string[] {
  return Object.keys(one).filter((name) => JSON.stringify(one[name]) !== JSON.stringify(other[name]));
}

/** Every photo of the case is whole: its original under its own hash, and both pictures made from it to be had. */
export async function expectWholePhotos(program: LibraryWork, caseId: CaseId): Promise<Photo[]> {
  const photos = await program.call('photos.list', { caseId });
  for (const photo of photos) {
    const original = join(program.library, 'originals', photo.sha256.slice(0, 2), photo.sha256);
    expect(sha256Of(original)).toBe(photo.sha256);
    expect(readFileSync(original).length).toBe(photo.bytes);
    const display = await sharp((await program.picture(photo.derivatives.display)).file).metadata();
    expect([display.width, display.height]).toEqual([photo.displayWidth, photo.displayHeight]);
    const thumbnail = await sharp((await program.picture(photo.derivatives.thumbnail)).file).metadata();
    expect(thumbnail.format).toBeOneOf(['jpeg', 'webp']);
  }
  return [...photos];
}

/** The sweep's report, once it has run; each question is a round trip, so this waits without a clock. */
export async function sweepOf(program: LibraryWork) {
  for (;;) {
    const { sweep } = await program.call('library.overview', {});
    if (sweep !== null) return sweep;
  }
}

export async function expectWholeLibrary(program: LibraryWork, caseId: CaseId): Promise<Photo[]> {
  expectSoundDatabase(program.library);
  expect((await program.call('journal.check', {})).brokenAt).toBeNull();
  return expectWholePhotos(program, caseId);
}
