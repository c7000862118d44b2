/** Lengths of time as told: a number in any habit and its unit. */
import { expect, test } from 'vitest';

import { readDuration, readWrittenDuration, writeDuration } from '#analysis/text/typed-duration.ts';
import { keptWithin, type TypedReading } from '#analysis/text/typed-reading.ts';
import { typedTexts } from '#shared-types/texts/typed.ts';

test.each([
  ['4 months', 4, 'months'],
  ['3,5 weeks', 3.5, 'weeks'],
  ['10d', 10, 'days'],
  ['0.5 yr.', 0.5, 'years'],
  ['1 250 days', 1_250, 'days'],
] as const)('%s', (text, value, unit) => {
  expect(readDuration(text)).toEqual({ kind: 'understood', value: { value, unit } });
});

test('1,234 days is asked about', () => {
  expect(readDuration('1,234 days')).toEqual({
    kind: 'ambiguous',
    values: [
      { value: 1.234, unit: 'days' },
      { value: 1_234, unit: 'days' },
    ],
  });
});

test.each([
  ['4', typedTexts.duration.unitMissing],
  ['4 fortnights', typedTexts.duration.unitMissing],
  ['months', typedTexts.duration.notADuration],
  ['4 to 5 months', typedTexts.duration.notADuration],
  ['about 4 months', typedTexts.duration.notADuration],
  ['12 50 days', typedTexts.number.grouping],
])('%s is refused with words', (text, reason) => {
  expect(readDuration(text)).toEqual({ kind: 'wrong', reason });
});

test('a reading that may not be entered falls away, and with it the question', () => {
  const both: TypedReading<number> = { kind: 'ambiguous', values: [1.234, 1_234] };
  const below = (most: number) => (value: number) => (value > most ? 'too much' : null);
  expect(keptWithin(both, below(2_000))).toEqual(both);
  expect(keptWithin(both, below(1_000))).toEqual({ kind: 'understood', value: 1.234 });
  expect(keptWithin(both, (value) => (value < 2 ? 'too little' : null))).toEqual({
    kind: 'understood',
    value: 1_234,
  });
  expect(keptWithin(both, below(1))).toEqual({ kind: 'wrong', reason: 'too much' });
});

test.each([
  [{ value: 1, unit: 'months' }, '1 month'],
  [{ value: 1.234, unit: 'years' }, '1.234 years'],
  [{ value: 1_234, unit: 'days' }, '1234 days'],
] as const)('what the program wrote into a field it reads as what it was: %o', (duration, text) => {
  expect(writeDuration(duration, '.')).toBe(text);
  expect(readWrittenDuration(text)).toEqual(duration);
  expect(readWrittenDuration(writeDuration(duration, ','))).toEqual(duration);
});
