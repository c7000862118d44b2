import { describe, expect, test } from 'vitest';

import type { Db } from '../../electron/database/open-library.ts';
import {
  appendToJournal,
  checkJournal,
  hashLine,
  journalBeginning,
  listJournal,
} from '../../electron/database/repositories/journal.ts';
import { openTestLibrary, testId, testInstant } from '../support/open-test-library.ts';

function write(db: Db, what: string): void {
  appendToJournal(db, {
    at: testInstant,
    who: 'M. Sundgren',
    caseId: testId(1),
    what,
    details: { b: 1, a: 'ü' },
  });
}

function journalOf(lines: number): Db {
  const db = openTestLibrary();
  for (let line = 1; line <= lines; line += 1) write(db, `line ${String(line)}`);
  return db;
}

/** Whoever rewrites a line must first take the triggers away: the chain is what shows it then. */
function withoutTriggers(db: Db, sql: string): void {
  db.exec('DROP TRIGGER journal_is_never_changed; DROP TRIGGER journal_is_never_shortened;');
  db.exec(sql);
}

describe('the journal', () => {
  test('hashes the canonical JSON of a line: RFC 8785 key order, SHA-256 of FIPS 180-4', () => {
    // Canonical text written by hand after RFC 8785, section 3.2; its hash computed with sha256sum (GNU coreutils).
    const line = {
      number: 1,
      at: testInstant,
      who: 'A',
      caseId: null,
      what: 'w',
      details: { b: 2, a: 'é' },
      previousHash: journalBeginning,
    };
    expect(hashLine(line)).toBe('51ab555de4e01d9e675f872232ba3d00827c9771de202d84ba85c5c246078749');
  });

  test('holds when nobody touched it, and tells its head', () => {
    const db = journalOf(5);
    const check = checkJournal(db);
    expect(check).toMatchObject({ entries: 5, brokenAt: null });
    expect(listJournal(db, { caseId: null, most: 1 })[0]?.hash).toBe(check.head);
    expect(listJournal(db, { caseId: testId(2), most: 9 })).toEqual([]);
  });

  test('refuses to be changed or shortened', () => {
    const db = journalOf(2);
    expect(() => db.exec("UPDATE journal SET what = 'other' WHERE number = 1")).toThrow('append-only');
    expect(() => db.exec('DELETE FROM journal WHERE number = 2')).toThrow('append-only');
  });

  test.each([
    ['a rewritten line', "UPDATE journal SET details = '{}' WHERE number = 3", 3],
    ['a line taken out', 'DELETE FROM journal WHERE number = 2', 2],
    [
      'two lines exchanged',
      'UPDATE journal SET number = CASE number WHEN 3 THEN -4 WHEN 4 THEN -3 END WHERE number IN (3, 4); UPDATE journal SET number = -number WHERE number < 0',
      3,
    ],
    ['a wrong clock', "UPDATE journal SET at = '2020-01-01T00:00:00.000Z' WHERE number = 5", 5],
  ])('shows %s', (_name, sql, brokenAt) => {
    const db = journalOf(5);
    withoutTriggers(db, sql);
    expect(checkJournal(db).brokenAt).toBe(brokenAt);
  });
});
