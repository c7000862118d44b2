import { describe, expect, it } from 'vitest';

import { fileNumberGaps } from '#analysis/report/file-number-gaps.ts';
import {
  durationInWords,
  instantInWords,
  numberInWords,
  toldTime,
  toldTimeWithZone,
} from '#analysis/report/told-words.ts';
import type { Instant, WallTime } from '#shared-types/times.ts';

const told = (precision: WallTime['precision'], offsetMinutes: number | null = null): WallTime => ({
  local: '2026-03-04T09:05:07',
  offsetMinutes,
  precision,
});

describe('a time as it was told', () => {
  it.each([
    ['year', null, '2026'],
    ['month', null, 'March 2026'],
    ['day', null, '4 March 2026'],
    ['day', 60, '4 March 2026'],
    ['minute', null, '4 March 2026, 09:05'],
    ['second', null, '4 March 2026, 09:05:07'],
    // ISO 8601-1, 4.3.13: the shift from UTC in hours and minutes.
    ['minute', 120, '4 March 2026, 09:05 UTC+02:00'],
    ['second', -210, '4 March 2026, 09:05:07 UTC−03:30'],
    ['minute', 0, '4 March 2026, 09:05 UTC+00:00'],
  ] as const)('to the %s with offset %j is %s', (precision, offset, words) => {
    expect(toldTime(told(precision, offset))).toBe(words);
  });

  it('says that its zone was not told where a clock was read, and only there', () => {
    expect(toldTimeWithZone(told('second'))).toBe('4 March 2026, 09:05:07, zone not told');
    expect(toldTimeWithZone(told('second', 60))).toBe('4 March 2026, 09:05:07 UTC+01:00');
    expect(toldTimeWithZone(told('day'))).toBe('4 March 2026');
  });
});

it('an instant is written in UTC and says so', () => {
  expect(instantInWords('2026-12-31T23:59:59.999Z' as Instant)).toBe('31 December 2026, 23:59 UTC');
});

it.each([
  [0, '0'],
  [1240.5, '1240.5'],
  // ISO 80000-1, 7.3.1: figures in groups of three, parted by a small space.
  [693939, '693\u00a0939'],
  [12345678.25, '12\u00a0345\u00a0678.25'],
])('%d is written %s', (value, words) => {
  expect(numberInWords(value)).toBe(words);
});

it('a duration has its unit in one or in many', () => {
  expect(durationInWords({ value: 1, unit: 'months' })).toBe('1 month');
  expect(durationInWords({ value: 3.5, unit: 'weeks' })).toBe('3.5 weeks');
});

describe('gaps between the numbers of files', () => {
  it('are told from the first missing to the last, series by series', () => {
    const names = ['IMG_2044.jpg', 'IMG_2041.jpg', 'IMG_2042.JPG', 'DSC0007.jpg', 'DSC0009.jpg'];
    expect(fileNumberGaps(names)).toEqual([
      { first: 'IMG_2043.JPG', last: 'IMG_2043.JPG', count: 1 },
      { first: 'DSC0008.jpg', last: 'DSC0008.jpg', count: 1 },
    ]);
    expect(fileNumberGaps(['P0998.jpg', 'P1002.jpg'])).toEqual([
      { first: 'P0999.jpg', last: 'P1001.jpg', count: 3 },
    ]);
  });

  it('are not looked for where the figures are no count', () => {
    expect(fileNumberGaps(['20260304_091500.jpg', '20260304_091512.jpg'])).toEqual([]);
    expect(fileNumberGaps(['bearing 1.jpg', 'bearing 9.jpg'])).toEqual([]);
    expect(fileNumberGaps(['IMG_0001.jpg', 'IMG_9000.jpg'])).toEqual([]);
    expect(fileNumberGaps(['IMG_2041.jpg', 'IMG_2041.jpg', 'IMG_2042.jpg'])).toEqual([]);
  });
});
