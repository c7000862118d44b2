/** The days between fitting and failure, out of the two dates, and whether the time told fits them. */
import type { DurationUnit, Service } from '#shared-types/case.ts';
import { dayMilliseconds, spanOf } from '../text/told-span.ts';

type Told = NonNullable<Service['timeInService']>;

export type TimeBetween =
  /** Whole days of the calendar; the same twice where both dates are days. */
  | { readonly kind: 'days'; readonly least: number; readonly most: number }
  /** It failed before it was fitted, however coarsely both are told. */
  | { readonly kind: 'backwards' };

/** Null where one of the dates is not told. */
export function timeBetween({
  fittedOn,
  failedOn,
}: Pick<Service, 'fittedOn' | 'failedOn'>): TimeBetween | null {
  if (fittedOn === null || failedOn === null) return null;
  const [fitted, failed] = [spanOf(fittedOn), spanOf(failedOn)];
  if (failed.end <= fitted.start) return { kind: 'backwards' };
  const least = dayOf(failed.start) - dayOf(fitted.end - 1);
  const most = dayOf(failed.end - 1) - dayOf(fitted.start);
  return { kind: 'days', least: Math.max(0, least), most };
}

const dayOf = (milliseconds: number) => Math.floor(milliseconds / dayMilliseconds);

/** Mean length in days: 400 years of the Gregorian calendar have 146 097 days. */
const daysPer: Readonly<Record<DurationUnit, number>> = {
  days: 1,
  weeks: 7,
  months: 146_097 / 4_800,
  years: 146_097 / 400,
};

/**
 * True where the told time cannot be rounded from anything the dates allow. It is taken as rounded to its last figure:
 * "3 months" stands for 2.5 to 3.5, "3.5 months" for 3.45 to 3.55. False where a date is missing.
 */
export function contradictsDates(told: Told, between: TimeBetween | null): boolean {
  if (between?.kind !== 'days') return false;
  const decimals = /\.(\d+)$/.exec(String(told.value))?.[1]?.length ?? 0;
  const rounding = 0.5 * 10 ** -decimals;
  const least = (told.value - rounding) * daysPer[told.unit];
  const most = (told.value + rounding) * daysPer[told.unit];
  return most < between.least || least > between.most;
}
