/** What was told, in words of the reader's locale that can only be read in one way. */
import type { Duration } from '#analysis/text/typed-duration.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import type { WallTime } from '#shared-types/times.ts';
import { wallTimeText } from '../ui/number-words.ts';

/** With the month in words: in figures a day of spring may be one of two. Never moved into another zone. */
export function toldTimeWords(time: WallTime): string {
  if (time.precision === 'year' || time.precision === 'month') return wallTimeText(time);
  const at = new Date(`${time.local}Z`);
  const inUtc = { timeZone: 'UTC' } as const;
  const day = at.toLocaleDateString(undefined, { ...inUtc, day: 'numeric', month: 'long', year: 'numeric' });
  if (time.precision === 'day') return day;
  const clock = at.toLocaleTimeString(undefined, {
    ...inUtc,
    hour: '2-digit',
    minute: '2-digit',
    ...(time.precision === 'second' ? { second: '2-digit' } : {}),
    hourCycle: 'h23',
  });
  return `${day}, ${clock}`;
}

/** With all its decimals and without groups: in "1,234" they could be taken for each other. */
export function toldNumberWords(value: number): string {
  return value.toLocaleString(undefined, { useGrouping: false, maximumFractionDigits: 20 });
}

export function durationWords({ value, unit }: Duration): string {
  return claimTexts.service.durations[unit](toldNumberWords(value), value === 1);
}
