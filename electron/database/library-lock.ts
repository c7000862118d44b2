/**
 * One process at a time holds a library. The lock is a write lock on a database of its own, held for as long as the
 * process lives: the operating system lets go of it however the process ends. Who holds it stands in a file beside
 * it, written once the lock is held.
 */
import Database from 'better-sqlite3';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';

import { AppError, type ErrorDetails } from '#shared-types/errors.ts';

import { asDiskError } from '../files/disk-error.ts';
import { openingError, openToWrite } from './opening-error.ts';

export type LibraryLock = { release(): void };

/**
 * The connections that hold a lock now. A connection that nobody names is closed by the garbage collector, and its
 * lock goes with it: whoever drops what lockLibrary answered still holds the library.
 */
const held = new Set<Database.Database>();

/**
 * @throws AppError library-locked, naming program, process number, computer and time of the holder; disk-refused,
 *   disk-full
 */
export function lockLibrary(folder: string, holder: { program: string; since: string }): LibraryLock {
  const holderFile = join(folder, 'lock-holder.json');
  const file = join(folder, 'lock.sqlite');
  const db = openToWrite({ file, folder }, 250);
  try {
    db.exec('BEGIN IMMEDIATE');
    writeFileSync(holderFile, JSON.stringify({ ...holder, pid: process.pid, host: hostname() }));
  } catch (error) {
    db.close();
    if (isBusy(error)) throw new AppError('library-locked', readHolder(holderFile), { cause: error });
    throw openingError(asDiskError(error, holderFile), { file, folder });
  }
  held.add(db);
  return {
    release() {
      held.delete(db);
      db.exec('ROLLBACK');
      db.close();
    },
  };
}

function isBusy(error: unknown): boolean {
  return error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY');
}

function readHolder(file: string): ErrorDetails {
  const unknown = { program: 'another program', pid: '?', host: 'this computer', since: '?' };
  if (!existsSync(file)) return unknown;
  // The holder may be writing it this very moment: then it is locked by someone we cannot name yet.
  const text = readFileSync(file, 'utf8');
  return text.endsWith('}') ? { ...unknown, ...(JSON.parse(text) as ErrorDetails) } : unknown;
}
