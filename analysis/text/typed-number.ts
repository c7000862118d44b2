/**
 * Reads a number as people write it, wherever they learned to: the decimal sign is a comma or a point on the line, and
 * figures are parted in threes by a blank (ISO 80000-1), or by comma, point or apostrophe as the locales of CLDR do.
 * Where both readings stand ("1,234"), both are answered: guessing would be off by a thousand.
 */
import { typedTexts } from '#shared-types/texts/typed.ts';
import { nothingTyped, understood, wrong, type TypedReading } from './typed-reading.ts';

const { number: texts } = typedTexts;

/** Blanks between groups: the ordinary one, no-break, narrow no-break and thin. */
const blanks = /[ \u00a0\u202f\u2009]/g;
const apostrophes = /['’]/g;

/** Most figures that a 64-bit float keeps exactly whatever they are (IEEE 754: DBL_DIG). */
const mostFigures = 15;

const inThrees = (sign: string) => new RegExp(`^\\d{1,3}(?:${sign}\\d{3})+$`);
/** Of southern Asia: the last three figures, then pairs. */
const inPairs = /^\d{1,2}(?:,\d{2})+,\d{3}$/;

/** Finite numbers without a unit; never throws. */
export function readNumber(text: string): TypedReading<number> {
  const typed = text.trim().replace(blanks, ' ');
  if (typed === '') return nothingTyped;
  const parts = /^([+\-−]?) ?([\d.,'’ ]*\d[\d.,'’ ]*)(.*)$/su.exec(typed);
  if (parts === null) return wrong(texts.notANumber);
  const [, sign = '', figures = '', rest = ''] = parts;
  if (rest !== '') return wrong(reasonForRest(rest));
  const body = readFigures(figures.replace(apostrophes, "'"));
  return sign === '' || sign === '+' ? body : negated(body);
}

function reasonForRest(rest: string): string {
  if (/^(e[+\-−]?\d|[×x*·] ?10|\^)/iu.test(rest)) return texts.exponent;
  return /^[\p{L}%°"″]/u.test(rest) ? texts.unitNotHere(rest) : texts.notANumber;
}

/** Figures with signs between them, apostrophes and blanks already made one kind each. */
function readFigures(typed: string): TypedReading<number> {
  const figures = typed.trim();
  if (figures.replace(/\D/g, '').replace(/^0+/, '').length > mostFigures) return wrong(texts.tooLong);
  const points = countOf(figures, '.');
  const commas = countOf(figures, ',');
  if (points > 0 && commas > 0) {
    const decimal = figures.lastIndexOf('.') > figures.lastIndexOf(',') ? '.' : ',';
    return withDecimal(figures, decimal);
  }
  if (points + commas === 0) return valueOf(ungrouped(figures), '');
  const sign = points > 0 ? '.' : ',';
  if (points + commas > 1) return valueOf(ungrouped(figures), '');
  return isGroupToo(figures) ? bothReadings(figures, sign) : withDecimal(figures, sign);
}

/** One to three figures that could stand before a group, then exactly three: "1,234", but not "0,350". */
const isGroupToo = (figures: string) => /^[1-9]\d{0,2}[.,]\d{3}$/.test(figures);

function bothReadings(figures: string, sign: string): TypedReading<number> {
  const values = [Number(figures.replace(sign, '.')), Number(figures.replace(sign, ''))] as const;
  return { kind: 'ambiguous', values };
}

function withDecimal(figures: string, decimal: '.' | ','): TypedReading<number> {
  const [whole = '', fraction = '', ...more] = figures.split(decimal);
  if (more.length > 0) return wrong(texts.grouping);
  if (/[,.']/.test(fraction)) return wrong(texts.grouping);
  // After the decimal sign figures may be parted in threes too, counted from it (ISO 80000-1).
  if (fraction.includes(' ') && !/^(?:\d{3} )+\d{1,3}$/.test(fraction)) return wrong(texts.grouping);
  return valueOf(whole === '' ? '0' : ungrouped(whole), fraction.replaceAll(' ', ''));
}

/** Figures before the decimal sign without the signs between groups; null where those do not stand in threes. */
function ungrouped(whole: string): string | null {
  if (/^\d+$/.test(whole)) return whole;
  const patterns = [inThrees(' '), inThrees("'"), inThrees(','), inThrees('\\.'), inPairs];
  return patterns.some((pattern) => pattern.test(whole)) ? whole.replace(/\D/g, '') : null;
}

function valueOf(whole: string | null, fraction: string): TypedReading<number> {
  return whole === null ? wrong(texts.grouping) : understood(Number(`${whole}.${fraction}`));
}

function negated(reading: TypedReading<number>): TypedReading<number> {
  if (reading.kind === 'understood') return understood(0 - reading.value);
  if (reading.kind !== 'ambiguous') return reading;
  const [first, second] = reading.values;
  return { kind: 'ambiguous', values: [0 - first, 0 - second] };
}

const countOf = (text: string, sign: string) => text.split(sign).length - 1;

/**
 * The number as the program puts it into a field: no groups, all its decimals. It may look like one that readNumber
 * would ask about: what the program wrote is read with readWrittenNumber.
 */
export function writeNumber(value: number, decimalSign: '.' | ','): string {
  const text = value.toLocaleString('en-US', { useGrouping: false, maximumFractionDigits: 20 });
  return text.replace('.', decimalSign);
}

export function readWrittenNumber(text: string): number {
  return Number(text.replace(',', '.'));
}
