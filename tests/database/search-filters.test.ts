/** Filters and their counts, against the plain meaning of each tried on every case of the world. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { outcomes } from '#shared-types/case.ts';
import { damageClasses, presences, type FindingFields } from '#shared-types/finding.ts';
import {
  filterNames,
  hitsAPage,
  type FilterName,
  type SearchCounts,
  type SearchFilters,
} from '#shared-types/search.ts';

import { openEngineOverWorld } from '../support/engine-for-test.ts';
import { testId } from '../support/open-test-library.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import type { EngineHere } from '../support/world-engine.ts';
import type { World, WorldCase } from '../support/world.ts';

let folder: string;
let engine: EngineHere;
let world: World;
beforeAll(async () => {
  folder = makeTemporaryFolder();
  const size = { cases: 120, findings: [0, 10], photos: [0, 1], marks: [0, 0] } as const;
  ({ engine, world } = await openEngineOverWorld(folder, 61, size));
});
afterAll(async () => {
  await engine.close();
  removeFolder(folder);
});

const ofFinding = ['component', 'kind', 'class', 'presence'] as const;
const asker = testId<string>(1);

/** What a case has for each filter that speaks of cases. Quarters by the calendar: January to March is the first. */
function valuesOf(one: WorldCase): Record<'model' | 'customer' | 'outcome' | 'period', readonly string[]> {
  const at = new Date(one.openedAt);
  const year = String(at.getUTCFullYear());
  const quarter = `${year}-Q${String(1 + Math.floor(at.getUTCMonth() / 3))}`;
  return {
    model: [one.draft.unit.model],
    customer: [one.draft.customer],
    outcome: [one.outcome],
    period: [year, quarter],
  };
}

const open = (filters: SearchFilters, name: FilterName) => (filters[name]?.length ?? 0) === 0;
const says = (filters: SearchFilters, name: FilterName, value: string | null) =>
  open(filters, name) || (value !== null && (filters[name] as readonly string[]).includes(value));

/** What is not there has no class, whatever was entered for it before. */
const answers = (fields: FindingFields, name: (typeof ofFinding)[number]) =>
  name === 'class' && fields.presence !== 'present' ? null : fields[name];
const findingPasses = (filters: SearchFilters, fields: FindingFields) =>
  ofFinding.every((name) => says(filters, name, answers(fields, name)));

/** The meaning: each filter of cases fits, and one finding has all that filters ask of findings. */
function passes(filters: SearchFilters, one: WorldCase): boolean {
  const values = valuesOf(one);
  return (
    (Object.keys(values) as (keyof typeof values)[]).every((name) =>
      values[name].some((value) => says(filters, name, value)),
    ) &&
    (ofFinding.every((name) => open(filters, name)) ||
      one.findings.some(({ fields }) => findingPasses(filters, fields)))
  );
}

const some = <Value>(values: readonly Value[], most = 2) =>
  fc.subarray([...values], { maxLength: Math.min(most, values.length) });

const anyFilters = fc.nat().chain((pick): fc.Arbitrary<SearchFilters> => {
  const cases = world.cases.filter(({ findings }) => findings.length > 0);
  const one = cases[pick % cases.length]!;
  const { fields } = one.findings[pick % one.findings.length]!;
  const values = valuesOf(one);
  // Taken from one case, so that most combinations fit something; and something beside it.
  const mostlyNone = <Value>(arbitrary: fc.Arbitrary<Value[]>) =>
    fc.oneof({ weight: 2, arbitrary: fc.constant<Value[]>([]) }, { weight: 1, arbitrary });
  return fc.record({
    component: mostlyNone(some([fields.component, 'shaft'])),
    kind: mostlyNone(some([fields.kind, 'crack'])),
    class: mostlyNone(some([fields.class, ...damageClasses])),
    presence: mostlyNone(some([fields.presence, ...presences])),
    model: mostlyNone(some([...values.model, 'R30'])),
    customer: mostlyNone(some([...values.customer, 'Skerry Line'])),
    outcome: mostlyNone(some([one.outcome, ...outcomes])),
    period: mostlyNone(some([...values.period, '2024'])),
  });
});
const anyText = fc.constantFrom('', '', 'nut', 'grooves', 'oil smoke', 'zirconium');

/** Cases that the text alone finds, by number. */
async function found(text: string, filters: SearchFilters = {}): Promise<string[]> {
  const numbers: string[] = [];
  for (;;) {
    const { hits, total } = await engine.ask('search.cases', {
      text,
      tags: [],
      filters,
      from: numbers.length,
    });
    numbers.push(...hits.map((hit) => hit.case.number));
    if (hits.length < hitsAPage) {
      expect(numbers).toHaveLength(total);
      return numbers;
    }
  }
}

