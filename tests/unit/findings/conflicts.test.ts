/** Findings that say the same twice, and findings that cannot both be right. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { conflictsAmong, type ComparedFinding, type Conflict } from '#analysis/findings/conflicts.ts';
import { readMark } from '#analysis/knowledge/mark-predicate.ts';
import { presences } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';

import { findingId } from '../knowledge/case-evidence.ts';
import { pegs as pack } from './peg-pack.ts';

const alone = { markCounts: new Map<FindingId, number>(), rotation: null };

/** A rub on the left peg's head, there, unless said otherwise. */
function said(number: number, more: Partial<ComparedFinding> = {}): ComparedFinding {
  return {
    id: findingId(number),
    number,
    component: 'peg',
    position: 'left',
    zone: 'head',
    kind: 'rub',
    presence: 'present',
    extent: null,
    bend: null,
    ...more,
  };
}

const absent = { presence: 'looked-for-absent' } as const;
const unseen = { presence: 'not-examined' } as const;

/** "denied 1 2", with a question mark where it is not certain. */
const inWords = (conflicts: readonly Conflict[]) =>
  conflicts.map(
    ({ conflict, findings, certain }) =>
      `${conflict} ${findings.map(({ number }) => number).join(' ')}${certain ? '' : ' ?'}`,
  );
const told = (...findings: ComparedFinding[]) => inWords(conflictsAmong(pack, findings, alone));

describe('the same thing twice', () => {
  test('is the same part, position, zone and kind, both there', () => {
    expect(told(said(1), said(2))).toEqual(['same 1 2']);
    for (const other of [
      { component: 'board', position: null, zone: 'face' },
      { position: 'right' },
      { zone: 'foot' },
      { kind: 'worn' },
      absent,
    ]) {
      expect(told(said(1), said(2, other)).filter((words) => words.startsWith('same'))).toEqual([]);
    }
  });

  test('may also be a kind of which the other is a case, at any remove, the wider one first', () => {
    expect(told(said(1, { kind: 'ring-rub' }), said(2))).toEqual(['narrower 2 1 ?']);
    expect(told(said(1), said(2, { kind: 'deep-ring-rub' }))).toEqual(['narrower 1 2 ?']);
  });

  test('only may be, where one does not say its position or its zone', () => {
    expect(told(said(1), said(2, { position: null }))).toEqual(['same 1 2 ?']);
    expect(told(said(1), said(2, { zone: null }))).toEqual(['same 1 2 ?']);
    expect(told(said(1, { position: null }), said(2, { position: null }))).toEqual(['same 1 2 ?']);
    expect(told(said(1, { zone: null }), said(2, { zone: 'foot', position: 'right' }))).toEqual([]);
  });

  test('is certain where there is but one position, and of what concerns the part as a whole', () => {
    const board = { component: 'board', position: null, zone: 'face' };
    expect(told(said(1, board), said(2, board))).toEqual(['same 1 2']);
    const lost = { kind: 'lost', zone: null };
    expect(told(said(1, lost), said(2, lost))).toEqual(['same 1 2']);
  });
});

describe('a contradiction', () => {
  test('is there, and looked for and not there', () => {
    expect(told(said(1, absent), said(2))).toEqual(['denied 2 1']);
  });

  test('“no rub” denies a rub all round, “no rub all round” leaves a rub', () => {
    expect(told(said(1, { ...absent }), said(2, { kind: 'deep-ring-rub' }))).toEqual(['denied 2 1']);
    expect(told(said(1, { ...absent, kind: 'ring-rub' }), said(2))).toEqual([]);
  });

  test('is certain with a denial of the part as a whole, and only may be with a part that does not say where', () => {
    expect(told(said(1), said(2, { ...absent, zone: null, position: null }))).toEqual(['denied 1 2']);
    expect(told(said(1, { position: null }), said(2, absent))).toEqual(['denied 1 2 ?']);
    expect(
      told(said(1, { position: null }), said(2, absent), said(3, { ...absent, position: 'right' })),
    ).toEqual(['denied 1 2', 'denied 1 3']);
  });

  test('is what could not be examined and yet is said to be there or not', () => {
    expect(told(said(1), said(2, unseen))).toEqual(['not-examined 1 2']);
    expect(told(said(1, unseen), said(2, absent))).toEqual(['not-examined 2 1']);
    expect(told(said(1, { kind: 'ring-rub' }), said(2, unseen))).toEqual(['not-examined 1 2']);
    expect(told(said(1, absent), said(2, { ...unseen, kind: 'ring-rub' }))).toEqual(['not-examined 1 2']);
    expect(told(said(1), said(2, { ...unseen, zone: null }))).toEqual(['not-examined 1 2 ?']);
  });

  test('is not a rub of which it could not be seen whether it goes all round', () => {
    expect(told(said(1), said(2, { ...unseen, kind: 'ring-rub' }))).toEqual([]);
  });

  test('is one that is not there and has marks', () => {
    const marks = { markCounts: new Map([[findingId(1), 2]]), rotation: null };
    expect(inWords(conflictsAmong(pack, [said(1, absent)], marks))).toEqual(['marks-of-absent 1']);
    expect(inWords(conflictsAmong(pack, [said(1)], marks))).toEqual([]);
    expect(inWords(conflictsAmong(pack, [said(1, unseen)], marks))).toEqual([]);
  });
});

