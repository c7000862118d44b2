/** Four clicks that cannot be a rectangle's corners in order. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { PlanePoint } from '#analysis/marks/drawing-path.ts';
import { cornerFault, runsClockwise, type FourCorners } from '#analysis/measure/corner-fault.ts';

const point = (x: number, y: number): PlanePoint => ({ x, y });
const a = point(100, 100);
const b = point(900, 150);
const c = point(850, 700);
const d = point(150, 600);
const click = 1.5;

describe('four corners', () => {
  test('will do from any start and either way round', () => {
    fc.assert(
      fc.property(fc.nat(3), fc.boolean(), (start, turned) => {
        const round = [0, 1, 2, 3].map((step) => [a, b, c, d][(start + (turned ? 4 - step : step)) % 4]!);
        const corners = round as unknown as FourCorners;
        expect(cornerFault(corners, click)).toBeNull();
        expect(runsClockwise(corners)).toBe(!turned);
      }),
    );
  });

  test('in any order that crosses are refused as such', () => {
    for (const crossing of [
      [a, c, b, d],
      [a, b, d, c],
      [b, d, c, a],
    ] as const) {
      expect(cornerFault(crossing, click)).toBe('crossing-order');
    }
  });

  test('one of which lies within the others are refused', () => {
    expect(cornerFault([a, b, c, point(620, 330)], click)).toBe('corner-inside');
  });

  test('three of which cannot be told from a line, or two from each other, are refused', () => {
    expect(cornerFault([a, point(500, 125), b, c], click)).toBe('three-on-a-line');
    // 4.4 pixels off the line: under three click uncertainties of 1.5. At 4.6 it will do.
    const level = (off: number): FourCorners => [
      point(0, 0),
      point(500, -off),
      point(1000, 0),
      point(500, 800),
    ];
    expect(cornerFault(level(4.4), click)).toBe('three-on-a-line');
    expect(cornerFault(level(4.6), click)).toBeNull();
    const small = (side: number): FourCorners => [
      point(0, 0),
      point(side, 0),
      point(side, side),
      point(0, side),
    ];
    expect(cornerFault(small(14.9), click)).toBe('too-small');
    expect(cornerFault(small(15.1), click)).toBeNull();
    expect(cornerFault([a, b, b, d], click)).toBe('too-small');
    expect(cornerFault([a, b, c, point(NaN, 1)], click)).toBe('not-finite');
  });
});
