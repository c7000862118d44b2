/** What a repository asserts about every write: exactly one row changed, or a sentence says why not. */
import type { RunResult } from 'better-sqlite3';

import { AppError } from '#shared-types/errors.ts';

import type { Db } from '../open-library.ts';

/** @throws Error when anything but one row was written: a fault of the program, never of the user. */
export function assertOneRow(result: RunResult, what: string): void {
  if (result.changes !== 1) throw new Error(`${what}: ${String(result.changes)} rows written instead of one`);
}

const tables = {
  case: 'teardown_case',
  photo: 'photo',
  finding: 'finding',
  mark: 'mark',
  analyst: 'analyst',
  party: 'party',
  'custody entry': 'custody_entry',
  'box of the chain': 'chain_node',
  'link of the chain': 'chain_link',
} as const;
export type Thing = keyof typeof tables;

/**
 * The row's number behind a public id, checked against the revision the page last saw.
 * @throws AppError not-found, stale-revision
 */
export function rowAtRevision(db: Db, thing: Thing, uuid: string, revision: number): number {
  const found = db
    .prepare<[string], { id: number; revision: number }>(
      `SELECT id, revision FROM ${tables[thing]} WHERE uuid = ?`,
    )
    .get(uuid);
  if (!found) throw new AppError('not-found', { thing });
  if (found.revision !== revision) throw new AppError('stale-revision', { thing }, { retryable: true });
  return found.id;
}

/**
 * A new thing brings an id of its own: one that is there already was put by another window, or by this one before it
 * lost the answer. @throws AppError stale-revision
 */
export function refuseRowThere(db: Db, thing: Thing, uuid: string): void {
  const there = db
    .prepare<[string], number>(`SELECT count(*) FROM ${tables[thing]} WHERE uuid = ?`)
    .pluck()
    .get(uuid);
  if (there !== 0) throw new AppError('stale-revision', { thing }, { retryable: true });
}

/** The row's number behind a public id. @throws AppError not-found */
export function rowOf(db: Db, thing: Thing, uuid: string): number {
  const id = db.prepare<[string], number>(`SELECT id FROM ${tables[thing]} WHERE uuid = ?`).pluck().get(uuid);
  if (id === undefined) throw new AppError('not-found', { thing });
  return id;
}
