/** Numbers as people type them, and as the locales of CLDR write them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { readNumber, readWrittenNumber, writeNumber } from '#analysis/text/typed-number.ts';
import { typedTexts } from '#shared-types/texts/typed.ts';

const { number: texts } = typedTexts;
const is = (value: number) => ({ kind: 'understood', value });
const refused = (reason: string) => ({ kind: 'wrong', reason });

// ISO 80000-1:2022, 7.3.1 and 7.3.2 (from memory): the decimal sign is a comma or a point on the line; figures may be
// parted in threes, from the decimal sign to both sides, by a small blank.
describe('the decimal sign and the groups of ISO 80000-1', () => {
  test.each([
    ['0,35', 0.35],
    ['0.35', 0.35],
    ['23\u2009456', 23_456],
    ['2\u2009345,6', 2_345.6],
    ['2\u2009345.6', 2_345.6],
    ['0,002\u200931', 0.002_31],
    ['1 250', 1_250],
    ['1\u00a0250\u00a0000', 1_250_000],
    ['3,141 592 65', 3.141_592_65],
  ])('%s', (text, value) => {
    expect(readNumber(text)).toEqual(is(value));
  });
});

describe('other habits, clear by themselves', () => {
  test.each([
    ["1'250", 1_250],
    ['1’250.5', 1_250.5],
    ['1.250,5', 1_250.5],
    ['1,250.5', 1_250.5],
    ['1.250.000', 1_250_000],
    ['1,250,000.75', 1_250_000.75],
    // Pairs before the last three figures: Intl of en-IN writes them so.
    ['1,23,456.5', 123_456.5],
    ['12,50', 12.5],
    ['1234,567', 1_234.567],
    ['0,350', 0.35],
    ['007', 7],
    [',5', 0.5],
    ['5.', 5],
    ['-0.02', -0.02],
    ['\u22120,02', -0.02],
    ['+3', 3],
    ['  42 ', 42],
  ])('%s', (text, value) => {
    expect(readNumber(text)).toEqual(is(value));
  });
});

test.each([
  ['1,234', [1.234, 1_234]],
  ['1.234', [1.234, 1_234]],
  ['999.000', [999, 999_000]],
  ['-1,234', [-1.234, -1_234]],
])('%s can be read in two ways, and both are answered', (text, values) => {
  expect(readNumber(text)).toEqual({ kind: 'ambiguous', values });
});

describe('refused with words', () => {
  test.each([
    ['1e3', texts.exponent],
    ['1.5E-3', texts.exponent],
    ['2 × 10^3', texts.exponent],
    ['0.35 mm', texts.unitNotHere('mm')],
    ['12,5 µm', texts.unitNotHere('µm')],
    ['40 %', texts.unitNotHere('%')],
    ['12 50', texts.grouping],
    ['1.25,000,5', texts.grouping],
    ['1,25.5', texts.grouping],
    ["1'25", texts.grouping],
    ['1 2345', texts.grouping],
    ['1,2,3', texts.grouping],
    ['about 4', texts.notANumber],
    ['four', texts.notANumber],
    ['.', texts.notANumber],
    ['3-4', texts.notANumber],
    ['12345678901234567', texts.tooLong],
  ])('%s', (text, reason) => {
    expect(readNumber(text)).toEqual(refused(reason));
  });
});

test('blanks alone are nothing', () => {
  expect(readNumber(' \u00a0 ')).toEqual({ kind: 'nothing' });
});

// The reference is CLDR through Intl.NumberFormat: "." and "," (en-US), the other way round (de-DE), the apostrophe
// (de-CH), the narrow no-break blank (fr-FR), the no-break blank and U+2212 (sv-SE), pairs (en-IN).
test.each(['en-US', 'de-DE', 'de-CH', 'fr-FR', 'sv-SE', 'en-IN'])(
  'what %s writes is read as it was, or asked about with it among the two',
  (locale) => {
    fc.assert(
      fc.property(
        fc.integer({ min: -999_999_999_999, max: 999_999_999_999 }),
        fc.integer({ min: 0, max: 3 }),
        (figures, decimals) => {
          const value = figures / 10 ** decimals;
          const text = value.toLocaleString(locale, { maximumFractionDigits: 3 });
          const read = readNumber(text);
          if (read.kind === 'ambiguous') expect(read.values).toContain(value);
          else expect(read).toEqual(is(value === 0 ? 0 : value));
        },
      ),
      { seed: 80_000, numRuns: 500 },
    );
  },
);

test('only a number with one sign and three figures behind it is asked about', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 999_999_999 }),
      fc.integer({ min: 0, max: 4 }),
      fc.constantFrom('en-US', 'de-DE'),
      (figures, decimals, locale) => {
        const text = (figures / 10 ** decimals).toLocaleString(locale, { maximumFractionDigits: 4 });
        expect(readNumber(text).kind === 'ambiguous').toBe(/^[1-9]\d{0,2}[.,]\d{3}$/.test(text));
      },
    ),
    { seed: 80_001, numRuns: 500 },
  );
});

test('what the program wrote into a field it reads as what it was, without asking', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, min: -1e9, max: 1e9 }), fc.constantFrom('.', ','), (value, sign) => {
      const rounded = Number(value.toFixed(6));
      expect(readWrittenNumber(writeNumber(rounded, sign))).toBe(rounded);
    }),
    { seed: 80_002, numRuns: 500 },
  );
  expect(writeNumber(1_234.5, '.')).toBe('1234.5');
  expect(writeNumber(1.234, ',')).toBe('1,234');
  expect(writeNumber(0.000_000_1, '.')).toBe('0.0000001');
});
