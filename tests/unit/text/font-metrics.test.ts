import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

import { describe, expect, it } from 'vitest';

import { advanceWidth, faces, textWidth, wrapText } from '#analysis/text/font-metrics.ts';

import { fontFile } from '../../../electron/report/font-files.ts';
import { readTrueType } from '../../../electron/report/truetype-file.ts';

/** The reference: fontkit, the font library that the PDF writer itself sets text with. It has no types. */
type Fontkit = {
  create(bytes: Buffer): {
    unitsPerEm: number;
    characterSet: number[];
    glyphForCodePoint(codePoint: number): { id: number; advanceWidth: number };
    layout(text: string, features?: Record<string, boolean>): { advanceWidth: number };
  };
};
const fontkit = createRequire(import.meta.url)('fontkit') as Fontkit;

const sample =
  'ABCXYZabcxyz0123456789 .,:;!?()[]/–—„“”‘’…•ÄÖÜäöüßéèçñåøØµ±×°½ĀāŁłŒœŠšŽžΑΒΓΩαβγωЖБЯжбяё€№≤≥≠≈−→';

describe.each(faces)('metrics of %s', (face) => {
  const font = fontkit.create(readFileSync(fontFile(face)));

  it('has the advance width of every sampled character that fontkit reads from the file', () => {
    for (const character of sample) {
      const code = character.codePointAt(0) ?? 0;
      const expected = font.characterSet.includes(code)
        ? font.glyphForCodePoint(code).advanceWidth
        : font.glyphForCodePoint(0x10ffff).advanceWidth;
      expect([character, advanceWidth(character, face)]).toEqual([character, expected]);
    }
  });

  it('adds up to what fontkit sets without kerning and ligatures', () => {
    const text = 'AVATAR WAVE, Tyre 7.1 Thrust bearing, Größe ≤ 0.08 mm';
    const plain = font.layout(text, { kern: false, liga: false, ccmp: false });
    expect(textWidth(text, 1000, face)).toBeCloseTo(plain.advanceWidth, 6);
  });

  it('stays within 3 % of text set with kerning, and is told apart from it by pairs such as AV', () => {
    const text = 'All three pads of the front face are worn to the level of the grooves (Plate 7, left).';
    const kerned = font.layout(text).advanceWidth;
    expect(Math.abs(textWidth(text, 1000, face) / kerned - 1)).toBeLessThan(0.03);
    expect(font.layout('AVAVAV').advanceWidth).toBeLessThan(textWidth('AVAVAV', 1000, face));
  });

  it('reads the same characters from the file as fontkit', () => {
    const file = readTrueType(readFileSync(fontFile(face)));
    expect(file.unitsPerEm).toBe(font.unitsPerEm);
    for (const code of font.characterSet) {
      const glyph = font.glyphForCodePoint(code);
      expect([code, file.glyphOf(code)]).toEqual([code, glyph.id]);
      expect([code, file.advanceOf(glyph.id)]).toEqual([code, glyph.advanceWidth]);
    }
    expect(file.glyphOf(0x6f22)).toBe(0);
  });
});

describe('textWidth', () => {
  it('grows with the size and takes combining marks as no wider', () => {
    expect(textWidth('Plate', 24, 'sans-600')).toBeCloseTo(2 * textWidth('Plate', 12, 'sans-600'), 9);
    expect(textWidth('u\u0308', 10, 'serif-400')).toBe(textWidth('u', 10, 'serif-400'));
    expect(textWidth('', 10, 'serif-400')).toBe(0);
  });
});

describe('wrapText', () => {
  const claim =
    'The turbocharger was noisy from the first hour, the supplier says it must have been dirt in the oil.';

  it('keeps every word in order and no line wider than asked', () => {
    for (const width of [70, 90, 150, 400]) {
      const lines = wrapText(claim, width, 11, 'serif-400-italic');
      expect(lines.join(' ')).toBe(claim);
      for (const line of lines) expect(textWidth(line, 11, 'serif-400-italic')).toBeLessThanOrEqual(width);
    }
  });

  it('is greedy: the first word of a line would not have fitted on the line before', () => {
    const lines = wrapText(claim, 120, 11, 'serif-400');
    expect(lines.length).toBeGreaterThan(3);
    lines.slice(1).forEach((line, index) => {
      const longer = `${lines[index]} ${line.split(' ')[0]}`;
      expect(textWidth(longer, 11, 'serif-400')).toBeGreaterThan(120);
    });
  });

  it('breaks a word that is too long and never between a letter and its mark', () => {
    const lines = wrapText('xe\u0301e\u0301e\u0301e\u0301e\u0301', 13, 12, 'sans-400');
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join('')).toBe('xe\u0301e\u0301e\u0301e\u0301e\u0301');
    for (const line of lines) expect(line.startsWith('\u0301')).toBe(false);
    expect(wrapText('abc', 0.1, 12, 'sans-400')).toEqual(['a', 'b', 'c']);
  });

  it('breaks after a hyphen between letters, not before a digit, not at a no-break space', () => {
    const fitting = (text: string) => textWidth(text, 10, 'sans-400');
    expect(wrapText('thrust-bearing', fitting('thrust-b'), 10, 'sans-400')).toEqual(['thrust-', 'bearing']);
    expect(wrapText('p SW-1180', fitting('SW-1180'), 10, 'sans-400')).toEqual(['p', 'SW-1180']);
    expect(wrapText('a 12\u00a0mm', fitting('12\u00a0mm'), 10, 'sans-400')).toEqual(['a', '12\u00a0mm']);
    expect(wrapText('a - b -5', fitting('a - b -'), 10, 'sans-400')).toEqual(['a - b', '-5']);
  });

  it('keeps line breaks, empty lines and indents, and drops spaces at a break', () => {
    expect(wrapText('one\r\n\n  two  ', 500, 10, 'sans-400')).toEqual(['one', '', '  two']);
    expect(wrapText('', 50, 10, 'sans-400')).toEqual(['']);
    expect(wrapText('ab     cd', textWidth('ab   ', 10, 'sans-400'), 10, 'sans-400')).toEqual(['ab', 'cd']);
  });
});
