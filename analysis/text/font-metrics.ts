/**
 * How wide text is, from the fonts' own advance widths, so that the screen, the page and the pure code that
 * lays out labels and boxes agree without a canvas. Kerning and ligatures are left out: text set with them
 * differs a little (mostly narrower, by one or two parts in a hundred; a few pairs are wider), so give a box
 * some padding.
 */
import { fontAdvances } from './font-advances.ts';
import type { Face } from './faces.ts';

export { faces, type Face } from './faces.ts';

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });
const tables = new Map<Face, ReadonlyMap<number, number>>();

function advanceTable(face: Face): ReadonlyMap<number, number> {
  const known = tables.get(face);
  if (known) return known;
  const table = new Map<number, number>();
  for (const block of fontAdvances[face].blocks) {
    block.widths.forEach((width, index) => {
      if (width >= 0) table.set(block.first + index, width);
    });
  }
  tables.set(face, table);
  return table;
}

/**
 * Advance width of a character, in thousandths of an em. Combining marks (Unicode category M) and invisible
 * format characters (Cf) take no room; a character that is not in the table takes the missing-character box.
 */
export function advanceWidth(character: string, face: Face): number {
  const width = advanceTable(face).get(character.codePointAt(0) ?? 0);
  if (width !== undefined) return width;
  return /^[\p{M}\p{Cf}]/u.test(character) ? 0 : fontAdvances[face].missing;
}

/**
 * Width of a line of text in the unit of `size` (pixels, points, image pixels), without kerning.
 * Line breaks in the text are not honoured here: wrapText does that.
 */
export function textWidth(text: string, size: number, face: Face): number {
  let thousandths = 0;
  for (const character of text) thousandths += advanceWidth(character, face);
  return (thousandths * size) / 1000;
}

/**
 * Breaks text into lines no wider than `width` (same unit as `size`): greedy, at spaces and after hyphens between
 * a word's parts ("thrust-bearing", but not "SW-1180"); no-break spaces hold; line breaks in the text are kept; a word too long for a line is broken between characters as a reader counts them, and at least
 * one of these stands on each line however narrow it is. Spaces at a break are dropped, others kept.
 * Never returns an empty list: an empty text is one empty line.
 */
export function wrapText(text: string, width: number, size: number, face: Face): string[] {
  return text.split(/\r\n|\r|\n/).flatMap((paragraph) => wrapParagraph(paragraph, width, size, face));
}

/** A run of breakable spaces, a part of a word up to its hyphen, or anything else up to the next space. */
const pieces = /[ \t]+|[^ \t]*?[\p{L}\p{N}]-(?=\p{L})|[^ \t]+/gu;

function wrapParagraph(paragraph: string, width: number, size: number, face: Face): string[] {
  const lines: string[] = [];
  let line = '';
  for (const piece of paragraph.match(pieces) ?? []) {
    if (textWidth(line + piece, size, face) <= width) {
      line += piece;
      continue;
    }
    if (/^[ \t]/.test(piece)) {
      if (line !== '') lines.push(line);
      line = '';
      continue;
    }
    const before = line.trimEnd();
    if (before !== '') lines.push(before);
    line = piece;
    if (textWidth(piece, size, face) > width) {
      const parts = breakWord(piece, width, size, face);
      line = parts.pop() ?? '';
      lines.push(...parts);
    }
  }
  const rest = line.trimEnd();
  if (rest !== '' || lines.length === 0) lines.push(rest);
  return lines;
}

function breakWord(word: string, width: number, size: number, face: Face): string[] {
  const parts: string[] = [];
  let part = '';
  for (const { segment } of graphemes.segment(word)) {
    if (part !== '' && textWidth(part + segment, size, face) > width) {
      parts.push(part);
      part = segment;
    } else part += segment;
  }
  if (part !== '') parts.push(part);
  return parts;
}
