/** Times, durations and numbers as they stand on paper: the same wherever the report is printed. */
import type { Service } from '#shared-types/case.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Instant, WallTime } from '#shared-types/times.ts';

const words = reportTexts.times;

/** An instant is written YYYY-MM-DDThh:mm:ss.sssZ; the date is that of UTC, and says so. */
export function instantInWords(instant: Instant): string {
  const [year, month, day] = dayOf(instant);
  return words.instant(words.day(day, month, year), instant.slice(11, 16));
}

/** A told time as exactly as it was told and no more; its zone where one was told. */
export function toldTime({ local, offsetMinutes, precision }: WallTime): string {
  const [year, month, day] = dayOf(local);
  const zone = offsetMinutes === null ? '' : ` ${offsetInWords(offsetMinutes)}`;
  switch (precision) {
    case 'year':
      return String(year);
    case 'month':
      return words.month(month, year);
    case 'day':
      return words.day(day, month, year);
    case 'minute':
      return words.time(words.day(day, month, year), local.slice(11, 16)) + zone;
    case 'second':
      return words.time(words.day(day, month, year), local.slice(11, 19)) + zone;
  }
}

/** The same of a time whose zone matters: a clock time without one says so. */
export function toldTimeWithZone(time: WallTime): string {
  const hasClock = time.precision === 'minute' || time.precision === 'second';
  return hasClock && time.offsetMinutes === null ? words.zoneless(toldTime(time)) : toldTime(time);
}

function dayOf(local: string): readonly [year: number, month: number, day: number] {
  const [year = 0, month = 0, day = 0] = local.slice(0, 10).split('-').map(Number);
  return [year, month, day];
}

/** Minutes east of UTC as ISO 8601 has them: "UTC+01:00". */
function offsetInWords(minutes: number): string {
  const size = Math.abs(minutes);
  const two = (value: number) => String(value).padStart(2, '0');
  return words.offset(minutes < 0 ? '−' : '+', two(Math.floor(size / 60)), two(size % 60));
}

export function durationInWords({ value, unit }: NonNullable<Service['timeInService']>): string {
  return words.duration(numberInWords(value), reportTexts.durations[unit][value === 1 ? 'one' : 'many']);
}

/** All decimals, a point before them, figures in threes from five on (ISO 80000-1, 7.3.1). */
export function numberInWords(value: number): string {
  const [whole = '', fraction] = value
    .toLocaleString('en-US', { useGrouping: false, maximumFractionDigits: 20 })
    .split('.');
  const grouped = whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, '\u00a0');
  return fraction === undefined ? grouped : `${grouped}.${fraction}`;
}
