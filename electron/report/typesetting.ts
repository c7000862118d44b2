/** Type on the page: which voice says what, in which size, as nodes of pdfmake. Sizes are points. */
import { textWidth, wrapText, type Face } from '#analysis/text/font-metrics.ts';
import type { SizedDrawing } from '#analysis/report/class-key.ts';
import { drawingToSvg } from '#analysis/report/drawing-to-svg.ts';
import type { SectionHeading } from '#analysis/report/report-outline.ts';
import type { Content } from 'pdfmake';

import type { PrintableText } from './printable-text.ts';

/** Family and style by which pdfmake knows a face. */
const styleOf: Readonly<
  Record<Face, { readonly font: 'sans' | 'serif'; readonly bold: boolean; readonly italics: boolean }>
> = {
  'sans-400': { font: 'sans', bold: false, italics: false },
  'sans-600': { font: 'sans', bold: true, italics: false },
  'sans-400-italic': { font: 'sans', bold: false, italics: true },
  'serif-400': { font: 'serif', bold: false, italics: false },
  'serif-600': { font: 'serif', bold: true, italics: false },
  'serif-400-italic': { font: 'serif', bold: false, italics: true },
};

export const ink = { text: '#1a1a1a', quiet: '#555555', rule: '#999999', tableRule: '#bbbbbb' } as const;

export type Voice = {
  readonly face: Face;
  readonly size: number;
  readonly colour: string;
  readonly lead: number;
};

/** `lead` multiplies the font's own line height (1.257 em for the sans, 1.371 em for the serif). */
export const voices = {
  title: { face: 'sans-600', size: 20, colour: ink.text, lead: 1 },
  heading: { face: 'sans-600', size: 12.75, colour: ink.text, lead: 1 },
  subheading: { face: 'sans-600', size: 10, colour: ink.text, lead: 1 },
  body: { face: 'serif-400', size: 10.5, colour: ink.text, lead: 1.03 },
  claim: { face: 'serif-400-italic', size: 10.5, colour: ink.text, lead: 1.03 },
  emphasis: { face: 'serif-400-italic', size: 10.5, colour: ink.text, lead: 1.03 },
  strong: { face: 'serif-600', size: 10.5, colour: ink.text, lead: 1.03 },
  small: { face: 'sans-400', size: 8.5, colour: ink.text, lead: 1.05 },
  smallStrong: { face: 'sans-600', size: 8.5, colour: ink.text, lead: 1.05 },
  smallQuiet: { face: 'sans-400', size: 8.5, colour: ink.quiet, lead: 1.05 },
  tiny: { face: 'sans-400', size: 7, colour: ink.text, lead: 1.05 },
  tinyStrong: { face: 'sans-600', size: 7, colour: ink.text, lead: 1.05 },
  running: { face: 'sans-400', size: 8, colour: ink.quiet, lead: 1 },
} as const satisfies Record<string, Voice>;

/** Ascender and descender of the fonts' hhea tables over the em. */
const naturalLineHeight = (face: Face) => (face.startsWith('sans') ? 1.257 : 1.371);

export function lineHeight(voice: Voice): number {
  return voice.size * voice.lead * naturalLineHeight(voice.face);
}

export type Margin = [left: number, top: number, right: number, bottom: number];

export type Typesetter = {
  /** One paragraph, or several where the text has line breaks; parts follow each other on the line. */
  text(parts: readonly Spoken[], options?: TextOptions): Content;
  /** Height in points of such a paragraph, set `width` wide: an estimate from metrics without kerning. */
  heightOf(parts: readonly Spoken[], width: number): number;
  /** Width in points of words on one line, by metrics without kerning. */
  widthOf(words: string, voice: Voice): number;
  /** The words on one line, cut with an ellipsis where they do not fit. */
  oneLine(words: string, voice: Voice, width: number): Content;
  /**
   * A section's heading. It goes to the next page where less than `room` points would be left below it: that is the
   * height of what must stand on its page, the first lines of a text or the first plate. 'kept' for one that cannot be
   * parted from what follows anyway: a break in there would lose what stands in there.
   */
  heading(section: SectionHeading, room: number | 'kept'): Content;
  subheading(words: string, room: number): Content;
  /** Gives a named place to what stands below, where that is not a text. Takes no room. */
  anchor(destination: string): Content;
  drawing(sized: SizedDrawing): Content;
};

