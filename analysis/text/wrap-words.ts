/** Words broken into lines so that they can be put together again: what a box or a label of a figure holds. */
import { textWidth, wrapText, type Face } from './font-metrics.ts';

export type WrappedLine = {
  readonly text: string;
  /** The next line goes on within the same word: no space stands between the two. */
  readonly runsOn: boolean;
};

export type WrappedWords = {
  /** At least one, which is empty where there are no words. */
  readonly lines: readonly WrappedLine[];
  /** Of the longest line, in the unit of `size`. */
  readonly width: number;
};

/**
 * Breaks words into lines no wider than `width` (same unit as `size`), at spaces and where wrapText allows it within a
 * word; a word too long for a line is broken between characters. Any run of white space counts as one space.
 */
export function wrapWords(text: string, width: number, size: number, face: Face): WrappedWords {
  const words = oneSpaceEach(text);
  const texts = wrapText(words, width, size, face);
  let place = 0;
  const lines = texts.map((line): WrappedLine => {
    place += line.length;
    const afterLine = place;
    while (/\s/u.test(words.charAt(place))) place += 1;
    return { text: line, runsOn: place === afterLine && place < words.length };
  });
  return { lines, width: Math.max(...texts.map((line) => textWidth(line, size, face))) };
}

/** The words again, with one space wherever white space stood. */
export function unwrapped({ lines }: WrappedWords): string {
  return lines
    .map(({ text, runsOn }, at) => (runsOn || at === lines.length - 1 ? text : `${text} `))
    .join('');
}

/** No-break spaces stay what they are: they hold a line together. */
function oneSpaceEach(text: string): string {
  return text.replace(/[^\S\u00a0\u202f]+/gu, ' ').replace(/^ | $/g, '');
}
