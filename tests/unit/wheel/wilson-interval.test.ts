/** Between which shares a count leaves the true one. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { wilsonInterval } from '#analysis/wheel/wilson-interval.ts';

describe('the interval of a share', () => {
  // Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, method 3 (score).
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %d of %d is the published one', (hit, of, low, high) => {
    const found = wilsonInterval(hit, of);
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
  });

  test('holds the share, and mirrors that of what was not hit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.nat(40), (of, some) => {
        const hit = some % (of + 1);
        const { low, high } = wilsonInterval(hit, of);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual(hit / of);
        expect(high).toBeGreaterThanOrEqual(hit / of);
        const others = wilsonInterval(of - hit, of);
        expect(1 - others.high).toBeCloseTo(low, 12);
      }),
    );
  });

  test('is none of what is no share', () => {
    for (const [hit, of] of [
      [0, 0],
      [3, 2],
      [-1, 4],
      [1.5, 4],
    ] as const) {
      expect(() => wilsonInterval(hit, of)).toThrow(RangeError);
    }
  });
});
