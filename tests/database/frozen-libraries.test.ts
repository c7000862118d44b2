/** Libraries as earlier versions of the program left them: opened by today's, they say what they said then. */
import { createHash } from 'node:crypto';
import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

import { loadPack } from '#analysis/knowledge/load-pack.ts';

import { loadMigrations, newestMigration } from '../../electron/database/migrate.ts';
import { programFolder } from '../../electron/processes/entry-table.ts';
import { askEverything } from '../support/frozen-library-questions.ts';
import { engineForTest } from '../support/engine-for-test.ts';
import { migrationsFolder } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const fixtures = join(programFolder, 'tests', 'fixtures');
const frozen = readdirSync(fixtures).filter((name) => /^library-\d{4}$/.test(name));

type Expected = Partial<Awaited<ReturnType<typeof askEverything>>>;
const expectedOf = (name: string) =>
  JSON.parse(readFileSync(join(fixtures, name, 'expected.json'), 'utf8')) as Expected;

/** A copy to work on: the frozen one is never opened itself. */
async function opened(name: string) {
  const folder = join(temporaryFolder(), 'library');
  cpSync(join(fixtures, name, 'originals'), join(folder, 'originals'), { recursive: true });
  writeFileSync(
    join(folder, 'library.sqlite'),
    gunzipSync(readFileSync(join(fixtures, name, 'library.sqlite.gz'))),
  );
  return engineForTest(folder);
}

test('there is a frozen library, and it was closed in good order', () => {
  expect(frozen.length).toBeGreaterThan(0);
  for (const name of frozen) {
    expect(readdirSync(join(fixtures, name)).sort()).toEqual([
      'README.md',
      'expected.json',
      'library.sqlite.gz',
      'originals',
    ]);
  }
});

describe.each(frozen)('%s', (name) => {
  test('is brought to the newest structure, after a backup where it was older', async () => {
    const engine = await opened(name);
    const newest = newestMigration(loadMigrations(migrationsFolder));
    const { schemaNumber } = await engine.ask('library.overview', {});
    expect(schemaNumber).toBe(newest);
    expect(existsSync(join(engine.folder, 'backups'))).toBe(Number(name.slice(-4)) < newest);
  });

  test('says what it said', async () => {
    const engine = await opened(name);
    const said = await askEverything(engine);
    // What is known of a thing today may be more than was known then; nothing may be less, or other.
    expect(said).toMatchObject(expectedOf(name));
  });

  test('is whole: its journal, its rows, its full text, its classes’ history', async () => {
    const engine = await opened(name);
    const { db } = engine;
    expect(await engine.ask('journal.check', {})).toMatchObject({ brokenAt: null });
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(db.pragma('foreign_key_check')).toEqual([]);
    expect(() =>
      db.prepare("INSERT INTO search_text (search_text, rank) VALUES ('integrity-check', 1)").run(),
    ).not.toThrow();
    expect(
      db.prepare('SELECT who, from_class, to_class, reason FROM finding_class_change').all(),
    ).toContainEqual({
      who: 'M. Sundgren',
      from_class: 'undecided',
      to_class: 'primary',
      reason: 'nothing is older',
    });
  });

  test('has every original under its hash', async () => {
    const engine = await opened(name);
    const hashes = Object.values(expectedOf(name).cases ?? {}).flatMap(({ photos }) =>
      photos.map(({ sha256 }) => sha256),
    );
    expect(hashes.length).toBeGreaterThan(0);
    for (const sha256 of hashes) {
      const file = readFileSync(join(engine.folder, 'originals', sha256.slice(0, 2), sha256));
      expect(createHash('sha256').update(file).digest('hex')).toBe(sha256);
    }
  });

  test('has its machine kinds, which are still read', async () => {
    const { db } = await opened(name);
    const kept = db.prepare<[], { sha256: string; content: string }>('SELECT * FROM pack').all();
    expect(kept.length).toBeGreaterThan(0);
    for (const { sha256, content } of kept) {
      expect(createHash('sha256').update(content).digest('hex')).toBe(sha256);
      expect(loadPack(content, name).components.map(({ id }) => id)).toContain('thrust-bearing');
    }
  });

  test('is worked on: a finding of its oldest case is changed, and found as it is then', async () => {
    const engine = await opened(name);
    const oldest = (await engine.ask('cases.list', {})).filter(({ status }) => status === 'open').at(-1)!;
    const { findings } = await engine.ask('bench.read', { caseId: oldest.id });
    const { id: findingId, number: _number, revision, ...fields } = findings[0]!;
    await engine.ask('bench.commit', {
      caseId: oldest.id,
      changes: [
        { change: 'put-finding', findingId, fields: { ...fields, note: 'seen again in thaw' }, revision },
      ],
    });
    const { hits } = await engine.ask('search.cases', { text: 'thaw', tags: [] });
    expect(hits.map((hit) => hit.case.id)).toEqual([oldest.id]);
    expect(await engine.ask('journal.check', {})).toMatchObject({ brokenAt: null });
  });
});
