/** Reads a length of time as told: a number, written in any of the ways of typed-number.ts, and its unit. */
import type { DurationUnit, Service } from '#shared-types/case.ts';
import { typedTexts } from '#shared-types/texts/typed.ts';
import { readNumber, readWrittenNumber, writeNumber } from './typed-number.ts';
import { nothingTyped, withValues, wrong, type TypedReading } from './typed-reading.ts';

const { duration: texts } = typedTexts;

export type Duration = NonNullable<Service['timeInService']>;

const unitWords: Readonly<Record<DurationUnit, readonly string[]>> = {
  days: ['d', 'day', 'days'],
  weeks: ['w', 'wk', 'wks', 'week', 'weeks'],
  months: ['mo', 'mos', 'month', 'months'],
  years: ['y', 'yr', 'yrs', 'year', 'years'],
};

/** "4 months", "3,5 weeks", "10d". */
export function readDuration(text: string): TypedReading<Duration> {
  const typed = text.trim();
  if (typed === '') return nothingTyped;
  const parts = /^(\P{L}*\d\P{L}*?)(\p{L}*)\.?$/u.exec(typed);
  if (parts === null) return wrong(texts.notADuration);
  const [, figures = '', word = ''] = parts;
  if (word === '') return wrong(texts.unitMissing);
  const unit = unitOf(word.toLowerCase());
  return unit === null
    ? wrong(texts.unitMissing)
    : withValues(readNumber(figures), (value) => ({ value, unit }));
}

function unitOf(word: string): DurationUnit | null {
  const known = (Object.keys(unitWords) as DurationUnit[]).find((unit) => unitWords[unit].includes(word));
  return known ?? null;
}

/** As the program puts it into a field: "1 month", "4.5 months"; read again with readWrittenDuration. */
export function writeDuration({ value, unit }: Duration, decimalSign: '.' | ','): string {
  return `${writeNumber(value, decimalSign)} ${value === 1 ? unit.slice(0, -1) : unit}`;
}

/** Null for what writeDuration never wrote. */
export function readWrittenDuration(text: string): Duration | null {
  const [figures = '', word = ''] = text.split(' ');
  const unit = unitOf(word);
  return unit === null ? null : { value: readWrittenNumber(figures), unit };
}
