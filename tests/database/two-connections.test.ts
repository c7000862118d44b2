/** Two connections to one library: neither sees half of what the other writes, and a stale write is told so. */
import { describe, expect, test } from 'vitest';

import { AppError } from '#shared-types/errors.ts';

import { inTransaction, openLibrary } from '../../electron/database/open-library.ts';
import { writeCase } from '../../electron/database/repositories/cases.ts';
import { appendToJournal, checkJournal } from '../../electron/database/repositories/journal.ts';
import { listMarks, removeMark, writeMark } from '../../electron/database/repositories/marks.ts';
import { writePhoto } from '../../electron/database/repositories/photos.ts';
import { fieldsAfterOpening } from '../support/case-fields.ts';
import { migrationsFolder, openTestLibrary, testInstant } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { pourWorld } from '../support/world-through-repositories.ts';
import { makeWorld } from '../support/world.ts';

const size = { cases: 1, findings: [1, 1], photos: [1, 1], marks: [1, 1] } as const;

function twoConnections() {
  const folder = temporaryFolder();
  const world = makeWorld(61, size);
  const { db } = openLibrary({ folder, migrationsFolder, now: () => testInstant });
  pourWorld(db, world);
  db.close();
  const [one, other] = [openTestLibrary(folder), openTestLibrary(folder)];
  // The program waits for its turn; here nobody is going to give it up.
  other.pragma('busy_timeout = 0');
  const here = world.cases[0]!;
  return { one, other, here, mark: here.marks[0]!, photo: here.photos[0]! };
}

const codeOf = (work: () => void) => {
  try {
    work();
  } catch (error) {
    return error instanceof AppError || (error instanceof Error && 'code' in error) ? error.code : error;
  }
  return 'not refused';
};

describe('two connections', () => {
  test('the second to write what both have read is told that it is stale', () => {
    const { one, other, here, mark, photo } = twoConnections();
    const fields = fieldsAfterOpening(here.draft, { outcome: here.outcome, conclusion: 'worn' });
    inTransaction(one, () => {
      writeMark(one, { mark: { ...mark, order: 5 }, revision: 1 });
      writeCase(one, { id: here.id, revision: 2, fields });
      writePhoto(one, { id: photo.id, revision: 2, fields: { ...photo.fields, caption: 'one' } });
    });
    const late = [
      () => {
        writeMark(other, { mark: { ...mark, order: 9 }, revision: 1 });
      },
      () => {
        removeMark(other, { id: mark.id, revision: 1 });
      },
      () => {
        writeCase(other, { id: here.id, revision: 2, fields: { ...fields, conclusion: 'sound' } });
      },
      () => {
        writePhoto(other, { id: photo.id, revision: 2, fields: { ...photo.fields, caption: 'other' } });
      },
    ];
    expect(late.map(codeOf)).toEqual(late.map(() => 'stale-revision'));
    expect(listMarks(other, here.id)).toEqual([{ ...mark, order: 5, revision: 2 }]);
  });

  test('nothing of an unfinished transaction is seen, and none is begun beside it', () => {
    const { one, other, here, mark } = twoConnections();
    inTransaction(one, () => {
      writeMark(one, { mark: { ...mark, order: 5 }, revision: 1 });
      expect(listMarks(other, here.id)).toEqual([{ ...mark, revision: 1 }]);
      const begun = codeOf(() => {
        inTransaction(other, () => undefined);
      });
      expect(begun).toBe('SQLITE_BUSY');
    });
    expect(listMarks(other, here.id)).toEqual([{ ...mark, order: 5, revision: 2 }]);
  });

  test('lines of the journal written by turns make one chain', () => {
    const { one, other } = twoConnections();
    for (const [turn, db] of [one, other, other, one].entries()) {
      inTransaction(db, () => {
        appendToJournal(db, { at: testInstant, who: 'A', caseId: null, what: `turn ${turn}`, details: {} });
      });
    }
    expect(checkJournal(one)).toMatchObject({ brokenAt: null });
    expect(checkJournal(one).head).toBe(checkJournal(other).head);
  });
});
