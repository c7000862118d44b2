import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { BenchChange } from '#shared-types/bench-change.ts';
import type { FindingId, MarkId } from '#shared-types/ids.ts';
import type { FindingFields } from '#shared-types/finding.ts';
import type { MarkFields } from '#shared-types/mark.ts';

import { engineOverWorld, openEngineOverWorld, type EngineOverWorld } from '../support/engine-for-test.ts';
import { exampleFinding } from '../support/exchanges.ts';
import { libraryContent } from '../support/library-content.ts';
import { testId } from '../support/open-test-library.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import type { EngineHere } from '../support/world-engine.ts';
import type { WorldCase } from '../support/world.ts';

const size = { cases: 2, findings: [2, 2], photos: [2, 2], marks: [2, 2] } as const;
const newFinding = testId<FindingId>(901);
const newMark = testId<MarkId>(902);

type Bench = { engine: EngineHere; here: WorldCase; elsewhere: WorldCase };

function asBench({ engine, world }: EngineOverWorld): Bench {
  const [here, elsewhere] = world.cases;
  if (!here || !elsewhere) throw new Error('the world has two cases');
  return { engine, here, elsewhere };
}
const bench = async () => asBench(await engineOverWorld(11, size));

const putFinding = (fields: FindingFields = exampleFinding, revision: number | null = null): BenchChange => ({
  change: 'put-finding',
  findingId: newFinding,
  fields,
  revision,
});

const arrowOn = (one: WorldCase, more: Partial<MarkFields> = {}): MarkFields => ({
  ...one.marks[0]!,
  id: newMark,
  photoId: one.photos[0]!.id,
  findingId: null,
  ...more,
});
const putMark = (mark: MarkFields, revision: number | null = null): BenchChange => ({
  change: 'put-mark',
  mark,
  revision,
});

/** For commits that are refused: they leave it as it was, which is what they are tested for. */
let shared: Bench;
let folder: string;
beforeAll(async () => {
  folder = makeTemporaryFolder();
  shared = asBench(await openEngineOverWorld(folder, 11, size));
});
afterAll(async () => {
  await shared.engine.close();
  removeFolder(folder);
});

describe('a commit at the bench', () => {
  test('is there whole, and answers what it put and what it took away', async () => {
    const { engine, here } = await bench();
    const [kept, dropped] = here.marks;
    const outcome = await engine.ask('bench.commit', {
      caseId: here.id,
      changes: [
        putFinding(),
        putMark(arrowOn(here, { findingId: newFinding })),
        putMark({ ...kept!, order: 77 }, 1),
        { change: 'remove-mark', markId: dropped!.id, revision: 1 },
      ],
    });
    expect(outcome.findings).toEqual([{ ...exampleFinding, id: newFinding, number: 3, revision: 1 }]);
    expect(outcome.marks).toEqual([
      { ...arrowOn(here, { findingId: newFinding }), revision: 1 },
      { ...kept!, order: 77, revision: 2 },
    ]);
    expect(outcome.removedMarkIds).toEqual([dropped!.id]);
    const read = await engine.ask('bench.read', { caseId: here.id });
    expect(new Set(read.marks)).toEqual(new Set(outcome.marks));
    expect(read.findings).toContainEqual(outcome.findings[0]);
  });

  /** Each is refused for its last change but one; what stands round it is in order. */
  type Refused = readonly [
    name: string,
    code: string,
    change: (here: WorldCase, elsewhere: WorldCase) => BenchChange,
  ];
  const refused: readonly Refused[] = [
    ['a stale mark', 'stale-revision', (here) => putMark(here.marks[0]!, 7)],
    [
      'a stale finding',
      'stale-revision',
      (here) =>
        ({ ...putFinding(here.findings[0]!.fields, 7), findingId: here.findings[0]!.id }) as BenchChange,
    ],
    [
      'a stale removal',
      'stale-revision',
      (here) => ({ change: 'remove-mark', markId: here.marks[0]!.id, revision: 2 }),
    ],
    [
      'a new mark that is there already',
      'stale-revision',
      (here) => putMark({ ...here.marks[0]!, order: 5 }, null),
    ],
    [
      'a new finding that is there already',
      'stale-revision',
      (here) => ({ ...putFinding(here.findings[0]!.fields), findingId: here.findings[0]!.id }) as BenchChange,
    ],
    ['a mark that is gone', 'not-found', (here) => putMark(arrowOn(here, { id: testId<MarkId>(77) }), 1)],
    [
      'a mark on a photo of another case',
      'mark-photo-mismatch',
      (here, elsewhere) =>
        putMark(arrowOn(here, { photoId: elsewhere.photos[0]!.id, id: testId<MarkId>(78) })),
    ],
    [
      'a mark given to a finding of another case',
      'mark-photo-mismatch',
      (here, elsewhere) =>
        putMark(arrowOn(here, { findingId: elsewhere.findings[0]!.id, id: testId<MarkId>(79) })),
    ],
    [
      'another case’s mark, drawn over to a photo of this one',
      'mark-photo-mismatch',
      (here, elsewhere) =>
        putMark({ ...elsewhere.marks[0]!, photoId: here.photos[0]!.id, findingId: null }, 1),
    ],
    [
      'the removal of another case’s mark',
      'mark-photo-mismatch',
      (_here, elsewhere) => ({ change: 'remove-mark', markId: elsewhere.marks[0]!.id, revision: 1 }),
    ],
    [
      'another case’s finding',
      'not-found',
      (_here, elsewhere) =>
        ({
          ...putFinding(elsewhere.findings[0]!.fields, 1),
          findingId: elsewhere.findings[0]!.id,
        }) as BenchChange,
    ],
    [
      'a part that the machine kind does not have',
      'term-unknown',
      () =>
        ({
          ...putFinding({ ...exampleFinding, component: 'flux-valve' }),
          findingId: testId<FindingId>(80),
        }) as BenchChange,
    ],
  ];

  test.each(refused)('with %s in the middle leaves nothing behind', async (_name, code, change) => {
    const { engine, here, elsewhere } = shared;
    const before = libraryContent(engine.db);
    const refusal = await engine.refusalOf('bench.commit', {
      caseId: here.id,
      changes: [
        putFinding(),
        putMark(arrowOn(here, { findingId: newFinding })),
        change(here, elsewhere),
        { change: 'remove-mark', markId: here.marks[1]!.id, revision: 1 },
      ],
    });
    expect(refusal.code).toBe(code);
    expect(libraryContent(engine.db)).toEqual(before);
  });

  test('names the term that the machine kind does not have', async () => {
    const { engine, here } = await bench();
    const refusalOf = async (fields: Partial<FindingFields>) =>
      (
        await engine.refusalOf('bench.commit', {
          caseId: here.id,
          changes: [putFinding({ ...exampleFinding, ...fields })],
        })
      ).message;
    expect(await refusalOf({ component: 'flux-valve' })).toContain('no part “flux-valve”');
    expect(await refusalOf({ zone: 'far-side' })).toMatch(/no zone of the .+ “far-side”/);
    expect(await refusalOf({ kind: 'sadness' })).toContain('no kind of damage “sadness”');
    expect(await refusalOf({ position: 'upside-down' })).toContain('upside-down');
    // A position that exists, of a part that has none.
    expect(await refusalOf({ position: 'turbine-side' })).toMatch(/no position of the .+ “turbine-side”/);
  });

  test('of a case that is not there, or a withdrawn one, is refused', async () => {
    const { engine, here } = await bench();
    const nowhere = await engine.refusalOf('bench.commit', {
      caseId: testId(999),
      changes: [putFinding()],
    });
    expect(nowhere).toMatchObject({ code: 'not-found', details: { thing: 'case' } });
    await engine.ask('cases.withdraw', { caseId: here.id, revision: 2, reason: 'opened twice' });
    const before = libraryContent(engine.db);
    const closed = await engine.refusalOf('bench.commit', { caseId: here.id, changes: [putFinding()] });
    expect(closed.code).toBe('case-closed');
    expect(libraryContent(engine.db)).toEqual(before);
  });
});

