/**
 * Reads a time as it was told, no finer than it was told: a year, a month, a day, or a day with its hour. The year
 * stands first (ISO 8601) or last, months in figures or in English words. With points the day comes first; with
 * slashes or hyphens and the year last, day and month may stand either way, and both readings are answered where both
 * can be. Months in words and days are not guessed: there is no 31 April.
 */
import { typedTexts } from '#shared-types/texts/typed.ts';
import type { WallTime } from '#shared-types/times.ts';
import { nothingTyped, understood, wrong, type TypedReading } from './typed-reading.ts';

const { time: texts } = typedTexts;

const firstYear = 1900;
const lastYear = 2099;

type Day = { readonly year: number; readonly month: number; readonly day: number };
type Clock = { readonly clock: string; readonly precision: 'minute' | 'second' };

/** The time has no zone (`offsetMinutes` null): nobody said one. Never throws. */
export function readTime(text: string): TypedReading<WallTime> {
  const typed = text.trim().replace(/[\s\u00a0\u202f]+/gu, ' ');
  if (typed === '') return nothingTyped;
  const whole = readDate(typed);
  if (whole !== null) return whole;
  const parts = /^(.*\d{4}|\d{4}.*\d)(?:,? (?:at )?|T)(\d{1,2}[:.h]\d{2}.*)$/iu.exec(typed);
  if (parts === null) return wrong(texts.notATime);
  const [, date = '', clock = ''] = parts;
  const day = readDate(date);
  return day === null ? wrong(texts.notATime) : withClock(day, clock);
}

/** Null where the text has the form of no date. */
function readDate(typed: string): TypedReading<WallTime> | null {
  if (/^\d{4}$/.test(typed)) return madeOf(Number(typed));
  const worded = readWordedDate(typed);
  if (worded !== null) return worded;
  const parts = /^(\d{1,4})([-/.])(\d{1,4})(?:\2(\d{1,4}))?\.?$/.exec(typed);
  if (parts === null) return null;
  const [, one = '', sign = '', two = '', three] = parts;
  if (one.length === 4) return madeOf(Number(one), monthNumber(two), dayNumber(three));
  if (three === undefined)
    return two.length === 4 ? madeOf(Number(two), monthNumber(one)) : wrong(texts.noYear);
  if (three.length !== 4) return wrong(texts.shortYear);
  const [first, second, year] = [Number(one), Number(two), Number(three)];
  return sign === '.' ? madeOf(year, second, first) : eitherWay(year, first, second);
}

const monthNumber = (figures: string) => (figures.length > 2 ? 0 : Number(figures));
const dayNumber = (figures: string | undefined) =>
  figures === undefined ? undefined : figures.length > 2 ? 0 : Number(figures);

/** Day and month in the order not known. */
function eitherWay(year: number, first: number, second: number): TypedReading<WallTime> {
  if (first > 12) return madeOf(year, second, first);
  if (second > 12) return madeOf(year, first, second);
  const [dayFirst, monthFirst] = [madeOf(year, second, first), madeOf(year, first, second)];
  if (first === second || dayFirst.kind !== 'understood' || monthFirst.kind !== 'understood') return dayFirst;
  return { kind: 'ambiguous', values: [dayFirst.value, monthFirst.value] };
}

/** "March 2026", "4 March 2026", "4th Mar 2026", "March 4, 2026", "4-Mar-2026"; null where no month is named. */
function readWordedDate(typed: string): TypedReading<WallTime> | null {
  const parts =
    /^(?:(?<before>\d{1,2})(?:st|nd|rd|th)?\.?[ -]?)?(?<word>\p{L}{3,})\.?[ -]?(?:(?<after>\d{1,2})(?:st|nd|rd|th)?,? )?(?<year>\d+)$/iu.exec(
      typed,
    );
  const { before, word = '', after, year = '' } = parts?.groups ?? {};
  const month = monthNamed(word);
  if (parts === null || month === null) return null;
  if (before !== undefined && after !== undefined) return wrong(texts.notATime);
  if (year.length !== 4) return wrong(texts.shortYear);
  return madeOf(Number(year), month, dayNumber(before ?? after));
}

/** The month whose name begins like that, or null; "sept" is one too. */
function monthNamed(word: string): number | null {
  const at = texts.months.findIndex((name) => name.toLowerCase().startsWith(word.toLowerCase()));
  return word === '' || at === -1 ? null : at + 1;
}

function madeOf(year: number, month?: number, day?: number): TypedReading<WallTime> {
  if (year < firstYear || year > lastYear) return wrong(texts.yearOutOfReach(firstYear, lastYear));
  if (month === undefined) return dated({ year, month: 1, day: 1 }, 'year');
  const name = texts.months[month - 1];
  if (name === undefined) return wrong(texts.noSuchMonth(month));
  if (day === undefined) return dated({ year, month, day: 1 }, 'month');
  if (day < 1 || day > daysIn(year, month)) return wrong(texts.noSuchDay(day, name, year));
  return dated({ year, month, day }, 'day');
}

/** Day 0 of the next month is the last of this one (Gregorian, ECMA-262 Date.UTC). */
const daysIn = (year: number, month: number) => new Date(Date.UTC(year, month, 0)).getUTCDate();

function dated({ year, month, day }: Day, precision: WallTime['precision']): TypedReading<WallTime> {
  const local = `${String(year)}-${twoFigures(month)}-${twoFigures(day)}T00:00:00`;
  return understood({ local, offsetMinutes: null, precision });
}

const twoFigures = (value: number) => String(value).padStart(2, '0');

function withClock(day: TypedReading<WallTime>, typed: string): TypedReading<WallTime> {
  if (day.kind === 'nothing' || day.kind === 'wrong') return day;
  const read = readClock(typed);
  if (typeof read === 'string') return wrong(read);
  const at = (time: WallTime): WallTime => ({
    ...time,
    local: `${time.local.slice(0, 10)}T${read.clock}`,
    precision: read.precision,
  });
  if (day.kind === 'understood') {
    return day.value.precision === 'day' ? understood(at(day.value)) : wrong(texts.notATime);
  }
  return { kind: 'ambiguous', values: [at(day.values[0]), at(day.values[1])] };
}

/** "14:30", "14.30", "14h30", "14:30:05", "2:30 pm"; a sentence where it is none. */
function readClock(typed: string): Clock | string {
  const parts = /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2}))? ?([ap]\.?m\.?)?(.*)$/iu.exec(typed);
  if (parts === null) return texts.notATime;
  const [, hour = '', minute = '', second, half, rest = ''] = parts;
  if (rest !== '') return /^ ?(z|[+\-−]\d|utc|gmt)/iu.test(rest) ? texts.zoneNotHere : texts.notATime;
  const hours = hourOfDay(Number(hour), half);
  if (hours === null || Number(minute) > 59 || Number(second ?? 0) > 59) return texts.noSuchClock(typed);
  return {
    clock: `${twoFigures(hours)}:${minute}:${second ?? '00'}`,
    precision: second === undefined ? 'minute' : 'second',
  };
}

function hourOfDay(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour <= 23 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.toLowerCase().startsWith('p') ? 12 : 0);
}

/** The time as the program puts it into a field, so that readTime understands it again: "2026-03", "2026-03-04 14:30". */
export function writeTime({ local, precision }: WallTime): string {
  const lengths = { year: 4, month: 7, day: 10, minute: 16, second: 19 } as const;
  return local.slice(0, lengths[precision]).replace('T', ' ');
}
