/** What a time that was told more or less exactly leaves open. */
import type { WallTime } from '#shared-types/times.ts';

/** Milliseconds of a clock that knows no zones; `end` is the first moment that is not in it any more. */
export type ToldSpan = { readonly start: number; readonly end: number };

export const dayMilliseconds = 86_400_000;

/** The zone is left aside: most are not told, and those that are would not compare with them. */
export function spanOf({ local, precision }: WallTime): ToldSpan {
  const start = Date.parse(`${local}Z`);
  return { start, end: endOf(new Date(start), precision) };
}

function endOf(start: Date, precision: WallTime['precision']): number {
  switch (precision) {
    case 'year':
      return Date.UTC(start.getUTCFullYear() + 1, 0, 1);
    case 'month':
      return Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + 1, 1);
    case 'day':
      return start.getTime() + dayMilliseconds;
    case 'minute':
      return start.getTime() + 60_000;
    case 'second':
      return start.getTime() + 1_000;
  }
}

/** True where one ended before the other began, however coarsely both are told. */
export const isCertainlyBefore = (one: ToldSpan, other: ToldSpan): boolean => one.end <= other.start;
