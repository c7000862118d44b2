/** Somebody who knows how the journal is made rewrites a line of it, hash and all. */
import { expect, test } from 'vitest';

import type { Instant } from '#shared-types/times.ts';

import type { Db } from '../../electron/database/open-library.ts';
import {
  appendToJournal,
  checkJournal,
  hashLine,
  journalHead,
  listJournal,
} from '../../electron/database/repositories/journal.ts';
import { openTestLibrary, testId, testInstant } from '../support/open-test-library.ts';

function journalOf(lines: number): Db {
  const db = openTestLibrary();
  for (let number = 1; number <= lines; number += 1) {
    const line = { at: testInstant, who: 'M. Sundgren', caseId: testId(1), details: { number } };
    appendToJournal(db, { ...line, what: 'photo added' });
  }
  return db;
}

/** Puts the line at another instant, and the hash that such a line has. */
function forge(db: Db, number: number): void {
  const line = listJournal(db, { caseId: null, most: 1_000 }).find((entry) => entry.number === number);
  if (!line) throw new Error(`there is no line ${number}`);
  const at = '2019-01-01T00:00:00.000Z' as Instant;
  db.exec('DROP TRIGGER journal_is_never_changed');
  db.prepare('UPDATE journal SET at = ?, hash = ? WHERE number = ?').run(
    at,
    hashLine({ ...line, at }),
    number,
  );
}

test('a line rewritten with its own hash shows at the next line, which names the hash before it', () => {
  const db = journalOf(5);
  forge(db, 3);
  expect(checkJournal(db).brokenAt).toBe(4);
});

test('the last line rewritten so shows by the head alone, which stands on what was printed', () => {
  const db = journalOf(5);
  const printed = journalHead(db);
  forge(db, 5);
  expect(checkJournal(db).brokenAt).toBeNull();
  expect(journalHead(db).entries).toBe(printed.entries);
  expect(journalHead(db).head).not.toBe(printed.head);
});
