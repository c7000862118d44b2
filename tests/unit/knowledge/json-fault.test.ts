/** The engine's own JSON.parse is the reference for whether a text is JSON; where it stops is written out by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { jsonFaultAt } from '#analysis/knowledge/json-fault.ts';

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch (error) {
    if (error instanceof SyntaxError) return false;
    throw error;
  }
}

describe('where a text stops being JSON', () => {
  test.each<[string, number]>([
    ['', 0],
    ['   ', 3],
    ['{"a": 1', 7],
    ['{"a": 1,}', 8],
    ['[1, 2,]', 6],
    ['[1 2]', 3],
    ['{"a" 1}', 5],
    ['{a: 1}', 1],
    ['{"a": tru}', 6],
    ['{"a": "x}', 6],
    ['["tab\there"]', 1],
    ['[01]', 2],
    ['[1.]', 2],
    ['[-]', 1],
    ["['a']", 1],
    ['{} {}', 3],
    ['[1] // note', 4],
    ['{"a": [1, {"b": ]}', 16],
  ])('%j at %i', (text, at) => {
    expect(isJson(text)).toBe(false);
    expect(jsonFaultAt(text)).toBe(at);
  });

  test('JSON of every kind has no such place', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), fc.constantFrom(undefined, 2, '\t'), (text, indent) => {
        expect(jsonFaultAt(text)).toBeNull();
        expect(jsonFaultAt(JSON.stringify(JSON.parse(text), null, indent))).toBeNull();
      }),
    );
  });

  test('JSON with a piece cut out or put in is judged as JSON.parse judges it', () => {
    const pieces = fc.constantFrom(
      '',
      ',',
      ':',
      '"',
      '\\',
      '{',
      '}',
      '[',
      ']',
      '-',
      '0',
      '.',
      'e',
      'null',
      ' ',
      '\n',
    );
    fc.assert(
      fc.property(fc.json({ maxDepth: 4 }), fc.nat(), fc.nat(3), pieces, (text, place, length, piece) => {
        const from = place % (text.length + 1);
        const changed = text.slice(0, from) + piece + text.slice(from + length);
        expect(jsonFaultAt(changed) === null).toBe(isJson(changed));
      }),
      { numRuns: 3000 },
    );
  });

  test('whatever stands before the place can still become JSON, so it is not too late a place', () => {
    const pieces = fc.array(fc.constantFrom('[', ']', '{', '}', ',', ':', '1', '"a"', 'true', ' '), {
      maxLength: 12,
    });
    fc.assert(
      fc.property(pieces, (parts) => {
        const text = parts.join('');
        const at = jsonFaultAt(text);
        fc.pre(at !== null && at < text.length);
        expect(jsonFaultAt(text.slice(0, at))).toSatisfy(
          (earlier: number | null) => earlier === null || earlier === at,
        );
      }),
    );
  });
});
