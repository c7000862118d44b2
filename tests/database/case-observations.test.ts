/** What a case says of its unit beyond the names: what was seen of it, its life, how it arrived, who has a stake. */
import { cpSync, writeFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

import type { CaseFields, Unit } from '#shared-types/case.ts';
import type { PhotoId } from '#shared-types/ids.ts';

import { programFolder } from '../../electron/processes/entry-table.ts';
import { engineForTest, engineOverWorld } from '../support/engine-for-test.ts';
import { libraryContent } from '../support/library-content.ts';
import { testId } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const size = { cases: 2, findings: [0, 0], photos: [2, 2], marks: [0, 0] } as const;

async function twoCases() {
  const { engine, world } = await engineOverWorld(73, size);
  const [here, elsewhere] = [world.cases[0]!, world.cases[1]!];
  const before = await engine.ask('cases.read', { caseId: here.id });
  const change = (fields: Partial<CaseFields>, revision = before.revision) =>
    ({ caseId: here.id, revision, fields }) as const;
  const observed = (of: Partial<Pick<Unit, 'rotation' | 'thread'>>) =>
    change({ unit: { ...before.unit, ...of } });
  return { engine, here, elsewhere, before, change, observed };
}

const seen = (photoId: PhotoId | null) => ({ sense: 'clockwise', seenFrom: 'from-inlet', photoId }) as const;

describe('the two observations of the unit', () => {
  test('are kept each for itself, with the photo that shows it, and taken back', async () => {
    const { engine, here, before, observed } = await twoCases();
    const rotation = seen(here.photos[0]!.id);
    const first = await engine.ask('cases.change', observed({ rotation }));
    expect(first.unit).toEqual({ ...before.unit, rotation, thread: null });
    const thread = { hand: 'left', photoId: null } as const;
    const second = await engine.ask('cases.change', {
      caseId: here.id,
      revision: first.revision,
      fields: { unit: { ...before.unit, rotation: null, thread } },
    });
    expect(second.unit).toEqual({ ...before.unit, rotation: null, thread });
    expect(await engine.ask('cases.read', { caseId: here.id })).toEqual(second);
  });

  test.each(['right', 'left', 'no-thread'] as const)('a thread seen as %s', async (hand) => {
    const { engine, here, observed } = await twoCases();
    const thread = { hand, photoId: here.photos[1]!.id };
    expect((await engine.ask('cases.change', observed({ thread }))).unit.thread).toEqual(thread);
  });

  test('name a side that the machine kind has', async () => {
    const { engine, observed } = await twoCases();
    const before = libraryContent(engine.db);
    const rotation = { ...seen(null), seenFrom: 'from-bow' };
    expect(await engine.refusalOf('cases.change', observed({ rotation }))).toMatchObject({
      code: 'term-unknown',
      details: { id: 'from-bow' },
    });
    expect(libraryContent(engine.db)).toEqual(before);
  });

  test('name photos of this very case', async () => {
    const { engine, elsewhere, observed } = await twoCases();
    const before = libraryContent(engine.db);
    const foreign = elsewhere.photos[0]!.id;
    for (const photoId of [foreign, testId<PhotoId>(9)]) {
      for (const unit of [{ rotation: seen(photoId) }, { thread: { hand: 'left', photoId } as const }]) {
        expect(await engine.refusalOf('cases.change', observed(unit))).toMatchObject({
          code: 'not-found',
          details: { thing: 'photo' },
        });
      }
    }
    expect(libraryContent(engine.db)).toEqual(before);
  });
});

describe('the life in service', () => {
  const service: CaseFields['service'] = {
    fittedOn: { local: '2025-11-01T00:00:00', offsetMinutes: null, precision: 'month' },
    failedOn: { local: '2026-03-04T14:30:00', offsetMinutes: null, precision: 'minute' },
    timeInService: { value: 4.5, unit: 'months' },
    runningHours: 812.25,
  };

  test('is kept as told, to its precision, and taken back piece by piece', async () => {
    const { engine, here, change } = await twoCases();
    const kept = await engine.ask('cases.change', change({ service }));
    expect(kept.service).toEqual(service);
    const less = { ...service, fittedOn: null, timeInService: null, runningHours: 0 };
    const after = await engine.ask('cases.change', change({ service: less }, kept.revision));
    expect(after.service).toEqual(less);
    expect(await engine.ask('cases.read', { caseId: here.id })).toEqual(after);
  });

  test('is refused where it cannot be', async () => {
    const { engine, change } = await twoCases();
    const before = libraryContent(engine.db);
    for (const part of [{ runningHours: -1 }, { timeInService: { value: -0.5, unit: 'days' } as const }]) {
      const refusal = await engine.refusalOf('cases.change', change({ service: { ...service, ...part } }));
      expect(refusal.code).toBe('request-invalid');
    }
    expect(libraryContent(engine.db)).toEqual(before);
  });
});

test('how it arrived and who has a stake are kept word for word', async () => {
  const { engine, here, change } = await twoCases();
  const fields = {
    stateReceived: '  Oil in the crate.\n\tBoth ports open — “as found”. ',
    interest: { standing: 'declared', words: 'We rebuilt this unit in 2024.\n' },
  } as const;
  const after = await engine.ask('cases.change', change(fields));
  expect(after).toMatchObject(fields);
  expect(await engine.ask('cases.read', { caseId: here.id })).toEqual(after);
});

test('the journal names the fields, not what stands in them', async () => {
  const { engine, here, change } = await twoCases();
  await engine.ask('cases.change', change({ stateReceived: 'oil in the crate' }));
  const [line] = await engine.ask('journal.list', { caseId: here.id, most: 1 });
  expect(line?.details).toEqual({ fields: ['stateReceived'] });
});

test('a library of the first structure says of all this that nothing was said', async () => {
  const frozen = join(programFolder, 'tests', 'fixtures', 'library-0001');
  const folder = join(temporaryFolder(), 'library');
  cpSync(join(frozen, 'originals'), join(folder, 'originals'), { recursive: true });
  writeFileSync(join(folder, 'library.sqlite'), gunzipSync(readFileSync(join(frozen, 'library.sqlite.gz'))));
  const engine = await engineForTest(folder);
  const cases = await engine.ask('cases.list', {});
  expect(cases.length).toBeGreaterThan(0);
  for (const { id: caseId } of cases) {
    expect(await engine.ask('cases.read', { caseId })).toMatchObject({
      unit: { rotation: null, thread: null },
      service: { fittedOn: null, failedOn: null, timeInService: null, runningHours: null },
      stateReceived: '',
      interest: { standing: 'not-stated', words: '' },
    });
    expect(await engine.ask('parties.list', { caseId })).toEqual([]);
    expect(await engine.ask('custody.list', { caseId })).toEqual([]);
  }
});
