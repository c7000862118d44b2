/** Times as people tell them, no finer than they were told. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { readTime, writeTime } from '#analysis/text/typed-time.ts';
import { typedTexts } from '#shared-types/texts/typed.ts';
import { wallTimeSchema, type WallTime } from '#shared-types/times.ts';

const { time: texts } = typedTexts;
const at = (local: string, precision: WallTime['precision']): WallTime => ({
  local,
  offsetMinutes: null,
  precision,
});
const is = (local: string, precision: WallTime['precision']) => ({
  kind: 'understood',
  value: at(local, precision),
});

test.each([
  ['2026', '2026-01-01T00:00:00', 'year'],
  ['2026-03', '2026-03-01T00:00:00', 'month'],
  ['03/2026', '2026-03-01T00:00:00', 'month'],
  ['3.2026', '2026-03-01T00:00:00', 'month'],
  ['March 2026', '2026-03-01T00:00:00', 'month'],
  ['mar 2026', '2026-03-01T00:00:00', 'month'],
  ['Sept. 2025', '2025-09-01T00:00:00', 'month'],
  // ISO 8601: year, month, day.
  ['2026-03-04', '2026-03-04T00:00:00', 'day'],
  ['2026/3/4', '2026-03-04T00:00:00', 'day'],
  ['4.3.2026', '2026-03-04T00:00:00', 'day'],
  ['04.03.2026', '2026-03-04T00:00:00', 'day'],
  ['4 March 2026', '2026-03-04T00:00:00', 'day'],
  ['4th March 2026', '2026-03-04T00:00:00', 'day'],
  ['March 4, 2026', '2026-03-04T00:00:00', 'day'],
  ['4-Mar-2026', '2026-03-04T00:00:00', 'day'],
  ['13/4/2026', '2026-04-13T00:00:00', 'day'],
  ['4/13/2026', '2026-04-13T00:00:00', 'day'],
  ['4/4/2026', '2026-04-04T00:00:00', 'day'],
  ['29.2.2024', '2024-02-29T00:00:00', 'day'],
  ['4 Mar 2026 14:30', '2026-03-04T14:30:00', 'minute'],
  ['2026-03-04 14:30', '2026-03-04T14:30:00', 'minute'],
  ['2026-03-04T14:30', '2026-03-04T14:30:00', 'minute'],
  ['4.3.2026, 14.30', '2026-03-04T14:30:00', 'minute'],
  ['March 4, 2026 at 2:30 pm', '2026-03-04T14:30:00', 'minute'],
  ['4 March 2026 12:05 a.m.', '2026-03-04T00:05:00', 'minute'],
  ['2026-03-04 14:30:05', '2026-03-04T14:30:05', 'second'],
] as const)('%s', (text, local, precision) => {
  expect(readTime(text)).toEqual(is(local, precision));
});

describe('where day and month may stand either way, both are answered, the day first', () => {
  test.each([
    ['3/4/2026', '2026-04-03T00:00:00', '2026-03-04T00:00:00', 'day'],
    ['03-04-2026', '2026-04-03T00:00:00', '2026-03-04T00:00:00', 'day'],
    ['3/4/2026 14:30', '2026-04-03T14:30:00', '2026-03-04T14:30:00', 'minute'],
  ] as const)('%s', (text, dayFirst, monthFirst, precision) => {
    expect(readTime(text)).toEqual({
      kind: 'ambiguous',
      values: [at(dayFirst, precision), at(monthFirst, precision)],
    });
  });
});

describe('refused with words', () => {
  test.each([
    ['31.4.2026', 'There is no 31 April 2026.'],
    ['2026-04-31', 'There is no 31 April 2026.'],
    ['31 April 2026', 'There is no 31 April 2026.'],
    // 2026 and 1900 are no leap years (Gregorian calendar).
    ['29 February 2026', 'There is no 29 February 2026.'],
    ['29.2.1900', 'There is no 29 February 1900.'],
    ['31/4/2026', 'There is no 31 April 2026.'],
    ['2026-13', texts.noSuchMonth(13)],
    ['13/14/2026', texts.noSuchMonth(14)],
    ['0.3.2026', texts.noSuchDay(0, 'March', 2026)],
    ['4.3.26', texts.shortYear],
    ['4 March 26', texts.shortYear],
    ['3/4', texts.noYear],
    ['1026', texts.yearOutOfReach(1900, 2099)],
    ['4 March 2026 25:10', texts.noSuchClock('25:10')],
    ['4 March 2026 13:10 pm', texts.noSuchClock('13:10 pm')],
    ['2026-03-04 14:30Z', texts.zoneNotHere],
    ['2026-03-04 14:30 +01:00', texts.zoneNotHere],
    ['March 2026 14:30', texts.notATime],
    ['last spring', texts.notATime],
    ['4 Brumaire 2026', texts.notATime],
  ])('%s', (text, reason) => {
    expect(readTime(text)).toEqual({ kind: 'wrong', reason });
  });
});

test('blanks alone are nothing', () => {
  expect(readTime('  ')).toEqual({ kind: 'nothing' });
});

// The reference is CLDR through Intl.DateTimeFormat: year first (sv-SE), points (de-DE), words (en-GB, en-US), slashes
// the one way (fr-FR) and the other (en-US).
test.each([
  ['sv-SE', {}],
  ['de-DE', {}],
  ['en-GB', { dateStyle: 'long' }],
  ['en-GB', { dateStyle: 'medium' }],
  ['en-US', { dateStyle: 'long' }],
  ['en-US', { dateStyle: 'medium' }],
  ['fr-FR', {}],
  ['en-US', {}],
] as const)(
  'days as %s writes them (%o) are read, or asked about with the day among the two',
  (locale, style) => {
    const days = fc.date({
      min: new Date('1950-01-01T00:00:00Z'),
      max: new Date('2090-12-31T00:00:00Z'),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(days, (day) => {
        const text = day.toLocaleDateString(locale, { ...style, timeZone: 'UTC' });
        const expected = at(`${day.toISOString().slice(0, 10)}T00:00:00`, 'day');
        const read = readTime(text);
        if (read.kind === 'ambiguous') expect(read.values).toContainEqual(expected);
        else expect(read).toEqual({ kind: 'understood', value: expected });
      }),
      { seed: 8_601, numRuns: 300 },
    );
  },
);

test('whatever is typed, what is understood may be stored', () => {
  const signs = fc.constantFrom(...'0123456789', '-', '/', '.', ' ', ':', 'T', 'March', 'May', '2026', '31');
  fc.assert(
    fc.property(fc.array(signs, { maxLength: 14 }), (typed) => {
      const read = readTime(typed.join(''));
      const values = read.kind === 'understood' ? [read.value] : read.kind === 'ambiguous' ? read.values : [];
      for (const value of values) expect(wallTimeSchema.parse(value)).toEqual(value);
    }),
    { seed: 8_602, numRuns: 2_000 },
  );
});

test.each(['2026', '2026-03', '2026-03-04', '2026-03-04 14:30', '2026-03-04 14:30:05'])(
  'what the program wrote into a field, %s, is read as what it was',
  (text) => {
    const read = readTime(text);
    expect(read.kind === 'understood' ? writeTime(read.value) : read.kind).toBe(text);
  },
);
