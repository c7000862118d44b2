/** What was typed, taken apart; and text cut round what was found. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { excerptOf } from '#analysis/search/excerpt.ts';
import { foldedWords } from '#analysis/search/folded-words.ts';
import { goesOn, readSearchText } from '#analysis/search/search-text.ts';

const itemsOf = (text: string) =>
  readSearchText(text).items.map(({ written, phrase }) => (phrase ? `“${written}”` : written));

describe('what was typed', () => {
  test.each([
    ['words apart by spaces', 'nut  loose', ['nut', 'loose']],
    ['each once', 'nut Nut nut', ['nut']],
    ['a phrase in quotes', '"contour rub" nut', ['“contour rub”', 'nut']],
    [
      'quotes as they are set',
      '“contour rub” „Öl im Filter“ «jeu axial»',
      ['“contour rub”', '“Öl im Filter”', '“jeu axial”'],
    ],
    ['a quote that is never closed is none', '"contour rub', ['contour', 'rub']],
    ['what has no letter or digit is nothing', '- + 🔩 "—" ""', []],
    ['brackets and stops round a word are nothing', '(nut), loose.', ['nut', 'loose']],
    ['a hyphen stays: its words stand side by side', 'R45-1180', ['R45-1180']],
  ])('%s', (_name, text, items) => {
    expect(itemsOf(text)).toEqual(items);
  });

  test('a word goes on, a phrase and a single letter do not', () => {
    const [nut, letter, phrase] = readSearchText('nut a "worn away"').items;
    expect([nut!, letter!, phrase!].map(goesOn)).toEqual([true, false, false]);
  });

  test('nothing of it is a control character or the mark between documents', () => {
    expect(readSearchText('nut\u0000loose\uE000off\n').whole).toBe('nut loose off');
  });
});

describe('an excerpt', () => {
  const cut = (text: string, typed: string) =>
    excerptOf([text], readSearchText(typed).items)?.excerpt ?? null;
  const shown = (text: string, typed: string) =>
    cut(text, typed)
      ?.map(({ text: piece, matched }) => (matched ? `[${piece}]` : piece))
      .join('');

  test.each([
    ['a word', 'The nut came loose.', 'nut', 'The [nut] came loose.'],
    ['the beginning of one, shown whole', 'The nuts came loose.', 'nut', 'The [nuts] came loose.'],
    ['accents or none', 'Ölfrei gelaufen, Öl', 'ol', '[Ölfrei] gelaufen, [Öl]'],
    [
      'a phrase, and not its words elsewhere',
      'rub, then contour rub',
      '"contour rub"',
      'rub, then [contour rub]',
    ],
    ['a word with a hyphen', 'unit R45-1180, R45 1180', 'r45-11', 'unit [R45-1180], [R45 1180]'],
    [
      'the field in which more of it stands',
      'nut\uE000the nut is loose',
      'loose nut',
      'the [nut] is [loose]',
    ],
  ])('%s', (_name, text, typed, expected) => {
    expect(shown(text, typed)).toBe(expected);
  });

  test('of a long text is the words about the match', () => {
    const words = Array.from({ length: 200 }, (_, place) => `w${String(place)}`);
    const excerpt = shown(words.join(' '), 'w100')!;
    expect(excerpt).toMatch(/^…w96 .*\[w100\].* w111…$/);
  });

  test('is null where nothing of it stands there', () => {
    expect(cut('The nut came loose.', 'whistle')).toBeNull();
    expect(cut('contour\uE000rub', '"contour rub"')).toBeNull();
    expect(cut('peanuts', 'nut')).toBeNull();
  });

  test('flags just the words that fit, and leaves no letter out', () => {
    const word = fc.constantFrom('nut', 'nuts', 'Müll', 'rub', 'contour', 'x', '12-7', 'loose,');
    const text = fc.array(word, { minLength: 1, maxLength: 12 }).map((words) => words.join(' '));
    fc.assert(
      fc.property(text, fc.constantFrom('nut', 'mull', 'rub', '"rub contour"'), (written, typed) => {
        const pieces = cut(written, typed);
        const [item] = readSearchText(typed).items;
        const words = foldedWords(written);
        const stands = words.some((_, at) =>
          item!.words.every((one, offset) =>
            goesOn(item!) ? words[at + offset]?.startsWith(one) : words[at + offset] === one,
          ),
        );
        expect(pieces !== null).toBe(stands);
        if (pieces === null) return;
        expect(pieces.map((piece) => piece.text).join('')).toBe(written);
        for (const piece of pieces.filter(({ matched }) => matched)) {
          expect(foldedWords(piece.text)[0]?.startsWith(item!.words[0]!)).toBe(true);
        }
      }),
      { numRuns: 500, seed: 20260405 },
    );
  });
});
