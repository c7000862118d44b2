/** Cases by damage tag, against the plain meaning of a tag tried on every finding of the world. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { damageClasses, presences, type FindingFields } from '#shared-types/finding.ts';
import { hitsAPage, type DamageTag, type SearchHit } from '#shared-types/search.ts';

import { openEngineOverWorld } from '../support/engine-for-test.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import type { EngineHere } from '../support/world-engine.ts';
import { turbochargerPack, type World, type WorldCase } from '../support/world.ts';

const pack = turbochargerPack();
const anything: DamageTag = { component: null, zone: null, kind: null, class: null, presence: null };

let folder: string;
let engine: EngineHere;
let world: World;
beforeAll(async () => {
  folder = makeTemporaryFolder();
  const opened = await openEngineOverWorld(folder, 31, {
    cases: 60,
    findings: [0, 14],
    photos: [1, 2],
    marks: [0, 2],
  });
  ({ engine, world } = opened);
});
afterAll(async () => {
  await engine.close();
  removeFolder(folder);
});

/** What a tag means: every field that it fills in is as the finding has it. */
/** What is not there has no class, whatever was entered for it before. */
function fits(tag: DamageTag, fields: FindingFields): boolean {
  return (Object.keys(tag) as (keyof DamageTag)[]).every(
    (field) =>
      tag[field] === null ||
      (tag[field] === fields[field] && (field !== 'class' || fields.presence === 'present')),
  );
}

const newestFirst = (cases: readonly WorldCase[]) =>
  [...cases].sort((one, other) => other.openedAt.localeCompare(one.openedAt));

/** The tag that one finding of the world carries, with any of its fields left open: most tags then fit something. */
const tagOfFinding = fc
  .record({
    pick: fc.nat(),
    open: fc.record({
      component: fc.boolean(),
      zone: fc.boolean(),
      kind: fc.boolean(),
      class: fc.boolean(),
      presence: fc.boolean(),
    }),
  })
  .map(({ pick, open }): DamageTag => {
    const all = world.cases.flatMap((one) => one.findings);
    const { fields } = all[pick % all.length]!;
    return {
      component: open.component ? null : fields.component,
      zone: open.zone ? null : fields.zone,
      kind: open.kind ? null : fields.kind,
      class: open.class ? null : fields.class,
      presence: open.presence ? null : fields.presence,
    };
  });

const tagOfPack: fc.Arbitrary<DamageTag> = fc.record({
  component: fc.option(fc.constantFrom(...pack.components.map(({ id }) => id))),
  zone: fc.option(fc.constantFrom(...pack.components.flatMap(({ zones }) => zones.map(({ id }) => id)))),
  kind: fc.option(fc.constantFrom(...pack.kinds.map(({ id }) => id))),
  class: fc.option(fc.constantFrom(...damageClasses)),
  presence: fc.option(fc.constantFrom(...presences)),
});

/** The whole answer, page by page. */
async function everyHit(tags: readonly DamageTag[]): Promise<{ hits: SearchHit[]; total: number }> {
  const hits: SearchHit[] = [];
  for (;;) {
    const answer = await engine.ask('search.cases', { text: '', tags: [...tags], from: hits.length });
    hits.push(...answer.hits);
    if (answer.hits.length < hitsAPage) return { hits, total: answer.total };
  }
}

async function expectMeaning(tags: readonly DamageTag[]): Promise<number> {
  const answer = await everyHit(tags);
  const expected = newestFirst(
    world.cases.filter((one) => tags.every((tag) => one.findings.some(({ fields }) => fits(tag, fields)))),
  );
  expect(answer.total).toBe(expected.length);
  expect(answer.hits.map((hit) => hit.case.number)).toEqual(expected.map(({ draft }) => draft.number));
  for (const [place, hit] of answer.hits.entries()) {
    const fitting = expected[place]!.findings.filter(({ fields }) => tags.some((tag) => fits(tag, fields)));
    expect(new Set(hit.findings.map(({ findingId }) => findingId))).toEqual(
      new Set(fitting.map(({ id }) => id)),
    );
  }
  return expected.length;
}

