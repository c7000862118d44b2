/** Days between fitting and failure. Counted by hand on the calendar. */
import { describe, expect, test } from 'vitest';

import { contradictsDates, timeBetween } from '#analysis/claim/time-in-service.ts';
import { readTime } from '#analysis/text/typed-time.ts';
import type { DurationUnit } from '#shared-types/case.ts';
import type { WallTime } from '#shared-types/times.ts';

function told(text: string): WallTime {
  const read = readTime(text);
  if (read.kind !== 'understood') throw new Error(`${text}: ${read.kind}`);
  return read.value;
}
const between = (fitted: string, failed: string) =>
  timeBetween({ fittedOn: told(fitted), failedOn: told(failed) });

describe('the time between', () => {
  test.each([
    // 30 November to 4 March: 31 + 31 + 28 + 4; from 1 November 29 more.
    ['2025-11', '2026-03-04', 94, 123],
    ['2026-03-04', '2026-03-04', 0, 0],
    ['2026-03-04', '2026-03-05', 1, 1],
    // 2024 has a 29 February.
    ['2024-02-28', '2024-03-01', 2, 2],
    ['2026-03-04 23:50', '2026-03-05 00:10', 1, 1],
    ['2025', '2026', 1, 729],
    ['2026', '2026-03-04', 0, 62],
    // Over the change to summer time of Europe and America: days are of the calendar.
    ['2026-03-01', '2026-04-01', 31, 31],
  ])('%s to %s is %i to %i days', (fitted, failed, least, most) => {
    expect(between(fitted, failed)).toEqual({ kind: 'days', least, most });
  });

  test('is told as backwards only where no reading of the two dates is forward', () => {
    expect(between('2026-03-05', '2026-03-04')).toEqual({ kind: 'backwards' });
    expect(between('2026-03', '2026-02')).toEqual({ kind: 'backwards' });
    expect(between('2026-03-05', '2026-03')).toEqual({ kind: 'days', least: 0, most: 26 });
  });

  test('is not known while a date is missing', () => {
    expect(timeBetween({ fittedOn: told('2026'), failedOn: null })).toBeNull();
    expect(timeBetween({ fittedOn: null, failedOn: told('2026') })).toBeNull();
  });
});

describe('a told time in service', () => {
  const dates = between('2025-11', '2026-03-04');
  test.each<[number, DurationUnit, boolean]>([
    [100, 'days', false],
    [93, 'days', true],
    [94, 'days', false],
    [123, 'days', false],
    [124, 'days', true],
    // 3 months stands for 2.5 to 3.5, that is 76 to 107 days.
    [3, 'months', false],
    [2, 'months', true],
    // 4.2 stands for 4.15 to 4.25: 126 days at least.
    [4.2, 'months', true],
    [17, 'weeks', false],
    [19, 'weeks', true],
    [0.3, 'years', false],
    [1, 'years', true],
  ])('of %d %s contradicts the dates: %s', (value, unit, contradicts) => {
    expect(contradictsDates({ value, unit }, dates)).toBe(contradicts);
  });

  test('contradicts nothing where nothing is known, or the dates contradict themselves', () => {
    expect(contradictsDates({ value: 3, unit: 'days' }, null)).toBe(false);
    expect(contradictsDates({ value: 3, unit: 'days' }, { kind: 'backwards' })).toBe(false);
  });
});
