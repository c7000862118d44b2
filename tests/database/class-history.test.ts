/** The history of classes as the page reads it. */
import { expect, test } from 'vitest';

import type { BenchChange } from '#shared-types/bench-change.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';

import { engineOverWorld } from '../support/engine-for-test.ts';
import { exampleFinding } from '../support/exchanges.ts';
import { testId } from '../support/open-test-library.ts';

const size = { cases: 2, findings: [0, 0], photos: [1, 1], marks: [0, 0] } as const;
const id = (number: number) => testId<FindingId>(number);
const put = (findingId: FindingId): BenchChange => ({
  change: 'put-finding',
  findingId,
  fields: { ...exampleFinding, class: 'undecided' },
  revision: null,
});

test('every change of class of a case is told, oldest first: from, to, who, when, why', async () => {
  const { engine, world } = await engineOverWorld(31, size);
  const [here, elsewhere] = world.cases.map((one) => one.id);
  await engine.ask('bench.commit', { caseId: here!, changes: [put(id(1)), put(id(2))] });
  await engine.ask('bench.commit', { caseId: elsewhere!, changes: [put(id(3))] });
  const classify = (number: number, revision: number, to: DamageClass, reason: string) =>
    engine.ask('findings.classify', { findingId: id(number), revision, class: to, reason });
  expect(await engine.ask('findings.class-history', { caseId: here! })).toEqual([]);
  await classify(2, 1, 'secondary', 'follows from the worn journals');
  await classify(3, 1, 'unrelated', 'an old dent');
  await classify(1, 1, 'primary', 'first in time');
  await classify(2, 2, 'primary', 'the journals are sound');

  const told = await engine.ask('findings.class-history', { caseId: here! });
  const who = 'M. Sundgren';
  expect(told.map(({ at: _, ...change }) => change)).toEqual([
    { findingId: id(2), who, from: 'undecided', to: 'secondary', reason: 'follows from the worn journals' },
    { findingId: id(1), who, from: 'undecided', to: 'primary', reason: 'first in time' },
    { findingId: id(2), who, from: 'secondary', to: 'primary', reason: 'the journals are sound' },
  ]);
  const instants = engine.db
    .prepare<[], string>('SELECT at FROM finding_class_change ORDER BY id')
    .pluck()
    .all();
  expect(told.map(({ at }) => at)).toEqual([instants[0], instants[2], instants[3]]);
});

test('that of a finding that was removed since is told as well', async () => {
  const { engine, world } = await engineOverWorld(32, size);
  const caseId = world.cases[0]!.id;
  await engine.ask('bench.commit', { caseId, changes: [put(id(1))] });
  await engine.ask('findings.classify', { findingId: id(1), revision: 1, class: 'primary', reason: 'first' });
  await engine.ask('bench.commit', {
    caseId,
    changes: [{ change: 'remove-finding', findingId: id(1), revision: 2 }],
  });
  expect(await engine.ask('findings.class-history', { caseId })).toMatchObject([
    { findingId: id(1), from: 'undecided', to: 'primary', reason: 'first' },
  ]);
});

test('of a case that is not there nothing is told', async () => {
  const { engine } = await engineOverWorld(33, size);
  const refusal = await engine.refusalOf('findings.class-history', { caseId: testId(99) });
  expect(refusal).toMatchObject({ code: 'not-found' });
});
