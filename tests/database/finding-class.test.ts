/** A finding's class is changed with its reason only, and its number is its own for ever. */
import { describe, expect, test } from 'vitest';

import type { BenchChange } from '#shared-types/bench-change.ts';
import type { DamageClass, FindingFields } from '#shared-types/finding.ts';
import type { FindingId, MarkId } from '#shared-types/ids.ts';

import { engineOverWorld } from '../support/engine-for-test.ts';
import { exampleFinding } from '../support/exchanges.ts';
import { libraryContent } from '../support/library-content.ts';
import { testId } from '../support/open-test-library.ts';
import type { EngineHere } from '../support/world-engine.ts';
import type { WorldCase } from '../support/world.ts';

const size = { cases: 2, findings: [0, 0], photos: [1, 1], marks: [0, 0] } as const;
const id = (number: number) => testId<FindingId>(number);

async function emptyBench(): Promise<{ engine: EngineHere; here: WorldCase; elsewhere: WorldCase }> {
  const { engine, world } = await engineOverWorld(12, size);
  return { engine, here: world.cases[0]!, elsewhere: world.cases[1]! };
}

const put = (
  findingId: FindingId,
  fields: Partial<FindingFields> = {},
  revision: number | null = null,
): BenchChange => ({ change: 'put-finding', findingId, fields: { ...exampleFinding, ...fields }, revision });
const remove = (findingId: FindingId, revision = 1): BenchChange => ({
  change: 'remove-finding',
  findingId,
  revision,
});

type HistoryRow = {
  finding_uuid: string;
  who: string;
  from_class: DamageClass;
  to_class: DamageClass;
  reason: string;
};
const history = ({ db }: EngineHere) =>
  db
    .prepare<[], HistoryRow>(
      'SELECT finding_uuid, who, from_class, to_class, reason FROM finding_class_change ORDER BY id',
    )
    .all();

async function numbers(engine: EngineHere, one: WorldCase): Promise<Record<string, number>> {
  const { findings } = await engine.ask('bench.read', { caseId: one.id });
  return Object.fromEntries(findings.map((finding) => [finding.id, finding.number]));
}

describe('the class of a finding', () => {
  test('is not changed on the way, whatever else of it is', async () => {
    const { engine, here } = await emptyBench();
    const caseId = here.id;
    await engine.ask('bench.commit', { caseId, changes: [put(id(1))] });
    const refusal = await engine.refusalOf('bench.commit', {
      caseId,
      changes: [put(id(1), { class: 'secondary', note: 'more' }, 1)],
    });
    expect(refusal).toMatchObject({ code: 'class-change-needs-reason', details: { number: 1 } });
    expect((await engine.ask('bench.read', { caseId })).findings[0]).toMatchObject({
      class: 'primary',
      note: exampleFinding.note,
      revision: 1,
    });
    await engine.ask('bench.commit', { caseId, changes: [put(id(1), { note: 'more' }, 1)] });
  });

  test('is changed with a reason, and what it was is kept: who, from what, to what, why', async () => {
    const { engine, here } = await emptyBench();
    await engine.ask('bench.commit', { caseId: here.id, changes: [put(id(1))] });
    const classify = (revision: number, to: DamageClass, reason: string) =>
      engine.ask('findings.classify', { findingId: id(1), revision, class: to, reason });
    await classify(1, 'secondary', 'follows from the worn journals');
    const last = await classify(2, 'primary', 'the journals are sound');
    expect(last).toMatchObject({ class: 'primary', revision: 3 });
    const by = { finding_uuid: id(1), who: 'M. Sundgren' };
    expect(history(engine)).toEqual([
      { ...by, from_class: 'primary', to_class: 'secondary', reason: 'follows from the worn journals' },
      { ...by, from_class: 'secondary', to_class: 'primary', reason: 'the journals are sound' },
    ]);
  });

  test('is not changed without a reason, to what it is, from a stale window, or in a withdrawn case', async () => {
    const { engine, here } = await emptyBench();
    await engine.ask('bench.commit', { caseId: here.id, changes: [put(id(1))] });
    const before = libraryContent(engine.db);
    const order = { findingId: id(1), revision: 1, class: 'secondary', reason: 'follows' } as const;
    const refusalOf = async (
      more: Partial<typeof order> | { class: DamageClass } | { reason: string; revision?: number },
    ) => (await engine.refusalOf('findings.classify', { ...order, ...more })).code;
    expect(await refusalOf({ reason: '  ' })).toBe('request-invalid');
    expect(await refusalOf({ class: 'primary' })).toBe('request-invalid');
    expect(await refusalOf({ reason: 'follows', revision: 2 })).toBe('stale-revision');
    expect(libraryContent(engine.db)).toEqual(before);
    await engine.ask('cases.withdraw', { caseId: here.id, revision: 2, reason: 'opened twice' });
    expect(await refusalOf({})).toBe('case-closed');
    expect(history(engine)).toEqual([]);
  });

  test('outlives the finding: brought back, it is what it was, and its history is still there', async () => {
    const { engine, here } = await emptyBench();
    const caseId = here.id;
    await engine.ask('bench.commit', { caseId, changes: [put(id(1), { class: 'undecided' })] });
    await engine.ask('findings.classify', {
      findingId: id(1),
      revision: 1,
      class: 'primary',
      reason: 'first in time',
    });
    await engine.ask('bench.commit', { caseId, changes: [remove(id(1), 2)] });
    expect(history(engine)).toHaveLength(1);
    const otherwise = await engine.refusalOf('bench.commit', {
      caseId,
      changes: [put(id(1), { class: 'undecided' })],
    });
    expect(otherwise.code).toBe('class-change-needs-reason');
    const sameCommit = await engine.refusalOf('bench.commit', {
      caseId,
      changes: [put(id(1), { class: 'primary' }), remove(id(1), 1), put(id(1), { class: 'unrelated' })],
    });
    expect(sameCommit.code).toBe('class-change-needs-reason');
    const back = await engine.ask('bench.commit', { caseId, changes: [put(id(1), { class: 'primary' })] });
    expect(back.findings[0]).toMatchObject({ class: 'primary', number: 1 });
    expect(history(engine)).toHaveLength(1);
  });

  test('its history is never changed or shortened', async () => {
    const { engine, here } = await emptyBench();
    await engine.ask('bench.commit', { caseId: here.id, changes: [put(id(1))] });
    await engine.ask('findings.classify', {
      findingId: id(1),
      revision: 1,
      class: 'secondary',
      reason: 'follows',
    });
    expect(() => engine.db.exec("UPDATE finding_class_change SET reason = 'other'")).toThrow('append-only');
    expect(() => engine.db.exec('DELETE FROM finding_class_change')).toThrow('append-only');
  });
});

