import { describe, expect, test } from 'vitest';

import { broken, entry, refusalOf } from './pack-refusals.ts';
import { windlassFile } from './small-pack.ts';

describe('a loop is refused and named from cause to effect', () => {
  const because = 'So it is said.';

  test('of two conditions', () => {
    const text = broken((p) => {
      entry(p.conditions, 0).causes.push({ from: 'drum-loose', word: 'often', because });
    });
    expect(refusalOf(text).details).toEqual({
      file: windlassFile,
      place: 'conditions[0] "bearings-worn" / causes',
      reason: 'this runs in a loop: bearings-worn -> drum-loose -> bearings-worn',
    });
  });

  test('of one condition', () => {
    const text = broken((p) => {
      entry(p.conditions, 1).causes.push({ from: 'drum-loose', word: 'often', because });
    });
    expect(refusalOf(text).details).toMatchObject({
      place: 'conditions[1] "drum-loose" / causes',
      reason: 'this runs in a loop: drum-loose -> drum-loose',
    });
  });

  test('of three, reached from outside: what leads into it is not named', () => {
    const text = broken((p) => {
      const condition = (id: string, from: string) => ({
        id,
        label: id,
        causes: [{ from, word: 'often' as const, because }],
        leak: 'rarely' as const,
      });
      p.conditions.push(condition('c', 'e'), condition('d', 'c'), condition('e', 'd'));
      entry(p.conditions, 3).causes.push({ from: 'bearings-worn', word: 'rarely', because });
    });
    expect(refusalOf(text).details).toMatchObject({
      place: 'conditions[2] "c" / causes',
      reason: 'this runs in a loop: c -> d -> e -> c',
    });
  });

  test('of kinds that narrow each other', () => {
    const text = broken((p) => {
      entry(p.kinds, 0).narrows = 'rub-all-round';
    });
    expect(refusalOf(text).details).toMatchObject({
      place: 'kinds[0] "rub" / narrows',
      reason: 'this runs in a loop: rub -> rub-all-round -> rub',
    });
  });
});
