/** The index of identifiers against looking at each of them. */
import fc from 'fast-check';
import { expect, test } from 'vitest';

import { isNear, readIdentifier } from '#analysis/search/identifier-fit.ts';
import {
  addIdentifiers,
  createIdentifierIndex,
  placesContaining,
  placesNear,
  removeIdentifiers,
} from '#analysis/search/identifier-index.ts';
import { plainIdentifier } from '#analysis/search/plain-identifier.ts';

const letter = fc.constantFrom('A', '1', '-');
const written = fc.string({ unit: letter, minLength: 4, maxLength: 8 });

test('finds the cases that each of their identifiers, looked at alone, would name; also after changes', () => {
  let [inside, near] = [0, 0];
  fc.assert(
    fc.property(
      fc.array(fc.array(written, { minLength: 0, maxLength: 3 }), { minLength: 1, maxLength: 12 }),
      fc.array(fc.tuple(fc.nat({ max: 11 }), fc.array(written, { maxLength: 3 })), { maxLength: 4 }),
      fc.string({ unit: letter, minLength: 2, maxLength: 7 }),
      (cases, changes, asked) => {
        const read = (texts: readonly string[]) =>
          texts.map((text) => readIdentifier('serial', text)).filter(({ plain }) => plain !== '');
        const known = cases.map(read);
        const index = createIdentifierIndex();
        for (const [place, identifiers] of known.entries()) addIdentifiers(index, identifiers, place);
        const typed = plainIdentifier(asked);
        if (typed === '') return;
        const expectIndex = () => {
          const places = [...known.keys()];
          const containing = places.filter((place) =>
            known[place]!.some(({ plain }) => plain.includes(typed)),
          );
          const nearby = places.filter((place) => known[place]!.some((one) => isNear(typed, one)));
          expect(placesContaining(index, typed)).toEqual(containing);
          expect([...placesNear(index, typed)].sort((one, other) => one - other)).toEqual(nearby);
          inside += containing.length;
          near += nearby.length;
        };
        expectIndex();
        for (const [pick, texts] of changes) {
          const place = pick % known.length;
          removeIdentifiers(index, known[place]!, place);
          known[place] = read(texts);
          addIdentifiers(index, known[place], place);
          expectIndex();
        }
      },
    ),
    { numRuns: 600, seed: 20260409 },
  );
  expect(inside).toBeGreaterThan(500);
  expect(near).toBeGreaterThan(100);
});
