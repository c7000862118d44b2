import { describe, expect, it } from 'vitest';
import { roundedResult } from '#analysis/measure/rounded-result.ts';

describe('a result is written with its uncertainty to two figures', () => {
  // JCGM 100:2008, 7.2.2 and 7.2.6: a mass of 100.021 47 g with U = 0.000 79 g (k = 2.26); from memory of the text.
  it('as the guide writes one', () => {
    expect(roundedResult(100.021_47, 0.000_79)).toEqual({ value: '100.02147', expanded: '0.00079' });
  });

  it.each([
    [12.345, 0.234, '12.35', '0.23'],
    [12.345, 0.0996, '12.35', '0.10'],
    [812.4, 13.6, '812', '14'],
    [812.4, 0, '812.4', '0'],
  ])('%d with %d', (value, expanded, said, saidExpanded) => {
    expect(roundedResult(value, expanded)).toEqual({ value: said, expanded: saidExpanded });
  });

  it('and never written where it is no number', () => {
    expect(() => roundedResult(Number.NaN, 1)).toThrow(RangeError);
  });
});
