/**
 * Truth tables. Where only present and looked-for-absent settle it, they are the strong tables of
 * S. C. Kleene, Introduction to Metamathematics (1952), section 64, from memory; which of the three other states
 * is kept is a rule of our own.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { allState, anyState, markStates, type MarkState } from '#analysis/knowledge/mark-state.ts';

const P = 'present';
const A = 'looked-for-absent';
const N = 'not-examined';
const C = 'conflict';
const U = 'unknown';

/** Rows and columns in this order. */
const order: readonly MarkState[] = [P, A, N, C, U];

const anyTable: readonly (readonly MarkState[])[] = [
  [P, P, P, P, P],
  [P, A, N, C, U],
  [P, N, N, C, U],
  [P, C, C, C, C],
  [P, U, U, C, U],
];

const allTable: readonly (readonly MarkState[])[] = [
  [P, A, N, C, U],
  [A, A, A, A, A],
  [N, A, N, C, U],
  [C, A, C, C, C],
  [U, A, U, C, U],
];

function tableOf(combine: (parts: readonly MarkState[]) => MarkState): MarkState[][] {
  return order.map((row) => order.map((column) => combine([row, column])));
}

/** Kleene's strong connectives on true, false and undefined (null), written out as he defines them. */
const kleeneOr = (a: boolean | null, b: boolean | null) =>
  a === true || b === true ? true : a === false && b === false ? false : null;
const kleeneAnd = (a: boolean | null, b: boolean | null) =>
  a === false || b === false ? false : a === true && b === true ? true : null;
const truthOf = (state: MarkState) => (state === P ? true : state === A ? false : null);

const mirror = (state: MarkState): MarkState => (state === P ? A : state === A ? P : state);

const someState = fc.constantFrom(...markStates);
const someStates = fc.array(someState, { minLength: 1, maxLength: 6 });

describe('combined states', () => {
  test('the table of any', () => {
    expect(tableOf(anyState)).toEqual(anyTable);
  });

  test('the table of all', () => {
    expect(tableOf(allState)).toEqual(allTable);
  });

  test('of no parts: any is absent, all is present, so that a part added decides', () => {
    expect(anyState([])).toBe(A);
    expect(allState([])).toBe(P);
  });

  test('present and absent come out as in Kleene’s strong logic', () => {
    fc.assert(
      fc.property(someStates, (states) => {
        const truths = states.map(truthOf);
        expect(truthOf(anyState(states))).toBe(truths.reduce(kleeneOr, false));
        expect(truthOf(allState(states))).toBe(truths.reduce(kleeneAnd, true));
      }),
    );
  });

  test('all and any mirror each other', () => {
    fc.assert(
      fc.property(someStates, (states) => {
        expect(allState(states.map(mirror))).toBe(mirror(anyState(states)));
      }),
    );
  });

  test('neither order, nor grouping, nor repetition matters', () => {
    fc.assert(
      fc.property(someStates, someStates, (some, others) => {
        for (const combine of [anyState, allState]) {
          const whole = combine([...some, ...others]);
          expect(combine([...others, ...some])).toBe(whole);
          expect(combine([combine(some), combine(others)])).toBe(whole);
          expect(combine([...some, ...others, ...some])).toBe(whole);
        }
      }),
    );
  });

  test('the answer is always one of the states it was made of', () => {
    fc.assert(
      fc.property(someStates, (states) => {
        expect(states).toContain(anyState(states));
        expect(states).toContain(allState(states));
      }),
    );
  });
});
