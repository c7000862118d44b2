/**
 * One edit, against the definition of the distance itself: the least number of replaced, left out, added characters and
 * swapped neighbours that makes one text of the other, no piece edited twice (optimal string alignment; the recurrence
 * as in L. Boytsov, "Indexing methods for approximate dictionary searching" (2011), from memory).
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { exactFit, isNear, readIdentifier } from '#analysis/search/identifier-fit.ts';
import { oneEditApart } from '#analysis/search/near-identifier.ts';
import { piecesOf, plainIdentifier } from '#analysis/search/plain-identifier.ts';

function distance(one: string, other: string): number {
  const table = Array.from({ length: one.length + 1 }, (_, i) =>
    Array.from({ length: other.length + 1 }, (_, j) => (i === 0 ? j : j === 0 ? i : 0)),
  );
  const at = (i: number, j: number) => table[i]![j]!;
  for (let i = 1; i <= one.length; i += 1) {
    for (let j = 1; j <= other.length; j += 1) {
      const same = one[i - 1] === other[j - 1] ? 0 : 1;
      const choices = [at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + same];
      if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) {
        choices.push(at(i - 2, j - 2) + 1);
      }
      table[i]![j] = Math.min(...choices);
    }
  }
  return at(one.length, other.length);
}

test('the definition, on examples that can be counted by hand', () => {
  expect(distance('SN30771', 'SN30771')).toBe(0);
  expect(distance('SN30771', 'SM30771')).toBe(1);
  expect(distance('SN30771', 'S30771')).toBe(1);
  expect(distance('SN30771', 'SNN30771')).toBe(1);
  expect(distance('SN30771', 'NS30771')).toBe(1);
  expect(distance('SN30771', 'NS30717')).toBe(2);
});

const few = fc.string({ unit: fc.constantFrom('A', 'B', '1', '2'), maxLength: 8 });
const letters = [...'ABCDEFGHJKLMNPQRSTUVWXYZ0123456789'];
const identifier = fc.string({ unit: fc.constantFrom(...letters), minLength: 5, maxLength: 14 });

describe('one edit apart', () => {
  test('is what the definition says, and it does not matter which of both is edited', () => {
    let near = 0;
    fc.assert(
      fc.property(few, few, (one, other) => {
        const apart = distance(one, other) === 1;
        if (apart) near += 1;
        expect(oneEditApart(one, other)).toBe(apart);
        expect(oneEditApart(other, one)).toBe(apart);
      }),
      { numRuns: 4_000, seed: 20260401 },
    );
    expect(near).toBeGreaterThan(100);
  });

  test('every wrong, missing, added, doubled or swapped character among the first five is found', () => {
    fc.assert(
      fc.property(identifier, fc.nat({ max: 4 }), fc.constantFrom(...letters), (stored, at, letter) => {
        const [before, here, after] = [stored.slice(0, at), stored.charAt(at), stored.slice(at + 1)];
        const edits = [
          before + letter + after,
          before + after,
          before + letter + here + after,
          before + here + here + after,
          before + after.charAt(0) + here + after.slice(1),
        ];
        const known = readIdentifier('serial', stored);
        for (const typed of edits) expect(isNear(typed, known)).toBe(typed !== stored);
      }),
      { numRuns: 2_000, seed: 20260402 },
    );
  });

  test('two edits are not claimed', () => {
    let pairs = 0;
    fc.assert(
      fc.property(
        identifier,
        fc.array(fc.tuple(fc.nat({ max: 13 }), fc.constantFrom(...letters)), { minLength: 2, maxLength: 3 }),
        (stored, replaced) => {
          const typed = replaced.reduce(
            (text, [at, letter]) =>
              text.slice(0, at % text.length) + letter + text.slice((at % text.length) + 1),
            stored,
          );
          if (distance(typed, stored) < 2) return;
          pairs += 1;
          expect(isNear(typed, readIdentifier('serial', stored))).toBe(false);
        },
      ),
      { numRuns: 2_000, seed: 20260403 },
    );
    expect(pairs).toBeGreaterThan(1_000);
  });

  test.each([
    ['a piece behind its hyphen is near too', '30717', 'SN-30771', true],
    ['the whole with a slip in the letters', 'SM-30771', 'SN-30771', true],
    ['four characters are near to too much', 'R46', 'R45', false],
    ['of five, one may be missing', '3077', '30771', true],
    ['a part of it is not near', '077', 'SN-30771', false],
  ])('%s', (_name, typed, stored, near) => {
    expect(isNear(plainIdentifier(typed), readIdentifier('serial', stored))).toBe(near);
  });
});

describe('an identifier as it was typed', () => {
  test.each([
    ['its hyphens, spaces and capitals do not matter', 'sn 30771', 'SN-30771', 'whole'],
    ['nor accents, however they are written', 'qu\u0308 4410 b', 'QÜ-4410/B', 'whole'],
    ['a piece of it is as good as the whole', '30771', 'SN-30771', 'whole'],
    ['a short piece is the whole of what stands between its hyphens', 'sn', 'SN-30771', 'whole'],
    ['two characters are the identifier', 'k9', 'K9', 'whole'],
    ['two characters in its middle are too few', '77', 'SN-30771', null],
    ['three are enough', '077', 'SN-30771', 'inside'],
    ['the end of it', '0771', 'SN-30771', 'inside'],
    ['across a hyphen', '45-11', 'R45-1180', 'inside'],
    ['its beginning', 'r45-11', 'R45-1180', 'beginning'],
    ['nothing typed fits nothing', '--', 'R45-1180', null],
  ])('%s', (_name, typed, stored, fit) => {
    expect(exactFit(plainIdentifier(typed), readIdentifier('serial', stored))).toBe(fit);
  });

  test('is the same with separators anywhere and in any case', () => {
    const separated = fc
      .tuple(
        identifier,
        fc.array(fc.constantFrom('', '-', ' ', '/', '.', '_'), { minLength: 15, maxLength: 15 }),
      )
      .map(([text, separators]) => ({
        text,
        written: [...text].map((one, at) => one + separators[at]!).join(''),
      }));
    fc.assert(
      fc.property(separated, ({ text, written }) => {
        expect(plainIdentifier(written)).toBe(text);
        expect(plainIdentifier(written.toLowerCase())).toBe(text);
        expect(piecesOf(written).join('')).toBe(text);
      }),
      { numRuns: 300, seed: 20260404 },
    );
  });
});
