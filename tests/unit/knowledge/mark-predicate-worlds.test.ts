/**
 * The rules against what they stand for. A world says of every single place whether the damage is there. Findings
 * rule worlds out; what is so in all the worlds that are left follows from the findings, and only that. The worlds
 * are counted out here one by one, by the meaning of the words and not by the rules under test.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { loadPack } from '#analysis/knowledge/load-pack.ts';
import { readMark, type FindingEvidence } from '#analysis/knowledge/mark-predicate.ts';
import { presences } from '#shared-types/finding.ts';
import type { MarkPredicate } from '#shared-types/knowledge-pack.ts';

import { findingId } from './case-evidence.ts';
import { windlass } from './small-pack.ts';

/** A peg with two positions, two zones, and a kind that is a case of another: eight single places. */
const pack = loadPack(
  JSON.stringify({
    ...windlass(),
    kinds: [
      { id: 'worn', label: 'worn', meaning: 'Less than it was.' },
      { id: 'rub', label: 'rub', meaning: 'Touched while turning.' },
      { id: 'ring-rub', label: 'rub all round', meaning: 'Touched the whole way round.', narrows: 'rub' },
    ],
    components: [
      {
        id: 'peg',
        label: 'peg',
        positions: ['left', 'right'],
        optional: false,
        zones: [
          { id: 'head', label: 'head', kinds: ['worn', 'rub', 'ring-rub'], counts: null },
          { id: 'foot', label: 'foot', kinds: ['worn'], counts: null },
        ],
        kinds: [],
      },
    ],
    quantities: [],
    mechanisms: [],
    conditions: [],
    marks: [],
  }),
  'peg.json',
);

type Place = { readonly position: string; readonly zone: string; readonly kind: string };
const places: readonly Place[] = ['left', 'right'].flatMap((position) => [
  { position, zone: 'head', kind: 'worn' },
  { position, zone: 'head', kind: 'rub' },
  { position, zone: 'head', kind: 'ring-rub' },
  { position, zone: 'foot', kind: 'worn' },
]);

/** Every set of places, as the places at which the damage is there. */
const worlds: readonly (readonly Place[])[] = Array.from({ length: 2 ** places.length }, (_, bits) =>
  places.filter((_place, index) => (bits & (1 << index)) !== 0),
);

const isOfKind = (kind: string, wanted: string) =>
  kind === wanted || (kind === 'ring-rub' && wanted === 'rub');

function speaksOf(said: Pick<FindingEvidence, 'position' | 'zone' | 'kind'>, place: Place): boolean {
  return (
    (said.position === null || said.position === place.position) &&
    (said.zone === null || said.zone === place.zone) &&
    isOfKind(place.kind, said.kind)
  );
}

function isTrue(finding: FindingEvidence, world: readonly Place[]): boolean {
  if (finding.presence === 'not-examined') return true;
  const there = world.some((place) => speaksOf(finding, place));
  return finding.presence === 'present' ? there : !there;
}

function holds(predicate: MarkPredicate, world: readonly Place[]): boolean {
  if (predicate.test === 'measurement') throw new Error('no measurements here');
  if (predicate.test !== 'finding') {
    const parts = predicate.of.map((part) => holds(part, world));
    return predicate.test === 'all' ? !parts.includes(false) : parts.includes(true);
  }
  const { position, zones, kinds } = predicate;
  return world.some(
    (place) =>
      (position === null || position === place.position) &&
      (zones.length === 0 || zones.includes(place.zone)) &&
      kinds.some((kind) => isOfKind(place.kind, kind)),
  );
}

const somePosition = fc.constantFrom(null, 'left', 'right');
const headKinds = ['worn', 'rub', 'ring-rub'];
const someTerms = fc.oneof(
  fc.record({
    position: somePosition,
    zone: fc.constantFrom(null, 'head'),
    kind: fc.constantFrom(...headKinds),
  }),
  fc.record({ position: somePosition, zone: fc.constant('foot'), kind: fc.constant('worn') }),
);
const someFindings = fc
  .array(fc.tuple(someTerms, fc.constantFrom(...presences)), { maxLength: 7 })
  .map((entries) =>
    entries.map(([terms, presence], index): FindingEvidence => ({
      ...terms,
      id: findingId(index + 1),
      component: 'peg',
      presence,
      extent: null,
    })),
  );
