/** The map between a plane and its picture. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { PlanePoint } from '#analysis/marks/drawing-path.ts';
import { cornerFault, type FourCorners } from '#analysis/measure/corner-fault.ts';
import {
  inverseHomography,
  mapPoint,
  solveHomography,
  type Homography,
} from '#analysis/measure/homography.ts';

import { seededChance } from './seeded-chance.ts';
import { mappedByLibrary } from './vision-library.ts';

const point = (x: number, y: number): PlanePoint => ({ x, y });
const pairsOf = (from: readonly PlanePoint[], to: readonly PlanePoint[]) =>
  from.map((one, at) => ({ from: one, to: to[at]! }));

function solved(from: readonly PlanePoint[], to: readonly PlanePoint[]): Homography {
  const found = solveHomography(pairsOf(from, to));
  if (found.kind === 'refused') throw new Error(found.because);
  return found.matrix;
}

function faultOf(from: readonly PlanePoint[], to: readonly PlanePoint[]) {
  const found = solveHomography(pairsOf(from, to));
  return found.kind === 'refused' ? found.because : null;
}

function expectNear(found: PlanePoint | null, expected: PlanePoint, within: number) {
  if (found === null) throw new Error('the point is beyond the horizon');
  expect(Math.hypot(found.x - expected.x, found.y - expected.y)).toBeLessThanOrEqual(within);
}

const square = [point(0, 0), point(100, 0), point(100, 100), point(0, 100)];
const seen = [point(3, 4), point(101.5, 27), point(75.75, 88.5), point(34 + 1 / 3, 101 + 1 / 3)];

/** Convex quads: one corner in each quarter of a picture. */
const inset = fc.tuple(
  fc.double({ min: 0, max: 900, noNaN: true }),
  fc.double({ min: 0, max: 600, noNaN: true }),
);
const aQuad = fc
  .tuple(inset, inset, inset, inset)
  .map(([a, b, c, d]): FourCorners => [
    point(...a),
    point(2400 - b[0], b[1]),
    point(2400 - c[0], 1800 - c[1]),
    point(d[0], 1800 - d[1]),
  ])
  .filter((quad) => cornerFault(quad, 5) === null);

describe('a plane seen at a slant', () => {
  // Our own arithmetic: [2 1 3; 0.5 3 4; 0.01 0.02 1] at these points.
  test('is solved from four corners, and takes another point where that map takes it', () => {
    const matrix = solved(square, seen);
    const scaled = matrix.map((one) => one / matrix[8]);
    for (const [at, expected] of [2, 1, 3, 0.5, 3, 4, 0.01, 0.02, 1].entries()) {
      expect(scaled[at]).toBeCloseTo(expected, 11);
    }
    expectNear(mapPoint(matrix, point(50, 50)), point(61.2, 71.6), 1e-11);
  });

  // Our own arithmetic: [4 2 0; 0 4 0; 0 1 1].
  test('is solved where two sides meet at a vanishing point', () => {
    const matrix = solved(
      [point(0, 0), point(1, 0), point(1, 1), point(0, 1)],
      [point(0, 0), point(4, 0), point(3, 2), point(1, 2)],
    );
    const scaled = matrix.map((one) => one / matrix[8]);
    for (const [at, expected] of [4, 2, 0, 0, 4, 0, 0, 1, 1].entries()) {
      expect(scaled[at]).toBeCloseTo(expected, 12);
    }
  });

  test('is solved from more than four pairs', () => {
    const more = [...square, point(50, 50), point(20, 70)];
    const theirs = more.map((one) => mapPoint(solved(square, seen), one)!);
    expectNear(
      mapPoint(solved(more, theirs), point(33, 44)),
      mapPoint(solved(square, seen), point(33, 44))!,
      1e-10,
    );
  });

  test('maps there and back again', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(aQuad, share, share, (quad, along, across) => {
        const rectangle = [point(0, 0), point(120, 0), point(120, 80), point(0, 80)];
        const matrix = solved(quad, rectangle);
        const inside = point(along * 120, across * 80);
        const inPicture = mapPoint(inverseHomography(matrix), inside);
        if (inPicture === null) throw new Error('the rectangle is all seen');
        expectNear(mapPoint(matrix, inPicture), inside, 1e-8);
        quad.forEach((corner, at) => expectNear(mapPoint(matrix, corner), rectangle[at]!, 1e-8));
      }),
    );
  });

  test('has a horizon, beyond which nothing of it is seen', () => {
    const toPlane = inverseHomography(solved(square, seen));
    // The plane's line at infinity: the third row of the map back.
    const [, , , , , , g, h, i] = toPlane;
    const onHorizon = (x: number) => point(x, -(g * x + i) / h);
    const inside = point(61.2, 71.6);
    const at = onHorizon(61.2);
    const step = at.y - inside.y;
    expect(mapPoint(toPlane, point(61.2, inside.y + step * 0.99))).not.toBeNull();
    expect(mapPoint(toPlane, point(61.2, inside.y + step * 1.01))).toBeNull();
  });
});

