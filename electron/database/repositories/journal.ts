/** The append-only journal: each line's hash covers the line and the hash before it, so a rewritten line shows. */
import canonicalize from 'canonicalize';
import { createHash } from 'node:crypto';

import type { CaseId } from '#shared-types/ids.ts';
import type { JournalCheck, JournalEntry } from '#shared-types/journal.ts';
import type { Instant } from '#shared-types/times.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow } from './written-row.ts';

export type JournalLine = {
  readonly at: Instant;
  readonly who: string;
  readonly caseId: CaseId | null;
  readonly what: string;
  readonly details: Readonly<Record<string, unknown>>;
};

type Row = {
  number: number;
  at: string;
  who: string;
  case_uuid: string | null;
  what: string;
  details: string;
  previous_hash: string;
  hash: string;
};

/** What stands before the first line. */
export const journalBeginning = '0'.repeat(64);

const toEntry = (row: Row): JournalEntry => ({
  number: row.number,
  at: row.at as Instant,
  who: row.who,
  caseId: row.case_uuid as CaseId | null,
  what: row.what,
  details: JSON.parse(row.details) as Record<string, unknown>,
  previousHash: row.previous_hash,
  hash: row.hash,
});

/** SHA-256 over the RFC 8785 canonical JSON of the line, its number and the hash before it. */
export function hashLine(line: JournalLine & { number: number; previousHash: string }): string {
  const { number, at, who, caseId, what, details, previousHash } = line;
  const text = canonicalize({ number, at, who, caseId, what, details, previousHash });
  return createHash('sha256')
    .update(text ?? '')
    .digest('hex');
}

/** Call it inside the transaction that does what the line tells. */
export function appendToJournal(db: Db, line: JournalLine): void {
  const last = lastLine(db);
  const number = (last?.number ?? 0) + 1;
  const previousHash = last?.hash ?? journalBeginning;
  const hash = hashLine({ ...line, number, previousHash });
  const result = db
    .prepare(
      `INSERT INTO journal (number, at, who, case_uuid, what, details, previous_hash, hash)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    )
    .run(number, line.at, line.who, line.caseId, line.what, JSON.stringify(line.details), previousHash, hash);
  assertOneRow(result, 'journal line');
}

export function journalHead(db: Db): { entries: number; head: string } {
  const last = lastLine(db);
  return { entries: last?.number ?? 0, head: last?.hash ?? journalBeginning };
}

function lastLine(db: Db): Row | undefined {
  return db.prepare<[], Row>('SELECT * FROM journal ORDER BY number DESC LIMIT 1').get();
}

/** The newest lines first; of one case, or of the whole library. */
export function listJournal(db: Db, input: { caseId: CaseId | null; most: number }): JournalEntry[] {
  const rows =
    input.caseId === null
      ? db.prepare<[number], Row>('SELECT * FROM journal ORDER BY number DESC LIMIT ?').all(input.most)
      : db
          .prepare<[string, number], Row>(
            'SELECT * FROM journal WHERE case_uuid = ? ORDER BY number DESC LIMIT ?',
          )
          .all(input.caseId, input.most);
  return rows.map(toEntry);
}

/** Reads every line and says where the chain first breaks: a changed, missing or inserted line. */
export function checkJournal(db: Db): JournalCheck {
  let expectedNumber = 1;
  let previousHash = journalBeginning;
  for (const row of db.prepare<[], Row>('SELECT * FROM journal ORDER BY number').iterate()) {
    const entry = toEntry(row);
    const sound =
      entry.number === expectedNumber &&
      entry.previousHash === previousHash &&
      hashLine(entry) === entry.hash;
    if (!sound) return { ...journalHead(db), brokenAt: expectedNumber };
    expectedNumber += 1;
    previousHash = entry.hash;
  }
  return { ...journalHead(db), brokenAt: null };
}