const somePattern = fc
  .record({
    position: somePosition,
    zones: fc.constantFrom<string[][]>([], ['head'], ['head', 'foot'], ['foot']),
    kinds: fc.uniqueArray(fc.constantFrom(...headKinds), { minLength: 1 }),
  })
  .map((said): MarkPredicate => ({ test: 'finding', component: 'peg', leastShare: null, ...said }))
  .filter((predicate) => worlds.some((world) => holds(predicate, world)));
const { somePredicate } = fc.letrec<{ somePredicate: MarkPredicate }>((tie) => ({
  somePredicate: fc.oneof(
    { maxDepth: 2, withCrossShrink: true },
    somePattern,
    fc.record({
      test: fc.constantFrom('all' as const, 'any' as const),
      of: fc.array(tie('somePredicate'), { minLength: 1, maxLength: 3 }),
    }),
  ),
}));

const read = (predicate: MarkPredicate, findings: readonly FindingEvidence[]) =>
  readMark(pack, predicate, { findings, measurements: [] });
const worldsLeft = (findings: readonly FindingEvidence[]) =>
  worlds.filter((world) => findings.every((finding) => isTrue(finding, world)));

/** Enough that most kinds of contradiction come up. */
const often = { numRuns: 600 };

describe('against all worlds', () => {
  test('a single pattern is present, or absent, exactly when it is so in every world left', () => {
    fc.assert(
      fc.property(somePattern, someFindings, (pattern, findings) => {
        const left = worldsLeft(findings);
        fc.pre(left.length > 0);
        const { state, disputed } = read(pattern, findings);
        const inAll = left.every((world) => holds(pattern, world));
        const inNone = !left.some((world) => holds(pattern, world));
        expect(disputed).toEqual([]);
        if (inAll) expect(state).toBe('present');
        else if (inNone) expect(state).toBe('looked-for-absent');
        else expect(['unknown', 'not-examined']).toContain(state);
      }),
      often,
    );
  });

  test('a combined predicate never says what does not follow', () => {
    fc.assert(
      fc.property(somePredicate, someFindings, (predicate, findings) => {
        const left = worldsLeft(findings);
        fc.pre(left.length > 0);
        const { state } = read(predicate, findings);
        if (state === 'present') expect(left.every((world) => holds(predicate, world))).toBe(true);
        if (state === 'looked-for-absent') expect(left.some((world) => holds(predicate, world))).toBe(false);
        expect(state).not.toBe('conflict');
      }),
      often,
    );
  });

  test('findings that no world fits are found out by a mark that asks for everything', () => {
    const anything: MarkPredicate = {
      test: 'finding',
      component: 'peg',
      position: null,
      zones: [],
      kinds: headKinds,
      leastShare: null,
    };
    fc.assert(
      fc.property(someFindings, (findings) => {
        const { state, disputed } = read(anything, findings);
        if (worldsLeft(findings).length > 0) {
          expect(disputed).toEqual([]);
        } else {
          expect(disputed.length).toBeGreaterThanOrEqual(2);
          expect(['conflict', 'present']).toContain(state);
        }
      }),
      often,
    );
  });

  test('not examined is said only where the places not examined, if looked at, could settle it', () => {
    const unseenOrDenied = someFindings.map((findings) =>
      findings.map((finding): FindingEvidence =>
        finding.presence === 'present' ? { ...finding, presence: 'not-examined' } : finding,
      ),
    );
    let said = 0;
    fc.assert(
      fc.property(somePattern, unseenOrDenied, (pattern, findings) => {
        const { state } = read(pattern, findings);
        const seen = findings.map((finding): FindingEvidence => ({
          ...finding,
          presence: 'looked-for-absent',
        }));
        const settled = read(pattern, seen).state === 'looked-for-absent';
        if (state === 'not-examined') said += 1;
        if (state !== 'looked-for-absent') expect(state).toBe(settled ? 'not-examined' : 'unknown');
      }),
      often,
    );
    expect(said).toBeGreaterThan(0);
  });

  test('the order of the findings does not matter', () => {
    const shuffled = someFindings.chain((findings) =>
      fc.tuple(
        fc.constant(findings),
        fc.shuffledSubarray(findings, { minLength: findings.length, maxLength: findings.length }),
      ),
    );
    fc.assert(
      fc.property(somePredicate, shuffled, (predicate, [findings, others]) => {
        expect(read(predicate, others).state).toBe(read(predicate, findings).state);
      }),
      often,
    );
  });
});
