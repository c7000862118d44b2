import { cpSync, existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';

import { AppError } from '#shared-types/errors.ts';

import { loadMigrations } from '../../electron/database/migrate.ts';
import { openLibrary } from '../../electron/database/open-library.ts';
import { migrationsFolder, openTestLibrary, testInstant } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const now = () => testInstant;

function errorOf(work: () => unknown): AppError {
  try {
    work();
  } catch (error) {
    if (error instanceof AppError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

/** The program's migrations with one more behind them. */
function migrationsWith(name: string, sql: string): string {
  const folder = join(temporaryFolder(), 'migrations');
  cpSync(migrationsFolder, folder, { recursive: true });
  writeFileSync(join(folder, name), sql);
  return folder;
}

const next = () => loadMigrations(migrationsFolder).length + 1;
const nameOf = (number: number, words: string) => `${String(number).padStart(4, '0')}-${words}.sql`;

describe('a library', () => {
  test('is made with every table STRICT and every write synced', () => {
    const db = openTestLibrary();
    const loose = db
      .prepare<[], { name: string }>(
        `SELECT name FROM pragma_table_list
         WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'`,
      )
      .all();
    expect(loose).toEqual([]);
    // 2 is FULL: https://sqlite.org/pragma.html#pragma_synchronous
    expect(db.pragma('synchronous', { simple: true })).toBe(2);
    expect(db.pragma('foreign_keys', { simple: true })).toBe(1);
    expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
  });

  test('opened again needs no migration and makes no backup', () => {
    const folder = temporaryFolder();
    openLibrary({ folder, migrationsFolder, now }).db.close();
    const again = openLibrary({ folder, migrationsFolder, now });
    expect(again.closedCleanly).toBe(true);
    again.db.close();
    expect(existsSync(join(folder, 'backups'))).toBe(false);
  });

  test('of a newer program is refused with a sentence, and left alone', () => {
    const folder = temporaryFolder();
    const newer = migrationsWith(
      nameOf(next(), 'later'),
      'CREATE TABLE later (id INTEGER PRIMARY KEY) STRICT;',
    );
    openLibrary({ folder, migrationsFolder: newer, now }).db.close();
    const refused = errorOf(() => openLibrary({ folder, migrationsFolder, now }));
    expect(refused.code).toBe('library-newer');
    expect(refused.message).toContain(`number ${String(next())}`);
    expect(refused.message).toContain('Install the newer version');
    const db = new Database(join(folder, 'library.sqlite'), { readonly: true });
    expect(db.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'later'").pluck().get()).toBe(1);
    db.close();
  });

  test('whose applied migration was edited since is refused, naming the file', () => {
    const folder = temporaryFolder();
    const name = nameOf(next(), 'later');
    const before = migrationsWith(name, 'CREATE TABLE later (id INTEGER PRIMARY KEY) STRICT;');
    openLibrary({ folder, migrationsFolder: before, now }).db.close();
    writeFileSync(join(before, name), 'CREATE TABLE later (id INTEGER PRIMARY KEY, more TEXT) STRICT;');
    const refused = errorOf(() => openLibrary({ folder, migrationsFolder: before, now }));
    expect(refused).toMatchObject({ code: 'migration-edited', details: { name } });
  });

  test('is backed up before a pending migration, and stays as it was when that fails', () => {
    const folder = temporaryFolder();
    openLibrary({ folder, migrationsFolder, now }).db.close();
    const broken = migrationsWith(
      nameOf(next(), 'broken'),
      'CREATE TABLE half (id INTEGER PRIMARY KEY) STRICT; INSERT INTO nowhere VALUES (1);',
    );
    const refused = errorOf(() => openLibrary({ folder, migrationsFolder: broken, now }));
    expect(refused.code).toBe('migration-failed');
    expect(readdirSync(join(folder, 'backups'))).toHaveLength(1);
    expect(existsSync(String(refused.details.backup))).toBe(true);
    const { db } = openLibrary({ folder, migrationsFolder, now });
    expect(db.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'half'").pluck().get()).toBe(0);
    db.close();
  });

  test('left with rows that point at nothing by a migration is refused', () => {
    const folder = temporaryFolder();
    const orphaning = migrationsWith(
      nameOf(next(), 'orphans'),
      `INSERT INTO finding_number (case_row, number, finding_uuid) VALUES (99, 1, 'x');`,
    );
    const refused = errorOf(() => openLibrary({ folder, migrationsFolder: orphaning, now }));
    expect(refused.code).toBe('migration-failed');
    expect(refused.message).toContain('point at nothing');
  });

  test('is never taken for one of another program', () => {
    const folder = temporaryFolder();
    const foreign = new Database(join(folder, 'library.sqlite'));
    foreign.exec('CREATE TABLE somebody (id INTEGER PRIMARY KEY)');
    foreign.close();
    expect(errorOf(() => openLibrary({ folder, migrationsFolder, now })).code).toBe('library-not-ours');
    writeFileSync(join(folder, 'library.sqlite'), 'this is no database at all, only words '.repeat(40));
    expect(errorOf(() => openLibrary({ folder, migrationsFolder, now })).code).toBe('library-not-ours');
  });
});