/** `to`: the named place in the document that the words lead to. */
export type Spoken = readonly [words: string, voice: Voice, to?: string | null];
export type TextOptions = {
  /** The named place that the text's first line is. */
  readonly destination?: string;
  /** It goes to the next page where less than so many points would be left below its first line. */
  readonly room?: number;
  /** Struck through, and readable. */
  readonly struck?: boolean;
  readonly margin?: Margin;
  /** In points; needed for words of any length, so that very long ones are broken before they are set. */
  readonly width?: number;
  /** Indents and runs of spaces stay as they were written. */
  readonly verbatim?: boolean;
};

/** Letters. pdfmake shapes a word again and again to find where it breaks, and takes minutes over a very long one. */
const longestWord = 80;
const longWord = new RegExp(`\\S{${longestWord},}`, 'g');
/** Of the width: text set with kerning may be a little wider than the metrics say. */
const surelyFits = 0.97;

export function typesetter(printable: PrintableText): Typesetter {
  const runsOf = ([words, voice, to]: Spoken, { width, struck }: TextOptions = {}) =>
    printable.runs(words, voice.face).map((run) => ({
      text:
        width === undefined
          ? run.text
          : run.text.replace(longWord, (word) =>
              wrapText(word, width * surelyFits, voice.size, run.face).join('\n'),
            ),
      ...styleOf[run.face],
      fontSize: voice.size,
      lineHeight: voice.lead,
      color: voice.colour,
      ...(to === undefined || to === null ? {} : { linkToDestination: to }),
      ...(struck === true ? { decoration: 'lineThrough' as const } : {}),
    }));
  const text: Typesetter['text'] = (parts, options = {}) => ({
    text: parts.flatMap((part) => runsOf(part, options)),
    ...(options.destination === undefined ? {} : { id: options.destination }),
    ...(options.room === undefined
      ? {}
      : { headlineLevel: Math.ceil(options.room + lineHeight(parts[0]?.[1] ?? voices.body)) }),
    ...(options.margin === undefined ? {} : { margin: options.margin }),
    ...(options.verbatim === true ? { preserveLeadingSpaces: true } : {}),
  });
  const headline = (words: string, voice: Voice, margin: Margin, room: number | 'kept') => ({
    text: runsOf([words, voice]),
    margin,
    // pdfmake hands this on to pageBreakBefore: here it is the room that is needed from the heading's top.
    ...(room === 'kept' ? {} : { headlineLevel: Math.ceil(lineHeight(voice) + margin[3] + room) }),
  });
  return {
    text,
    heading: ({ heading, destination }, room) => ({
      ...headline(heading, voices.heading, [0, 18, 0, 6], room),
      id: destination,
    }),
    anchor: (destination) => ({ text: '\u00a0', fontSize: 0.1, lineHeight: 0.1, id: destination }),
    subheading: (words, room) => headline(words, voices.subheading, [0, 14, 0, 4], room),
    heightOf: (parts, width) => {
      const [, voice] = parts[0] ?? ['', voices.body];
      const printed = parts.map(([words, each]) => printable.plain(words, each.face)).join('');
      return wrapText(printed, width, voice.size, voice.face).length * lineHeight(voice);
    },
    widthOf: (words, voice) => textWidth(printable.plain(words, voice.face), voice.size, voice.face),
    oneLine: (words, voice, width) => {
      let line = printable.plain(words.replace(/\s+/g, ' '), voice.face);
      if (textWidth(line, voice.size, voice.face) > width) {
        const letters = [...line];
        while (letters.length > 0 && textWidth(`${letters.join('')}…`, voice.size, voice.face) > width) {
          letters.pop();
        }
        line = `${letters.join('').trimEnd()}…`;
      }
      return { text: line, ...styleOf[voice.face], fontSize: voice.size, color: voice.colour, noWrap: true };
    },
    drawing: ({ width, height, drawing }) => ({
      svg: drawingToSvg(drawing, { width, height }, { width, height }, 'sans'),
      width,
      height,
    }),
  };
}
