import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { ownWords, type OwnBlock } from '#analysis/report/own-words.ts';
import type { ReferenceTarget } from '#analysis/report/references.ts';

const targets: readonly ReferenceTarget[] = [
  { kind: 'finding', names: ['3'], number: '3', destination: 'finding-3' },
  { kind: 'plate', names: ['_DSC_0042_.jpg'], number: '7', destination: 'plate-x' },
];

/** Runs of a paragraph as [words, s for strong, e for emphasis, where it leads]; items of a list as [marker, ...]. */
function shown(blocks: readonly OwnBlock[]): unknown[] {
  return blocks.map((block) =>
    block.type === 'paragraph'
      ? block.runs.map(({ text, strong, emphasis, to }) => {
          const style = (strong ? 's' : '') + (emphasis ? 'e' : '');
          return [text, ...(style === '' ? [] : [style]), ...(to === null ? [] : [to])];
        })
      : { items: block.items.map(({ marker, blocks: inner }) => [marker, ...shown(inner)]) },
  );
}

const read = (text: string) => shown(ownWords(text, targets));

/** Examples of CommonMark 0.31.2 (https://spec.commonmark.org/0.31.2/), each with the section it stands in. */
describe('formatting as CommonMark defines it', () => {
  it.each([
    ['6.2', '*foo bar*', [[['foo bar', 'e']]]],
    ['6.2', 'a * foo bar*', [[['a * foo bar*']]]],
    ['6.2', 'foo*bar*', [[['foo'], ['bar', 'e']]]],
    ['6.2', '_foo bar_', [[['foo bar', 'e']]]],
    ['6.2', 'foo_bar_', [[['foo_bar_']]]],
    ['6.2', '**foo bar**', [[['foo bar', 's']]]],
    ['6.2', '** foo bar**', [[['** foo bar**']]]],
    ['6.2', 'foo**bar**', [[['foo'], ['bar', 's']]]],
    ['6.2', 'foo__bar__', [[['foo__bar__']]]],
    ['4.8', 'aaa\n\nbbb', [[['aaa']], [['bbb']]]],
    ['4.8', 'aaa\n\n\nbbb', [[['aaa']], [['bbb']]]],
    [
      '3.1',
      '- `one\n- two`',
      [
        {
          items: [
            ['–', [['`one']]],
            ['–', [['two`']]],
          ],
        },
      ],
    ],
    [
      '5.3',
      '- foo\n- bar\n+ baz',
      [
        {
          items: [
            ['–', [['foo']]],
            ['–', [['bar']]],
          ],
        },
        { items: [['+', [['baz']]]] },
      ],
    ],
    [
      '5.3',
      '1. foo\n2. bar\n3) baz',
      [
        {
          items: [
            ['1.', [['foo']]],
            ['2.', [['bar']]],
          ],
        },
        { items: [['3)', [['baz']]]] },
      ],
    ],
    ['5.2', '123456789. ok', [{ items: [['123456789.', [['ok']]]] }]],
    [
      '5.3',
      'The number of windows in my house is\n14.  The number of doors is 6.',
      [[['The number of windows in my house is\n14.  The number of doors is 6.']]],
    ],
    ['5.2', '-one', [[['-one']]]],
    ['5.2', '2.two', [[['2.two']]]],
  ] as const)('section %s: %j', (_, text, expected) => {
    expect(read(text)).toEqual(expected);
  });

  it('counts a numbered list on from its first number', () => {
    expect(read('7. a\n7. b')).toEqual([
      {
        items: [
          ['7.', [['a']]],
          ['8.', [['b']]],
        ],
      },
    ]);
  });
});

describe('what is no formatting of ours', () => {
  it.each([
    '# Heading',
    'Heading\n=======',
    '[words](https://example.org "title")',
    '![words](picture.jpg)',
    '<b>words</b> &amp; &lt;',
    '`*code*`',
    '    indented',
    '```\n*fenced*\n```',
    '> quoted',
    '---',
    '[label]: https://example.org',
    '~~struck~~ and https://example.org',
    '| a | b |\n|---|---|\n| 1 | 2 |',
    '5 * 3 = 15, 2 * 4 = 8; C:\\new\\*.jpg is not',
  ])('is printed as it was written: %j', (text) => {
    const [block] = ownWords(text, targets);
    const words = block?.type === 'paragraph' ? block.runs.map((run) => run.text).join('') : '';
    expect(words.trimEnd()).toBe(text.replace('\\*', '*').trimEnd());
    expect(block?.type === 'paragraph' && block.runs.some(({ strong, emphasis }) => strong || emphasis)).toBe(
      false,
    );
  });
});

describe('references', () => {
  it('become the number they have, in any style, and may hold signs of formatting', () => {
    expect(read('See **[finding 3]**, [Plate _DSC_0042_.jpg] and [finding 4].')).toEqual([
      [
        ['See '],
        ['finding\u00a03', 's', 'finding-3'],
        [', '],
        ['Plate\u00a07', 'plate-x'],
        [' and [finding 4].'],
      ],
    ]);
  });

  it('stay as they were written within what is printed as written', () => {
    expect(read('`[finding 3]`')).toEqual([[['`[finding 3]`']]]);
    expect(read('[finding 3](above)')).toEqual([[['finding\u00a03', 'finding-3'], ['(above)']]]);
  });
});

describe('any text', () => {
  const letters = (text: string) => (text.normalize('NFC').match(/\p{L}/gu) ?? []).join('');
  const allWords = (blocks: readonly OwnBlock[]): string =>
    blocks
      .map((block) =>
        block.type === 'paragraph'
          ? block.runs.map((run) => run.text).join('')
          : block.items.map(({ blocks: inner }) => allWords(inner)).join(''),
      )
      .join('');
  const piece = fc.oneof(
    fc.constantFrom(
      ...[
        '*',
        '**',
        '_',
        '__',
        '`',
        '~~',
        '#',
        '- ',
        '* ',
        '+ ',
        '1. ',
        '2) ',
        '> ',
        '    ',
        '\t',
        '\n',
        '\n\n',
      ],
      ...['[', ']', '(', ')', '<', '>', '!', '\\', '&amp;', '<b>', '<!--', '-->', '---', '===', '|', '\r\n'],
      ...['[finding 3]', '[plate x]', '[a]: b', 'https://x.y', '\ue000', '\ue0000\ue000', 'ä', '漢', ' '],
    ),
    fc.string({ maxLength: 6 }),
    fc.string({ unit: 'grapheme', maxLength: 4 }),
  );

  it('loses no letter of its words, and puts none in another place', () => {
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const text = pieces.join('');
        expect(letters(allWords(ownWords(text, targets)))).toBe(letters(text));
      }),
      { numRuns: 2_000, seed: 20 },
    );
  });
});