describe('beside an independent library', () => {
  // OpenCV 5.0: getPerspectiveTransform and perspectiveTransform. It multiplies coordinates as 32-bit floats: whole
  // pixels and whole millimetres keep those products exact.
  test('maps points of 200 quads to the same place', async () => {
    const chance = seededChance(20_260_301);
    const rectangle = [point(0, 0), point(120, 0), point(120, 75), point(0, 75)];
    for (let compared = 0; compared < 200; compared += 1) {
      const quad = someQuad(chance);
      const points = Array.from({ length: 5 }, () => within(quad, chance));
      const theirs = await mappedByLibrary(quad, rectangle, points);
      const matrix = solved(quad, rectangle);
      points.forEach((one, at) => expectNear(mapPoint(matrix, one), theirs[at]!, 1e-9));
    }
  });
});

/** Whole pixels anywhere in a picture, drawn until they can be a rectangle's corners. */
function someQuad(chance: () => number): FourCorners {
  const somewhere = () => point(Math.round(2400 * chance()), Math.round(1800 * chance()));
  for (;;) {
    const quad: FourCorners = [somewhere(), somewhere(), somewhere(), somewhere()];
    if (cornerFault(quad, 1.5) === null) return quad;
  }
}

/** A point of the quad: a mean of its corners with chance weights. */
function within(quad: readonly PlanePoint[], chance: () => number): PlanePoint {
  const weights = quad.map(() => 0.05 + chance());
  const total = weights.reduce((sum, one) => sum + one, 0);
  const mean = (of: (corner: PlanePoint) => number) =>
    quad.reduce((sum, corner, at) => sum + (of(corner) * weights[at]!) / total, 0);
  return point(
    mean(({ x }) => x),
    mean(({ y }) => y),
  );
}

describe('points that make no map', () => {
  test('are refused by name', () => {
    expect(faultOf(square.slice(0, 3), seen)).toBe('too-few-points');
    expect(faultOf(square, [point(NaN, 0), ...seen.slice(1)])).toBe('not-finite');
    expect(faultOf(square, [point(Infinity, 0), ...seen.slice(1)])).toBe('not-finite');
    const threeInLine = [point(0, 0), point(50, 50), point(100, 100), point(0, 100)];
    expect(faultOf(threeInLine, seen)).toBe('three-on-a-line');
    expect(faultOf(square, threeInLine)).toBe('three-on-a-line');
    expect(faultOf(threeInLine, threeInLine)).toBe('three-on-a-line');
    expect(
      faultOf(
        square,
        square.map(() => point(7, 7)),
      ),
    ).toBe('three-on-a-line');
    const [a, b, c, d] = seen as [PlanePoint, PlanePoint, PlanePoint, PlanePoint];
    expect(faultOf(square, [a, c, b, d])).toBe('crossing-order');
  });
});