async function counts(text: string, filters: SearchFilters): Promise<SearchCounts> {
  const answer = await engine.ask('search.counts', { text, tags: [], filters, asker });
  expect(answer).not.toBeNull();
  return answer!;
}

describe('filters', () => {
  test('let pass what they mean, with text and without', async () => {
    let passed = 0;
    await fc.assert(
      fc.asyncProperty(anyText, anyFilters, async (text, filters) => {
        const asks = filterNames.some((name) => !open(filters, name));
        if (text === '' && !asks) return;
        const fitting = text === '' ? world.cases.map(({ draft }) => draft.number) : await found(text);
        const expected = world.cases.filter(
          (one) => fitting.includes(one.draft.number) && passes(filters, one),
        );
        expect(new Set(await found(text, filters))).toEqual(
          new Set(expected.map(({ draft }) => draft.number)),
        );
        passed += expected.length;
      }),
      { numRuns: 120, seed: 20260407 },
    );
    expect(passed).toBeGreaterThan(300);
  });

  test('show the findings by which a case passes, and no other', async () => {
    const filters = { kind: ['crack', 'scoring'], presence: ['looked-for-absent' as const] };
    const { hits } = await engine.ask('search.cases', { text: '', tags: [], filters });
    expect(hits.length).toBeGreaterThan(3);
    for (const hit of hits) {
      const one = world.cases.find(({ draft }) => draft.number === hit.case.number)!;
      const fitting = one.findings.filter(({ fields }) => findingPasses(filters, fields));
      expect(new Set(hit.findings.map(({ findingId }) => findingId))).toEqual(
        new Set(fitting.map(({ id }) => id)),
      );
      for (const finding of hit.findings) expect(finding.presence).toBe('looked-for-absent');
    }
  });
});

describe('counts', () => {
  test('of every value are the cases it would leave, all other filters being as they are', async () => {
    let counted = 0;
    await fc.assert(
      fc.asyncProperty(anyText, anyFilters, async (text, filters) => {
        const fitting = text === '' ? world.cases.map(({ draft }) => draft.number) : await found(text);
        const told = await counts(text, filters);
        for (const name of filterNames) {
          const expected = new Map<string, number>();
          for (const one of world.cases) {
            if (!fitting.includes(one.draft.number)) continue;
            const values = new Set(
              name in valuesOf(one)
                ? valuesOf(one)[name as 'model']
                : one.findings.map(({ fields }) => fields[name as 'kind']),
            );
            for (const value of values) {
              if (passes({ ...filters, [name]: [value] }, one)) {
                expected.set(value, (expected.get(value) ?? 0) + 1);
              }
            }
          }
          for (const value of filters[name] ?? []) expected.set(value, expected.get(value) ?? 0);
          const { values, more } = told[name];
          expect(values.length + more, name).toBe(expected.size);
          for (const { value, cases } of values) {
            expect(cases, `${name} ${value}`).toBe(expected.get(value));
            counted += cases;
          }
        }
      }),
      { numRuns: 60, seed: 20260408 },
    );
    expect(counted).toBeGreaterThan(5_000);
  });

  test('name parts and kinds in words, those of most cases first, periods the newest first', async () => {
    const { component, kind, period } = await counts('', {});
    expect(component.values.find(({ value }) => value === 'thrust-bearing')?.label).toBe('thrust bearing');
    expect(kind.values.find(({ value }) => value === 'worn-away')?.label).toBe('worn away');
    const cases = component.values.map((one) => one.cases);
    expect(cases).toEqual([...cases].sort((one, other) => other - one));
    const periods = period.values.map(({ value }) => value);
    expect(periods).toEqual([...periods].sort().reverse());
    expect(periods).toContain('2024-Q1');
  });

  test('list what was chosen even where no case is left', async () => {
    const { model } = await counts('zirconium', { model: ['R45'] });
    expect(model.values).toEqual([{ value: 'R45', label: 'R45', cases: 0 }]);
  });

  test('for an older request of the same page are given up when a newer one comes; other pages have theirs', async () => {
    const ask = (text: string, of: string) =>
      engine.ask('search.counts', { text, tags: [], filters: {}, asker: of });
    const [older, other, newer] = await Promise.all([
      ask('nut', asker),
      ask('nut', testId<string>(2)),
      ask('oil', asker),
    ]);
    expect(older).toBeNull();
    expect(newer).toEqual(await counts('oil', {}));
    expect(other).toEqual(await counts('nut', {}));
  });
});
