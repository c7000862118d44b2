/**
 * Text as the embedded fonts can print it. A word with a character its face lacks is set in the sans face where
 * that has it; a character neither has is printed as its number, "[U+6F22]": visible, and still telling which it was.
 */
import type { Face } from '#analysis/text/font-metrics.ts';

import type { TrueTypeFile } from './truetype-file.ts';

export type TextRun = { readonly text: string; readonly face: Face };

const secondFace: Readonly<Record<Face, Face>> = {
  'sans-400': 'sans-400',
  'sans-600': 'sans-600',
  'sans-400-italic': 'sans-400-italic',
  'serif-400': 'sans-400',
  'serif-600': 'sans-600',
  'serif-400-italic': 'sans-400-italic',
};

/** Characters that only steer layout and leave no trace on paper: soft hyphen, joiners, variation selectors. */
const traceless = /\u00ad|\u200b|\u200c|\u200d|\u2060|\ufeff|\p{Variation_Selector}/gu;

export type PrintableText = {
  /** Runs of one face each; together they say what `text` says, line breaks (\n) included. */
  runs(text: string, face: Face): readonly TextRun[];
  /** The same in one face, for places that cannot change it. */
  plain(text: string, face: Face): string;
  /** True once any character had to be printed as its number. */
  readonly replacedAny: boolean;
};

export function printableText(fonts: Readonly<Record<Face, TrueTypeFile>>): PrintableText {
  let replacedAny = false;
  const has = (face: Face, character: string) => fonts[face].glyphOf(character.codePointAt(0) ?? 0) !== 0;
  const hasAll = (face: Face, word: string) => [...word].every((character) => has(face, character));
  const replaced = (face: Face, word: string) =>
    [...word]
      .map((character) => {
        if (character === '\n' || has(face, character)) return character;
        if (/\p{Zs}/u.test(character)) return ' ';
        replacedAny = true;
        return `[U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}]`;
      })
      .join('');

  const runs = (text: string, face: Face): TextRun[] => {
    const found: { text: string; face: Face }[] = [];
    for (const word of tidied(text).match(/\s+|\S+/g) ?? []) {
      const second = secondFace[face];
      const wordFace = /^\s/.test(word) || hasAll(face, word) || !hasAll(second, word) ? face : second;
      const last = found.at(-1);
      const printed = replaced(wordFace, word);
      if (last?.face === wordFace) last.text += printed;
      else found.push({ text: printed, face: wordFace });
    }
    return found;
  };

  return {
    runs,
    plain: (text, face) => replaced(face, tidied(text)),
    get replacedAny() {
      return replacedAny;
    },
  };
}

/** Line breaks of every kind as \n, tabs as spaces, composed letters (Unicode NFC), nothing traceless. */
function tidied(text: string): string {
  return text
    .normalize('NFC')
    .replace(/\r\n?|[\u0085\u2028\u2029\v\f]/g, '\n')
    .replace(/\t/g, '    ')
    .replace(traceless, '');
}
