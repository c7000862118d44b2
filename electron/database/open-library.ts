/** Opens the library's database, sets what SQLite forgets between openings, and brings it to this program's version. */
import type Database from 'better-sqlite3';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

import { AppError } from '#shared-types/errors.ts';

import { reachFaultPoint } from '../processes/fault-point.ts';
import { keepStatements } from './kept-statements.ts';
import { applyMigrations, loadMigrations, newestMigration } from './migrate.ts';
import { openingError, openToWrite } from './opening-error.ts';

export type Db = Database.Database;

/** "TDdo" in ASCII: tells `file` and us that this database is a Teardown Docket library. */
export const applicationId = 0x5464646f;

export const databaseFileName = 'library.sqlite';

/** How long a write waits for another connection's. */
const busyMilliseconds = 5_000;

export type OpenedLibrary = {
  readonly db: Db;
  readonly schemaNumber: number;
  /** False where the last process to hold the library did not close it. */
  readonly closedCleanly: boolean;
};

export type OpenOptions = {
  readonly folder: string;
  readonly migrationsFolder: string;
  /** The instant that a migration applied now is recorded with. */
  readonly now: () => string;
};

/**
 * @param options.folder an existing folder; the database is made there when it has none.
 * @throws AppError library-not-ours, library-newer, library-damaged, migration-edited, migration-failed, disk-refused,
 *   disk-full
 */
export function openLibrary(options: OpenOptions): OpenedLibrary {
  const file = join(options.folder, databaseFileName);
  const isNew = !existsSync(file);
  const closedCleanly = isNew || !existsSync(`${file}-wal`);
  const db = openToWrite({ file, folder: options.folder }, busyMilliseconds);
  try {
    makeReady(db, options.folder);
    if (!closedCleanly) refuseDamagedDatabase(db, options.folder);
    const migrations = loadMigrations(options.migrationsFolder);
    applyMigrations(db, migrations, { folder: options.folder, now: options.now });
    reachFaultPoint('library.migrated');
    keepStatements(db);
    return { db, schemaNumber: newestMigration(migrations), closedCleanly };
  } catch (error) {
    db.close();
    throw error;
  }
}

function makeReady(db: Db, folder: string): void {
  try {
    // First of all that could write: nothing of another program's is changed.
    const empty = db.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() === 0;
    if (!empty && db.pragma('application_id', { simple: true }) !== applicationId) {
      throw new AppError('library-not-ours', { file: db.name });
    }
    db.pragma('journal_mode = WAL');
    // Set at every opening: the switch to WAL leaves it at NORMAL, which may lose the last commits in a power cut.
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    db.pragma('trusted_schema = OFF');
    // Before the first table: a library that was left half made is known as ours again.
    if (empty) db.pragma(`application_id = ${String(applicationId)}`);
  } catch (error) {
    throw error instanceof AppError ? error : openingError(error, { file: db.name, folder });
  }
}

function refuseDamagedDatabase(db: Db, folder: string): void {
  const answer = db.pragma('quick_check(1)', { simple: true });
  if (answer !== 'ok') throw new AppError('library-damaged', { folder, reason: String(answer) });
}

/** Runs `work` in one transaction that takes the write lock at once; all or nothing. */
export function inTransaction<Result>(db: Db, work: () => Result): Result {
  return db.transaction(work).immediate();
}

export function sqliteVersion(db: Db): string {
  return db.prepare<[], string>('SELECT sqlite_version()').pluck().get() ?? '';
}
