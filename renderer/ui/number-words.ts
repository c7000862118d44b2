/** Numbers, times and sizes in the reader's own locale. */
import type { Instant, WallTime } from '#shared-types/times.ts';
import { jobTexts } from '#shared-types/texts/jobs.ts';

/** As the reader writes numbers. */
export const decimalSign = (1.5).toLocaleString().includes(',') ? ',' : '.';

/** A number with a fixed count of decimals. */
export function numberText(value: number, decimals = 0): string {
  return value.toLocaleString(undefined, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
}

/** Seconds in the coarsest unit that still says something. */
export function durationText(seconds: number): string {
  if (seconds < 90) return jobTexts.seconds(Math.max(1, Math.round(seconds)));
  if (seconds < 90 * 60) return jobTexts.minutes(Math.round(seconds / 60));
  return jobTexts.hours(Math.round(seconds / 3600));
}

/** Bytes as kB or MB (1 MB = 1 000 000 bytes, as file managers of today count). */
export function bytesText(bytes: number): string {
  return bytes < 1e6 ? `${numberText(bytes / 1e3)} kB` : `${numberText(bytes / 1e6, 1)} MB`;
}

/** The day of an instant, in this computer's zone. */
export function dayText(instant: Instant): string {
  return new Date(instant).toLocaleDateString(undefined, { dateStyle: 'medium' });
}

/** Hours, minutes and seconds of an instant, in this computer's zone. */
export function clockText(at: Date): string {
  return at.toLocaleTimeString(undefined, {
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  });
}

export function dayAndClockText(instant: Instant): string {
  return `${dayText(instant)}, ${clockText(new Date(instant))}`;
}

/** A time we were told, as told: never moved into another zone, no finer than its precision. */
export function wallTimeText(time: WallTime): string {
  const at = new Date(`${time.local}Z`);
  const inUtc = { timeZone: 'UTC' } as const;
  switch (time.precision) {
    case 'year':
      return at.toLocaleDateString(undefined, { ...inUtc, year: 'numeric' });
    case 'month':
      return at.toLocaleDateString(undefined, { ...inUtc, year: 'numeric', month: 'long' });
    case 'day':
      return at.toLocaleDateString(undefined, { ...inUtc, dateStyle: 'medium' });
    case 'minute':
    case 'second':
      return at.toLocaleString(undefined, {
        ...inUtc,
        dateStyle: 'medium',
        timeStyle: time.precision === 'minute' ? 'short' : 'medium',
      });
  }
}