describe('a part that was not there', () => {
  const lost = { kind: 'lost', zone: null };

  test('is in conflict with what was or was not seen on it, at its own position', () => {
    expect(told(said(1, lost), said(2))).toEqual(['part-missing 1 2']);
    expect(told(said(1), said(2, lost))).toEqual(['part-missing 2 1']);
    expect(told(said(1, lost), said(2, absent))).toEqual(['part-missing 1 2']);
    expect(told(said(1, lost), said(2, { position: 'right' }))).toEqual([]);
    expect(told(said(1, { ...lost, position: null }), said(2))).toEqual(['part-missing 1 2 ?']);
  });

  test('is in none with what could not be examined, nor is one that was there', () => {
    expect(told(said(1, lost), said(2, unseen))).toEqual([]);
    expect(told(said(1, { ...lost, ...absent }), said(2))).toEqual([]);
  });
});

describe('a kind that says which way a bend goes', () => {
  const rotation = { sense: 'clockwise', seenFrom: 'from-left' } as const;
  const bent = (more: Partial<ComparedFinding>) => said(1, { kind: 'bent-back', zone: 'foot', ...more });
  const heldAgainst = (finding: ComparedFinding, turning: typeof rotation | null = rotation) =>
    inWords(conflictsAmong(pack, [finding], { ...alone, rotation: turning }));
  /** Seen from the other end, the sense of the rotation itself: with it. */
  const withIt = { sense: 'anticlockwise', seenFrom: 'from-right' } as const;
  const againstIt = { sense: 'clockwise', seenFrom: 'from-right' } as const;

  test('is in conflict with a bend that goes the other way', () => {
    expect(heldAgainst(bent({ bend: withIt }))).toEqual(['bend-otherwise 1']);
    expect(heldAgainst(bent({ bend: againstIt }))).toEqual([]);
  });

  test('is in none where that cannot be told, or where nothing is bent', () => {
    expect(heldAgainst(bent({ bend: withIt }), null)).toEqual([]);
    expect(heldAgainst(bent({ bend: null }))).toEqual([]);
    expect(heldAgainst(bent({ bend: withIt, ...absent }))).toEqual([]);
    expect(heldAgainst(said(1, { bend: withIt }))).toEqual([]);
  });
});

test('what the pack does not know is passed over', () => {
  expect(told(said(1, { component: 'nail' }), said(2, { component: 'nail' }))).toEqual([]);
  expect(told(said(1, { zone: 'tail' }), said(2, { zone: null }))).toEqual([]);
  expect(told(said(1, { kind: 'bent' }), said(2, { kind: 'bent' }))).toEqual([]);
});

const anyFindings = fc
  .array(
    fc.record({
      component: fc.constantFrom('peg', 'board'),
      position: fc.constantFrom('left', 'right', null),
      zone: fc.constantFrom('head', 'foot', 'face', null),
      kind: fc.constantFrom('rub', 'ring-rub', 'deep-ring-rub', 'worn', 'lost'),
      presence: fc.constantFrom(...presences),
    }),
    { maxLength: 7 },
  )
  .map((list) =>
    list.map((each, at) =>
      said(at + 1, { ...each, position: each.component === 'board' ? null : each.position }),
    ),
  );

describe('whatever the findings', () => {
  test('their order does not matter', () => {
    fc.assert(
      fc.property(anyFindings, fc.array(fc.nat(), { minLength: 7, maxLength: 7 }), (findings, chance) => {
        const shuffled = findings
          .map((finding, index) => ({ finding, at: chance[index]! }))
          .sort((one, other) => one.at - other.at)
          .map(({ finding }) => finding);
        expect(told(...shuffled)).toEqual(told(...findings));
      }),
    );
  });

  test('one alone is in no conflict, and none is in conflict with itself', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        for (const finding of findings) expect(told(finding)).toEqual([]);
        for (const { findings: both } of conflictsAmong(pack, findings, alone)) {
          expect(new Set(both.map(({ id }) => id)).size).toBe(2);
        }
      }),
    );
  });

  test('a certain denial is what makes a mark of that kind a conflict, and the other way round', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const denied = conflictsAmong(pack, findings, alone)
          .filter(({ conflict, certain }) => conflict === 'denied' && certain)
          .flatMap(({ findings: both }) => both.map(({ id }) => id as string));
        const disputed = ['peg', 'board'].flatMap((component) =>
          ['rub', 'worn', 'lost'].flatMap((kind) => {
            const predicate = {
              test: 'finding',
              component,
              position: null,
              zones: [],
              kinds: [kind],
              leastShare: null,
            } as const;
            return readMark(pack, { ...predicate, zones: [], kinds: [kind] }, { findings, measurements: [] })
              .disputed;
          }),
        );
        expect(new Set(denied)).toEqual(new Set(disputed.map(({ id }) => id)));
      }),
    );
  });
});