describe('the number of a finding', () => {
  test('counts up within its case and is never given twice', async () => {
    const { engine, here, elsewhere } = await emptyBench();
    await engine.ask('bench.commit', { caseId: here.id, changes: [put(id(1)), put(id(2)), put(id(3))] });
    await engine.ask('bench.commit', { caseId: here.id, changes: [remove(id(3)), remove(id(1))] });
    await engine.ask('bench.commit', { caseId: here.id, changes: [put(id(4))] });
    await engine.ask('bench.commit', { caseId: elsewhere.id, changes: [put(id(5))] });
    expect(await numbers(engine, here)).toEqual({ [id(2)]: 2, [id(4)]: 4 });
    expect(await numbers(engine, elsewhere)).toEqual({ [id(5)]: 1 });
  });

  test('is given back to the finding whose removal is undone, in its own case only', async () => {
    const { engine, here, elsewhere } = await emptyBench();
    await engine.ask('bench.commit', { caseId: here.id, changes: [put(id(1)), put(id(2))] });
    await engine.ask('bench.commit', { caseId: here.id, changes: [remove(id(1))] });
    await engine.ask('bench.commit', { caseId: here.id, changes: [put(id(3))] });
    const abroad = await engine.refusalOf('bench.commit', { caseId: elsewhere.id, changes: [put(id(1))] });
    expect(abroad.code).toBe('not-found');
    await engine.ask('bench.commit', { caseId: here.id, changes: [put(id(1))] });
    expect(await numbers(engine, here)).toEqual({ [id(1)]: 1, [id(2)]: 2, [id(3)]: 3 });
  });

  test('a number that a refused commit took is not lost', async () => {
    const { engine, here } = await emptyBench();
    await engine.refusalOf('bench.commit', { caseId: here.id, changes: [put(id(1)), remove(id(9))] });
    await engine.ask('bench.commit', { caseId: here.id, changes: [put(id(2))] });
    expect(await numbers(engine, here)).toEqual({ [id(2)]: 1 });
  });
});

test('a finding with marks is not removed, and the sentence says which it is', async () => {
  const { engine, here } = await emptyBench();
  const caseId = here.id;
  const markId = testId<MarkId>(50);
  await engine.ask('bench.commit', {
    caseId,
    changes: [
      put(id(1)),
      {
        change: 'put-mark',
        revision: null,
        mark: {
          id: markId,
          photoId: here.photos[0]!.id,
          findingId: id(1),
          geometry: { kind: 'arrow', v: 1, tail: { x: 1, y: 2 }, tip: { x: 30, y: 40 } },
          order: 0,
        },
      },
    ],
  });
  const refusal = await engine.refusalOf('bench.commit', { caseId, changes: [remove(id(1))] });
  expect(refusal).toMatchObject({ code: 'finding-in-use', details: { number: 1 } });
  await engine.ask('bench.commit', {
    caseId,
    changes: [{ change: 'remove-mark', markId, revision: 1 }, remove(id(1))],
  });
  expect(await numbers(engine, here)).toEqual({});
});
