import { readFileSync } from 'node:fs';

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { faces, type Face } from '#analysis/text/font-metrics.ts';

import { fontFile } from '../../../electron/report/font-files.ts';
import { printableText } from '../../../electron/report/printable-text.ts';
import { readTrueType, type TrueTypeFile } from '../../../electron/report/truetype-file.ts';

const fonts = Object.fromEntries(
  faces.map((face) => [face, readTrueType(readFileSync(fontFile(face)))]),
) as Record<Face, TrueTypeFile>;

const printed = (text: string, face: Face = 'serif-400') =>
  printableText(fonts)
    .runs(text, face)
    .map((run) => run.text)
    .join('');

describe('printableText', () => {
  it('leaves what the fonts have as it is', () => {
    const text = 'Größe ≤ 0,08 µm, Ø 12 „neu“; Ελληνικά; Кириллица; ±2 °C';
    expect(printed(text)).toBe(text);
    const printable = printableText(fonts);
    printable.runs(text, 'serif-400-italic');
    expect(printable.replacedAny).toBe(false);
  });

  it('prints what no face has as its number, and remembers that it did', () => {
    const printable = printableText(fonts);
    expect(printable.plain('漢 ok', 'sans-400')).toBe('[U+6F22] ok');
    expect(printable.replacedAny).toBe(true);
    expect(printed('a\u{1f600}b')).toBe('a[U+1F600]b');
    expect(printed('x\u202ey')).toBe('x[U+202E]y');
    expect(printed('\ud800')).toBe('[U+D800]');
  });

  it('sets a word that only the sans face has in the sans face, and no other word', () => {
    const inSans = [...'ŧ\u2011ɑℓ→√∞'].filter(
      (character) =>
        fonts['serif-400'].glyphOf(character.codePointAt(0) ?? 0) === 0 &&
        fonts['sans-400'].glyphOf(character.codePointAt(0) ?? 0) !== 0,
    );
    const only = inSans[0];
    if (only === undefined) throw new Error('none of the characters tried is in the sans face alone');
    expect(printableText(fonts).runs(`from ${only}x to`, 'serif-400')).toEqual([
      { text: 'from ', face: 'serif-400' },
      { text: `${only}x`, face: 'sans-400' },
      { text: ' to', face: 'serif-400' },
    ]);
  });

  it('makes one kind of line break of all, and composes letters (Unicode NFC)', () => {
    expect(printed('a\r\nb\rc\u2028d\ne')).toBe('a\nb\nc\nd\ne');
    expect(printed('u\u0308ber')).toBe('\u00fcber');
    expect(printed('so\u00adft\u200b\ufeff')).toBe('soft');
    expect(printed('0,08\u2009mm', 'sans-600')).toMatch(/^0,08[ \u2009]mm$/);
  });

  it('never leaves a character without a glyph', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), fc.constantFrom(...faces), (text, face) => {
        for (const run of printableText(fonts).runs(text, face)) {
          for (const character of run.text) {
            if (character === '\n') continue;
            expect(fonts[run.face].glyphOf(character.codePointAt(0) ?? 0)).toBeGreaterThan(0);
          }
        }
      }),
    );
  });
});
