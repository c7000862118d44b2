/**
 * Fields that are typed and have to be understood before they can be saved. Each has its text as the program writes
 * it, what that text says, and what anything typed into it may mean.
 */
import {
  readDuration,
  readWrittenDuration,
  writeDuration,
  type Duration,
} from '#analysis/text/typed-duration.ts';
import { readNumber, readWrittenNumber, writeNumber } from '#analysis/text/typed-number.ts';
import { keptWithin, nothingTyped, understood, type TypedReading } from '#analysis/text/typed-reading.ts';
import { readTime, writeTime } from '#analysis/text/typed-time.ts';
import type { CaseFields, Service } from '#shared-types/case.ts';
import { typedTexts } from '#shared-types/texts/typed.ts';
import type { WallTime } from '#shared-types/times.ts';
import { decimalSign, numberText } from '../ui/number-words.ts';

export const typedNames = ['fittedOn', 'failedOn', 'timeInService', 'runningHours'] as const;
export type TypedName = (typeof typedNames)[number];
export type TypedValue = { [Name in TypedName]: NonNullable<Service[Name]> };
export type TypedReadings = { readonly [Name in TypedName]: TypedReading<TypedValue[Name]> };

type Field<Value> = {
  readonly write: (value: Value) => string;
  /** What `write` wrote; null for the empty text. */
  readonly readWritten: (text: string) => Value | null;
  readonly read: (text: string) => TypedReading<Value>;
};

const within = (most: number, of: string) => (value: number) => {
  if (value < 0) return typedTexts.negative;
  return value > most ? typedTexts.above(of) : null;
};
const withinYears = within(10_000, numberText(10_000));
const withinHours = within(1_000_000, numberText(1_000_000));

const timeField: Field<WallTime> = {
  write: writeTime,
  readWritten: (text) => {
    const read = readTime(text);
    return read.kind === 'understood' ? read.value : null;
  },
  read: readTime,
};

const durationField: Field<Duration> = {
  write: (value) => writeDuration(value, decimalSign),
  readWritten: readWrittenDuration,
  read: (text) => keptWithin(readDuration(text), ({ value }) => withinYears(value)),
};

const hoursField: Field<number> = {
  write: (value) => writeNumber(value, decimalSign),
  readWritten: (text) => (text === '' ? null : readWrittenNumber(text)),
  read: (text) => keptWithin(readNumber(text), withinHours),
};

function partOfService<Name extends TypedName>(name: Name, field: Field<TypedValue[Name]>) {
  return {
    ...field,
    text: ({ service }: CaseFields): string => {
      const value = service[name] as TypedValue[Name] | null;
      return value === null ? '' : field.write(value);
    },
    put: (service: Service, written: string): Service => ({
      ...service,
      [name]: field.readWritten(written),
    }),
  };
}

export const typedFields = {
  fittedOn: partOfService('fittedOn', timeField),
  failedOn: partOfService('failedOn', timeField),
  timeInService: partOfService('timeInService', durationField),
  runningHours: partOfService('runningHours', hoursField),
} as const;

export function isTypedName(name: string): name is TypedName {
  return typedNames.some((known) => known === name);
}

/** @param isWritten the text is one of the program's own, so there is nothing to ask */
export function readingOf<Name extends TypedName>(
  name: Name,
  text: string,
  isWritten: boolean,
): TypedReading<TypedValue[Name]>;
export function readingOf(name: TypedName, text: string, isWritten: boolean): TypedReading<unknown> {
  const field = typedFields[name];
  if (!isWritten) return field.read(text);
  const value = field.readWritten(text);
  return value === null ? nothingTyped : understood(value);
}

/** The value as the program writes it. */
export function writtenOf<Name extends TypedName>(name: Name, value: TypedValue[Name]): string;
export function writtenOf(name: TypedName, value: unknown): string {
  // Name and value belong together, as the signature says; that is not followed through the union.
  const write = typedFields[name].write as (value: unknown) => string;
  return write(value);
}
