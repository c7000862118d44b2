/**
 * What SQLite means to do for the calls that a page makes all the time: look things up, never read a table from end to
 * end. The statements are those that the calls really ran. https://sqlite.org/eqp.html
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { Db } from '../../electron/database/open-library.ts';
import { openEngineOverWorld, type EngineOverWorld } from '../support/engine-for-test.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';

let folder: string;
let opened: EngineOverWorld;
beforeAll(async () => {
  folder = makeTemporaryFolder();
  opened = await openEngineOverWorld(folder, 71, {
    cases: 3,
    findings: [3, 4],
    photos: [2, 3],
    marks: [2, 4],
  });
});
afterAll(async () => {
  await opened.engine.close();
  removeFolder(folder);
});

/** The statements that the work ran, each with the steps of its plan. */
async function plansOf(work: () => Promise<unknown>): Promise<{ sql: string; steps: string[] }[]> {
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
  return [...texts].map((sql) => ({ sql, steps: planOf(db, sql) }));
}

function planOf(db: Db, sql: string): string[] {
  const parameters = new Set(sql.match(/@\w+/g));
  const values = Object.fromEntries([...parameters].map((name) => [name.slice(1), null]));
  const marks = sql.match(/\?/g) ?? [];
  const explained = db.prepare<unknown[], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`);
  return explained
    .all(...(parameters.size > 0 ? [values] : marks.map(() => null)))
    .map(({ detail }) => detail)
    .filter((detail) => /^(SCAN|SEARCH)\b/.test(detail));
}

/** Read from end to end, or by an index made for the occasion; lists made by the statement itself are no table. */
const endToEnd = (step: string) =>
  (step.startsWith('SCAN') || step.includes('AUTOMATIC')) &&
  !/^SCAN (CONSTANT ROW|json_each|fit|placed|\(subquery)/.test(step);

/** Begins to read in the order of the rows and stops at the first: the journal's newest line. */
const firstRowOnly = 'FROM journal ORDER BY number DESC LIMIT 1';

async function readsFromEndToEnd(work: () => Promise<unknown>): Promise<string[]> {
  const plans = await plansOf(work);
  expect(plans.length).toBeGreaterThan(0);
  return plans
    .filter(({ sql }) => !sql.endsWith(firstRowOnly))
    .flatMap(({ sql, steps }) => steps.filter(endToEnd).map((step) => `${step} in ${sql}`));
}

describe('nothing is read from end to end', () => {
  test('to read a case, its photos, its bench and its journal', async () => {
    const { engine, world } = opened;
    const caseId = world.cases[1]!.id;
    expect(
      await readsFromEndToEnd(async () => {
        await engine.ask('cases.read', { caseId });
        await engine.ask('photos.list', { caseId });
        await engine.ask('bench.read', { caseId });
        await engine.ask('journal.list', { caseId, most: 100 });
      }),
    ).toEqual([]);
  });

  test('to draw a mark, enter, change and remove a finding, change a class', async () => {
    const { engine, world } = opened;
    const one = world.cases[0]!;
    const { id: findingId, fields } = one.findings[0]!;
    const caseId = one.id;
    const mark = { ...one.marks[0]!, findingId: null };
    const free = one.findings.find(({ id }) => one.marks.every((each) => each.findingId !== id))!;
    expect(
      await readsFromEndToEnd(async () => {
        await engine.ask('bench.commit', { caseId, changes: [{ change: 'put-mark', mark, revision: 1 }] });
        await engine.ask('bench.commit', {
          caseId,
          changes: [
            { change: 'put-finding', findingId, fields, revision: 1 },
            { change: 'remove-finding', findingId: free.id, revision: free.id === findingId ? 2 : 1 },
            { change: 'put-finding', findingId: free.id, fields: free.fields, revision: null },
          ],
        });
        await engine.ask('findings.classify', {
          findingId: free.id,
          revision: 1,
          class: free.fields.class === 'primary' ? 'secondary' : 'primary',
          reason: 'first in time',
        });
      }),
    ).toEqual([]);
  });

  test('to describe a photo and change a case', async () => {
    const { engine, world } = opened;
    const one = world.cases[2]!;
    const photo = one.photos[0]!;
    expect(
      await readsFromEndToEnd(async () => {
        await engine.ask('photos.change', { photoId: photo.id, revision: 2, fields: photo.fields });
        await engine.ask('cases.change', {
          caseId: one.id,
          revision: 2,
          fields: { customer: 'Skerry Line' },
        });
      }),
    ).toEqual([]);
  });

  test('to keep the full text: the views that the triggers read, for one row, and the page it stands on', () => {
    const { db } = opened.engine;
    for (const view of ['case_words', 'photo_words', 'finding_words', 'party_words', 'custody_words']) {
      const steps = planOf(db, `SELECT * FROM ${view} WHERE subject_row = ?`);
      expect(steps.length).toBeGreaterThan(0);
      expect(steps.filter(endToEnd)).toEqual([]);
    }
    expect(planOf(db, 'SELECT * FROM search_page WHERE id = ?')).toEqual([
      'SEARCH search_document USING PRIMARY KEY (page=?)',
      'SCAN search_page',
    ]);
    const removal = 'DELETE FROM search_document WHERE page = ? AND subject_row = ?';
    expect(planOf(db, removal).filter(endToEnd)).toEqual([]);
  });
});

test('every reference to a row that can be removed is indexed: removing would read the other table from end to end', () => {
  const { db } = opened.engine;
  const unindexed = db
    .prepare<[], string>(
      `SELECT t.name || '.' || f."from" FROM pragma_table_list t JOIN pragma_foreign_key_list(t.name) f
       WHERE t.schema = 'main' AND t.type = 'table' AND NOT EXISTS (
         SELECT 1 FROM pragma_index_list(t.name) i JOIN pragma_index_info(i.name) c
         WHERE c.seqno = 0 AND c.name = f."from")
       ORDER BY 1`,
    )
    .pluck()
    .all();
  // Machine kinds, cases and analysts are never removed.
  expect(unindexed).toEqual(['job.case_row', 'setting.current_analyst_id', 'teardown_case.pack_row']);
});
