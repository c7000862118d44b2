/**
 * What SQLite means to do for a search: look things up, never read a table of thousands from end to end. The statements
 * are those that the search really ran. https://sqlite.org/eqp.html
 */
import { afterAll, beforeAll, expect, test } from 'vitest';

import type { DamageTag } from '#shared-types/search.ts';

import { openEngineOverWorld, type EngineOverWorld } from '../support/engine-for-test.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';

let folder: string;
let opened: EngineOverWorld;
beforeAll(async () => {
  folder = makeTemporaryFolder();
  opened = await openEngineOverWorld(folder, 72, {
    cases: 6,
    findings: [3, 4],
    photos: [2, 3],
    marks: [2, 4],
  });
});
afterAll(async () => {
  await opened.engine.close();
  removeFolder(folder);
});

/** Each step of the plan of each statement that the work ran, with the statement. */
async function stepsOf(work: () => Promise<unknown>): Promise<{ sql: string; step: string }[]> {
  const { db } = opened.engine;
  const texts = new Set<string>();
  const prepare = db.prepare;
  db.prepare = (source: string) => {
    texts.add(source);
    return prepare(source);
  };
  try {
    await work();
  } finally {
    db.prepare = prepare;
  }
  return [...texts].flatMap((sql) => {
    const named = Object.fromEntries((sql.match(/@\w+/g) ?? []).map((name) => [name.slice(1), null]));
    const values = sql.includes('@') ? [named] : (sql.match(/\?/g) ?? []).map(() => null);
    return db
      .prepare<unknown[], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`)
      .all(...values)
      .map(({ detail }) => ({ sql, step: detail }));
  });
}

/** What may be read from its first row on. */
const fewOrIndexed = [
  // The full text index itself, for one MATCH.
  /^SCAN search_text VIRTUAL TABLE INDEX \d+:M/,
  // The few photos that a statement has just picked itself.
  /^SCAN s$/,
  // The journal's newest line, and no other.
  /^SCAN journal$/,
];
/** The machine kinds of a library: one for each version that cases were opened with. */
const ofMachineKinds = (sql: string, step: string) =>
  step.startsWith('SCAN p') && sql.includes('FROM pack p');

const endToEnd = (steps: readonly { sql: string; step: string }[]) =>
  steps.filter(
    ({ sql, step }) =>
      (step.startsWith('SCAN') || step.includes('AUTOMATIC')) &&
      !fewOrIndexed.some((one) => one.test(step)) &&
      !ofMachineKinds(sql, step),
  );

const anything: DamageTag = { component: null, zone: null, kind: null, class: null, presence: null };

test('the first search reads cases by their rows and findings by the index of tags alone', async () => {
  const { engine } = opened;
  const steps = await stepsOf(() => engine.ask('search.known-tags', {}));
  expect(steps.map(({ step }) => step)).toContain('SEARCH c USING INTEGER PRIMARY KEY (rowid>?)');
  expect(steps.map(({ step }) => step)).toContain(
    'SEARCH f USING COVERING INDEX finding_by_part (component=?)',
  );
  expect(steps.map(({ step }) => step)).toContain(
    'SEARCH finding USING COVERING INDEX finding_by_part (component>?)',
  );
  expect(endToEnd(steps)).toEqual([]);
});

test('by words, identifiers, files, tags and filters, with what is shown of the cases', async () => {
  const { engine, world } = opened;
  const text = `thrust ${world.cases[0]!.draft.unit.serial} "wear" ${world.cases[0]!.photos[0]!.name}`;
  const filters = { component: ['thrust-bearing'], outcome: ['undetermined' as const] };
  const steps = await stepsOf(async () => {
    await engine.ask('search.cases', { text, tags: [{ ...anything, kind: 'worn-away' }], filters });
    await engine.ask('search.cases', { text: 'the', tags: [] });
    await engine.ask('search.cases', { text: '', tags: [{ ...anything, class: 'primary' }] });
    await engine.ask('search.cases', { text: world.cases[0]!.photos[0]!.name, tags: [] });
    await engine.ask('search.counts', {
      text,
      tags: [],
      filters,
      asker: '00000000-0000-4000-8000-000000000001',
    });
  });
  expect(steps.some(({ step }) => step.startsWith('SCAN search_text VIRTUAL TABLE'))).toBe(true);
  expect(steps.filter(({ step }) => step.includes('photo_by_name'))).toHaveLength(2);
  expect(endToEnd(steps)).toEqual([]);
});

test('after a write only the case that was written to is read again', async () => {
  const { engine, world } = opened;
  const { id: caseId } = world.cases[2]!;
  await engine.ask('search.known-tags', {});
  await engine.ask('cases.change', { caseId, revision: 2, fields: { customer: 'Quayside Pumps' } });
  const steps = await stepsOf(() => engine.ask('search.cases', { text: 'quayside', tags: [] }));
  expect(steps.map(({ step }) => step)).toEqual(
    expect.arrayContaining([
      'SEARCH j USING INTEGER PRIMARY KEY (rowid>?)',
      'SEARCH c USING INTEGER PRIMARY KEY (rowid=?)',
    ]),
  );
  expect(steps.map(({ step }) => step)).not.toContain('SEARCH c USING INTEGER PRIMARY KEY (rowid>?)');
  expect(endToEnd(steps)).toEqual([]);
});