describe('two windows on one case', () => {
  test('the later one is told that what it has is stale, and nothing of the earlier one is lost', async () => {
    const { engine, here } = await bench();
    const mark = here.marks[0]!;
    const ordered = (order: number) =>
      engine.ask('bench.commit', { caseId: here.id, changes: [putMark({ ...mark, order }, 1)] });
    const [first, second] = await Promise.allSettled([ordered(10), ordered(20)]);
    expect(first.status).toBe('fulfilled');
    expect(second).toMatchObject({ status: 'rejected', reason: { code: 'stale-revision', retryable: true } });
    const { marks } = await engine.ask('bench.read', { caseId: here.id });
    expect(marks.find(({ id }) => id === mark.id)).toMatchObject({ order: 10, revision: 2 });
  });

  test('the same holds for a case, a photo, settings and an analyst', async () => {
    const { engine, here } = await bench();
    const caseChange = { caseId: here.id, revision: 2, fields: { customer: 'Skerry Line' } };
    const photoChange = { photoId: here.photos[0]!.id, revision: 2, fields: { caption: 'other' } };
    const [analyst] = await engine.ask('analysts.list', {});
    const analystChange = {
      analystId: analyst!.id,
      revision: 1,
      fields: { name: 'M. Sundgren', qualification: '' },
    };
    await engine.ask('cases.change', caseChange);
    await engine.ask('photos.change', photoChange);
    await engine.ask('settings.change', { revision: 2, fields: { theme: 'dark' } });
    await engine.ask('analysts.change', analystChange);
    const before = libraryContent(engine.db);
    const codes = [
      await engine.refusalOf('cases.change', { ...caseChange, fields: { customer: 'Northmole Ferries' } }),
      await engine.refusalOf('cases.withdraw', { caseId: here.id, revision: 2, reason: 'opened twice' }),
      await engine.refusalOf('photos.change', photoChange),
      await engine.refusalOf('settings.change', { revision: 2, fields: { theme: 'light' } }),
      await engine.refusalOf('analysts.change', analystChange),
    ].map(({ code, retryable }) => [code, retryable]);
    expect(codes).toEqual(codes.map(() => ['stale-revision', true]));
    expect(libraryContent(engine.db)).toEqual(before);
  });
});
