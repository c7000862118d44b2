/** A library that cannot be opened is left as it is, and the program ends with a sentence that says why. */
import Database from 'better-sqlite3';
import { chmodSync, cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { lockLibrary } from '../../electron/database/library-lock.ts';
import { loadMigrations } from '../../electron/database/migrate.ts';
import { openLibrary } from '../../electron/database/open-library.ts';
import { enterLoopbackHost } from '../support/loopback-client.ts';
import { migrationsFolder, testInstant } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { startHost, traceLines } from './host-process.ts';

const now = () => testInstant;
const databaseOf = (library: string) => join(library, 'library.sqlite');

/** A library as a program with one more migration leaves it. */
function newerLibrary(): string {
  const folder = temporaryFolder();
  const migrations = join(folder, 'migrations');
  cpSync(migrationsFolder, migrations, { recursive: true });
  const next = String(loadMigrations(migrations).length + 1).padStart(4, '0');
  writeFileSync(join(migrations, `${next}-later.sql`), 'CREATE TABLE later (id INTEGER PRIMARY KEY) STRICT;');
  const library = join(folder, 'own');
  mkdirSync(library);
  openLibrary({ folder: library, migrationsFolder: migrations, now }).db.close();
  return library;
}

/** A library that was made with another text of the first migration than is shipped now. */
function editedLibrary(): string {
  const library = temporaryFolder();
  openLibrary({ folder: library, migrationsFolder, now }).db.close();
  const db = new Database(databaseOf(library));
  db.prepare('UPDATE schema_migration SET sha256 = ? WHERE number = 1').run('0'.repeat(64));
  db.close();
  return library;
}

function foreignLibrary(): string {
  const library = temporaryFolder();
  const db = new Database(databaseOf(library));
  db.exec('CREATE TABLE somebody (id INTEGER PRIMARY KEY)');
  db.close();
  return library;
}

describe('a library that this program may not open', () => {
  test.each([
    ['of a newer version', newerLibrary, 'Install the newer version; nothing was changed.'],
    [
      'whose migration was edited',
      editedLibrary,
      'Migration 0001-library.sql of this program is not the one',
    ],
    ['of another program', foreignLibrary, 'is not a Teardown Docket library'],
  ])('%s is refused in a sentence and not changed by a byte', async (_case, make, sentence) => {
    const library = make();
    const before = readFileSync(databaseOf(library));
    const { code, errors } = await startHost(library).gone;
    expect(code).toBe(1);
    expect(errors).toContain(sentence);
    expect(traceLines(errors)).toEqual([]);
    expect(readFileSync(databaseOf(library)).equals(before)).toBe(true);
  });
});

describe('a second program on the same library', () => {
  test('is told which process holds it, and the first goes on', async () => {
    const library = join(temporaryFolder(), 'own');
    const first = startHost(library);
    const { call } = await enterLoopbackHost(await first.address);
    const holder = JSON.parse(readFileSync(join(library, 'lock-holder.json'), 'utf8')) as { pid: number };

    const { code, errors } = await startHost(library).gone;
    expect(code).toBe(1);
    expect(errors).toContain(`process number ${String(holder.pid)}`);
    expect(errors).toContain('Close it there first');
    expect(traceLines(errors)).toEqual([]);

    expect(await call('cases.list', {})).toEqual({ ok: true, value: [] });
    // The process that was named is one of the first program's: it is gone with it, and the library is free.
    first.child.kill('SIGTERM');
    expect((await first.gone).code).toBe(0);
    expect(() => process.kill(holder.pid, 0)).toThrow('ESRCH');
    const third = startHost(library);
    expect(await third.address).toContain('http://127.0.0.1:');
  });
});

describe('a port', () => {
  test('that is taken is said to be, and the library is let go of', async () => {
    const folder = temporaryFolder();
    const first = startHost(join(folder, 'first'));
    const { port } = new URL(await first.address);
    const { code, errors } = await startHost(join(folder, 'second'), { port }).gone;
    expect(code).toBe(1);
    expect(errors).toContain(`Port ${port} of this computer is taken`);
    expect(traceLines(errors)).toEqual([]);
  });

  test.each(['65536', '-1', 'x', '80.5'])('cannot be %s', async (port) => {
    const { code, errors } = await startHost(join(temporaryFolder(), 'own'), { port }).gone;
    expect(code).toBe(2);
    expect(errors).toContain('Usage:');
    expect(traceLines(errors)).toEqual([]);
  });
});

describe('a folder that refuses writing', () => {
  // Root is refused nothing: the program is run as "nobody" (65534) then, and as this user otherwise.
  const user = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};

  function folderThatMay(mode: number): string {
    const folder = temporaryFolder();
    chmodSync(folder, 0o755);
    const library = join(folder, 'own');
    mkdirSync(library);
    chmodSync(library, mode);
    return library;
  }

  async function refusal(library: string): Promise<string> {
    const { code, errors } = await startHost(library, { user }).gone;
    expect(code).toBe(1);
    expect(traceLines(errors)).toEqual([]);
    return errors;
  }

  test('as the library folder', async () => {
    const library = folderThatMay(0o555);
    const errors = await refusal(library);
    expect(errors).toContain(`The library folder refuses to be written to (${library}: permission denied)`);
  });

  test('as the folder that the library folder is to be made in', async () => {
    const library = join(folderThatMay(0o555), 'new');
    expect(await refusal(library)).toContain(`(${library}: permission denied)`);
  });

  test.each(['library.sqlite', 'lock.sqlite', 'lock-holder.json'])('in its file %s only', async (name) => {
    const library = folderThatMay(0o777);
    lockLibrary(library, { program: 'Teardown Docket', since: testInstant }).release();
    openLibrary({ folder: library, migrationsFolder, now }).db.close();
    for (const file of ['library.sqlite', 'lock.sqlite', 'lock-holder.json']) {
      chmodSync(join(library, file), file === name ? 0o444 : 0o666);
    }
    const errors = await refusal(library);
    expect(errors).toContain('The library folder refuses to be written to');
    expect(errors).toContain(join(library, name));
  });
});
