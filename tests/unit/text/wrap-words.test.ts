import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textWidth } from '#analysis/text/font-metrics.ts';
import { unwrapped, wrapWords } from '#analysis/text/wrap-words.ts';

const size = 9.5;
const face = 'sans-400' as const;
const wordsOf = (text: string) => text.replace(/[^\S\u00a0\u202f]+/gu, ' ').replace(/^ | $/g, '');
const anyText = fc.oneof(
  fc.string(),
  fc.string({ unit: 'grapheme' }),
  fc
    .array(fc.constantFrom('oil', 'thrust-bearing', 'end float', '\n', '  ', 'W'.repeat(40)))
    .map((all) => all.join(' ')),
);

describe('wrapWords', () => {
  it('has no line wider than asked, but for single characters', () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: 10, max: 200 }), (text, width) => {
        const { lines, width: widest } = wrapWords(text, width, size, face);
        const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });
        for (const line of lines) {
          if ([...graphemes.segment(line.text)].length > 1) {
            expect(textWidth(line.text, size, face)).toBeLessThanOrEqual(width);
          }
          expect(textWidth(line.text, size, face)).toBeLessThanOrEqual(widest);
        }
      }),
    );
  });

  it('gives the words back', () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: 10, max: 200 }), (text, width) => {
        const words = wordsOf(text);
        // A no-break space at the very end of a line is white space like any other.
        fc.pre(!/[\u00a0\u202f]( |$)|^[\u00a0\u202f]/.test(words));
        expect(unwrapped(wrapWords(text, width, size, face))).toBe(words);
      }),
    );
  });

  it('breaks at spaces, after the hyphen between parts of a word, and within a word too long for a line', () => {
    const lines = (text: string, width: number) =>
      wrapWords(text, width, size, face).lines.map((line) => [line.text, line.runsOn]);
    const width = textWidth('the thrust-', size, face);
    expect(lines('the thrust-bearing', width)).toEqual([
      ['the thrust-', true],
      ['bearing', false],
    ]);
    expect(lines('the\n thrust', textWidth('thrust', size, face))).toEqual([
      ['the', false],
      ['thrust', false],
    ]);
    expect(lines('WWWW', textWidth('WW', size, face))).toEqual([
      ['WW', true],
      ['WW', false],
    ]);
    expect(lines('', 50)).toEqual([['', false]]);
  });
});
