/** The circle that points lie on. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { PlanePoint } from '#analysis/marks/drawing-path.ts';
import { algebraicCircle, distancesFrom, fitCircle, type Circle } from '#analysis/measure/fit-circle.ts';

const point = (x: number, y: number): PlanePoint => ({ x, y });

function fitted(points: readonly PlanePoint[]): Circle {
  const found = fitCircle(points);
  if (found.kind === 'refused') throw new Error(found.because);
  return found.circle;
}

// Gander, Golub & Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994), from memory.
const published = [point(1, 7), point(2, 6), point(5, 8), point(7, 7), point(9, 5), point(3, 7)];

describe('a circle through points', () => {
  test('by least squares of the distances is the published one', () => {
    const { centre, radius } = fitted(published);
    expect(centre.x).toBeCloseTo(4.7398, 4);
    expect(centre.y).toBeCloseTo(2.9835, 4);
    expect(radius).toBeCloseTo(4.7142, 4);
  });

  test('begins at the published algebraic one', () => {
    const start = algebraicCircle(published);
    expect(start?.centre.x).toBeCloseTo(5.3794, 4);
    expect(start?.centre.y).toBeCloseTo(7.2532, 4);
    expect(start?.radius).toBeCloseTo(3.037, 4);
  });

  test('leaves a larger sum of squares a step away in any direction', () => {
    const best = fitted(published);
    const squares = (circle: Circle) =>
      distancesFrom(circle, published).reduce((sum, one) => sum + one * one, 0);
    for (const [dx, dy, dr] of [
      [1e-3, 0, 0],
      [0, 1e-3, 0],
      [0, 0, 1e-3],
    ] as const) {
      for (const sign of [1, -1]) {
        const beside = {
          centre: point(best.centre.x + sign * dx, best.centre.y + sign * dy),
          radius: best.radius + sign * dr,
        };
        expect(squares(beside)).toBeGreaterThan(squares(best));
      }
    }
  });

  test('of points that lie on one is that one', () => {
    const turns = fc.uniqueArray(fc.integer({ min: 0, max: 35 }), { minLength: 3, maxLength: 12 });
    const coordinate = fc.double({ min: -3000, max: 3000, noNaN: true });
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        fc.double({ min: 5, max: 2000, noNaN: true }),
        turns,
        (x, y, r, at) => {
          const points = at.map((turn) => {
            const angle = (turn * Math.PI) / 18;
            return point(x + r * Math.cos(angle), y + r * Math.sin(angle));
          });
          const { centre, radius } = fitted(points);
          expect(Math.hypot(centre.x - x, centre.y - y)).toBeLessThan(1e-6);
          expect(Math.abs(radius - r)).toBeLessThan(1e-6);
        },
      ),
    );
  });
});

describe('no circle', () => {
  const faultOf = (points: readonly PlanePoint[]) => {
    const found = fitCircle(points);
    return found.kind === 'refused' ? found.because : null;
  };

  test('goes through points on a line, or fewer than three', () => {
    expect(faultOf(published.slice(0, 2))).toBe('too-few-points');
    expect(faultOf([point(0, 0), point(1, 2), point(2, 4), point(5, 10)])).toBe('on-a-line');
    expect(faultOf([point(1000, 1000), point(1200, 1333), point(1400, 1666)])).toBe('on-a-line');
    expect(faultOf([point(3, 3), point(3, 3), point(3, 3)])).toBe('on-a-line');
    expect(faultOf([point(0, 0), point(5, NaN), point(2, 4)])).toBe('on-a-line');
  });

  test('fits a zigzag better than its straight line does', () => {
    const zigzag = [0, 1, 2, 3, 4, 5, 6, 7].map((at) => point(at * 100, at % 2));
    expect(faultOf(zigzag)).toBe('no-fit');
  });
});