describe('a search by damage tag', () => {
  test('answers what the tags mean, with any fields filled in', async () => {
    let found = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(tagOfFinding, { minLength: 1, maxLength: 3 }), async (tags) => {
        found += await expectMeaning(tags);
      }),
      { numRuns: 150, seed: 20260306 },
    );
    expect(found).toBeGreaterThan(150);
  });

  test('answers what the tags mean for terms that may not go together', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(tagOfPack, { minLength: 1, maxLength: 2 }), async (tags) => {
        await expectMeaning(tags);
      }),
      { numRuns: 150, seed: 20260307 },
    );
  });

  test('answers every combination of filled fields of one finding', async () => {
    const { fields } = world.cases
      .flatMap((one) => one.findings)
      .find(({ fields: each }) => each.zone !== null && each.presence === 'present')!;
    const names = Object.keys(anything) as (keyof DamageTag)[];
    for (let filled = 0; filled < 2 ** names.length; filled += 1) {
      const tag = Object.fromEntries(
        names.map((name, bit) => [name, (filled >> bit) & 1 ? fields[name] : null]),
      ) as DamageTag;
      expect(await expectMeaning([tag])).toBeGreaterThan(0);
    }
  });

  test('names findings in the words of the machine kind, each once however many tags it fits', async () => {
    const { fields, id } = world.cases
      .flatMap((one) => one.findings)
      .find((one) => one.fields.zone !== null)!;
    const component = pack.components.find((one) => one.id === fields.component)!;
    const tag = { ...anything, component: fields.component, zone: fields.zone, kind: fields.kind };
    const { hits } = await everyHit([tag, { ...tag, zone: null }]);
    const named = hits.flatMap(({ findings }) => findings).filter((one) => one.findingId === id);
    expect(named).toMatchObject([
      {
        component: component.label,
        zone: component.zones.find((zone) => zone.id === fields.zone)!.label,
        kind: pack.kinds.find((kind) => kind.id === fields.kind)!.label,
        class: fields.class,
        presence: fields.presence,
        componentId: fields.component,
        kindId: fields.kind,
      },
    ]);
  });

  test('a case is no longer found by a finding that was changed or removed', async () => {
    const one = world.cases.find((each) => each.findings.length > 0 && each.marks.length === 0)!;
    const { id: findingId, fields } = one.findings[0]!;
    const kind = pack.kinds.find(({ id }) => id !== fields.kind && canOccur(fields, id))!.id;
    const tag: DamageTag = { ...anything, component: fields.component, kind };
    const numbers = async () =>
      (await everyHit([tag])).hits
        .flatMap(({ findings }) => findings)
        .filter((each) => each.findingId === findingId).length;
    const changed = { change: 'put-finding', findingId, fields: { ...fields, kind }, revision: 1 } as const;
    expect(await numbers()).toBe(0);
    await engine.ask('bench.commit', { caseId: one.id, changes: [changed] });
    expect(await numbers()).toBe(1);
    const removal = { change: 'remove-finding', findingId, revision: 2 } as const;
    await engine.ask('bench.commit', { caseId: one.id, changes: [removal] });
    expect(await numbers()).toBe(0);
  });
});

function canOccur({ component, zone }: FindingFields, kind: string): boolean {
  const part = pack.components.find(({ id }) => id === component)!;
  const kinds = part.zones.filter(({ id }) => id === zone).flatMap((one) => one.kinds);
  return [...kinds, ...part.kinds].includes(kind);
}

test('known tags: part and kind of every finding, with the number of cases that have it', async () => {
  const { cases } = await readWorldAgain();
  const expected = new Map<string, number>();
  for (const findings of cases) {
    for (const tag of new Set(findings.map(({ component, kind }) => `${component} ${kind}`))) {
      expected.set(tag, (expected.get(tag) ?? 0) + 1);
    }
  }
  const known = await engine.ask('search.known-tags', {});
  expect(new Map(known.map(({ component, kind, cases: count }) => [`${component} ${kind}`, count]))).toEqual(
    expected,
  );
  expect(known.map(({ cases: count }) => count)).toEqual(
    [...expected.values()].sort((one, other) => other - one),
  );
  const first = known[0]!;
  expect(first.componentLabel).toBe(pack.components.find(({ id }) => id === first.component)?.label);
  expect(first.kindLabel).toBe(pack.kinds.find(({ id }) => id === first.kind)?.label);
});

/** The findings of every case as they are now: an earlier test may have changed one. */
async function readWorldAgain() {
  const read = world.cases.map(async ({ id }) => (await engine.ask('bench.read', { caseId: id })).findings);
  return { cases: await Promise.all(read) };
}
