/**
 * Brings a library to the structure this program knows. Migrations are numbered without gaps; each applied one is
 * recorded with the SHA-256 of its file, so that an edited file is refused instead of silently differing.
 */
import type Database from 'better-sqlite3';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

import { AppError } from '#shared-types/errors.ts';

type Db = Database.Database;

export type Migration = {
  readonly number: number;
  readonly name: string;
  readonly sha256: string;
  readonly sql: string;
};

type AppliedMigration = { readonly number: number; readonly name: string; readonly sha256: string };

/** Reads `0001-name.sql` … in order. @throws Error when numbers repeat or leave a gap: a fault of the program. */
export function loadMigrations(folder: string): Migration[] {
  const names = readdirSync(folder)
    .filter((name) => /^\d{4}-[a-z0-9-]+\.sql$/.test(name))
    .sort();
  return names.map((name, index) => {
    const number = Number(name.slice(0, 4));
    if (number !== index + 1) throw new Error(`migration ${name} should be number ${String(index + 1)}`);
    const sql = readFileSync(join(folder, name), 'utf8');
    return { number, name, sql, sha256: createHash('sha256').update(sql).digest('hex') };
  });
}

export function newestMigration(migrations: readonly Migration[]): number {
  return migrations.at(-1)?.number ?? 0;
}

/**
 * @throws AppError library-newer when the library has a migration this program does not know,
 *   migration-edited when a recorded hash differs, migration-failed (with the backup's place) when one cannot be applied.
 */
export function applyMigrations(
  db: Db,
  migrations: readonly Migration[],
  place: { readonly folder: string; readonly now: () => string },
): void {
  const applied = readApplied(db);
  const newest = newestMigration(migrations);
  const found = applied.at(-1)?.number ?? 0;
  if (found > newest) {
    throw new AppError('library-newer', { folder: place.folder, found, known: newest });
  }
  for (const one of applied) {
    const shipped = migrations[one.number - 1];
    if (shipped?.sha256 !== one.sha256) throw new AppError('migration-edited', { name: one.name });
  }
  const pending = migrations.slice(found);
  if (pending.length === 0) return;
  const backup = found === 0 ? '' : backUp(db, place, found);
  for (const migration of pending) applyOne(db, migration, backup, place.now());
}

function readApplied(db: Db): AppliedMigration[] {
  db.exec(
    `CREATE TABLE IF NOT EXISTS schema_migration (
       number INTEGER PRIMARY KEY, name TEXT NOT NULL, sha256 TEXT NOT NULL, applied_at TEXT NOT NULL
     ) STRICT`,
  );
  return db
    .prepare<[], AppliedMigration>('SELECT number, name, sha256 FROM schema_migration ORDER BY number')
    .all();
}

function backUp(
  db: Db,
  place: { readonly folder: string; readonly now: () => string },
  from: number,
): string {
  const folder = join(place.folder, 'backups');
  mkdirSync(folder, { recursive: true });
  const stamp = place.now().replaceAll(/[:.]/g, '-');
  const file = join(folder, `before-migration-from-${String(from).padStart(4, '0')}-${stamp}.sqlite`);
  db.prepare('VACUUM INTO ?').run(file);
  return file;
}

function applyOne(db: Db, migration: Migration, backup: string, at: string): void {
  // Foreign keys can only be switched outside a transaction; they are checked by hand before it commits.
  db.pragma('foreign_keys = OFF');
  try {
    db.transaction(() => {
      db.exec(migration.sql);
      const broken = db.prepare('PRAGMA foreign_key_check').all();
      if (broken.length > 0) throw new Error(`${String(broken.length)} rows point at nothing`);
      db.prepare('INSERT INTO schema_migration (number, name, sha256, applied_at) VALUES (?, ?, ?, ?)').run(
        migration.number,
        migration.name,
        migration.sha256,
        at,
      );
    }).immediate();
  } catch (error) {
    // A full disk is no fault of the migration, and is told as what it is.
    if (error instanceof Error && 'code' in error && error.code === 'SQLITE_FULL') throw error;
    const reason = error instanceof Error ? error.message : String(error);
    throw new AppError('migration-failed', { name: migration.name, reason, backup }, { cause: error });
  } finally {
    db.pragma('foreign_keys = ON');
  }
}
