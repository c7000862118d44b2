/**
 * The map between a flat thing and its picture, from four or more points known in both: the normalised direct linear
 * transform (Hartley & Zisserman, Multiple View Geometry, 2nd ed., 4.1 and 4.4.4). It keeps lines straight and holds
 * for a pinhole camera at any tilt; what a lens bends it does not straighten.
 */
import type { PlanePoint } from '../marks/drawing-path.ts';
import { centred, type Centred } from './centred-points.ts';
import { leastDirection } from './least-direction.ts';

/** 3 x 3, row by row; its length as nine numbers is 1, and all points it was solved from have a positive weight. */
export type Homography = readonly [
  ...[number, number, number],
  ...[number, number, number],
  ...[number, number, number],
];

export type PointPair = { readonly from: PlanePoint; readonly to: PlanePoint };

/**
 * Why there is no such map:
 * - too-few-points: it takes four pairs;
 * - not-finite: a coordinate is no number;
 * - three-on-a-line: no four of the points have no three on one line, on one side or the other;
 * - crossing-order: no camera that sees all of the points puts them in this order.
 */
export type HomographyFault = 'too-few-points' | 'not-finite' | 'three-on-a-line' | 'crossing-order';

export type SolvedHomography =
  | { readonly kind: 'solved'; readonly matrix: Homography }
  | { readonly kind: 'refused'; readonly because: HomographyFault };

/** Share of the largest singular value, and determinant at length 1, under which points count as on a line. */
const onALine = 1e-9;

/** Least squares of the algebraic distance; exact for four pairs. */
export function solveHomography(pairs: readonly PointPair[]): SolvedHomography {
  if (pairs.length < 4) return refused('too-few-points');
  if (!pairs.every(({ from, to }) => [from.x, from.y, to.x, to.y].every(Number.isFinite))) {
    return refused('not-finite');
  }
  const from = centred(pairs.map((pair) => pair.from));
  const to = centred(pairs.map((pair) => pair.to));
  if (from === null || to === null) return refused('three-on-a-line');

  const { direction, singularValues } = leastDirection(equations(from.points, to.points));
  const [largest = 0] = singularValues;
  const solved = asMatrix(direction);
  if ((singularValues[7] ?? 0) <= onALine * largest || Math.abs(determinant(solved)) <= onALine) {
    return refused('three-on-a-line');
  }
  const weights = from.points.map((point) => weightAt(solved, point));
  if (weights.every((weight) => weight > 0)) return { kind: 'solved', matrix: uncentred(solved, from, to) };
  if (weights.some((weight) => weight >= 0)) return refused('crossing-order');
  return { kind: 'solved', matrix: uncentred(times(solved, -1), from, to) };
}

/** Null for a point on or beyond the horizon: the line that the flat thing's plane never reaches in the picture. */
export function mapPoint(matrix: Homography, point: PlanePoint): PlanePoint | null {
  const [a, b, c, d, e, f] = matrix;
  const weight = weightAt(matrix, point);
  if (!(weight > 0)) return null;
  return {
    x: (a * point.x + b * point.y + c) / weight,
    y: (d * point.x + e * point.y + f) / weight,
  };
}

/** The map back: points that the first maps have a positive weight in it too. */
export function inverseHomography(matrix: Homography): Homography {
  const [a, b, c, d, e, f, g, h, i] = matrix;
  const back: Homography = [
    ...([e * i - f * h, c * h - b * i, b * f - c * e] as const),
    ...([f * g - d * i, a * i - c * g, c * d - a * f] as const),
    ...([d * h - e * g, b * g - a * h, a * e - b * d] as const),
  ];
  return ofLengthOne(times(back, Math.sign(determinant(matrix))));
}

const refused = (because: HomographyFault): SolvedHomography => ({ kind: 'refused', because });

/** Two equations a pair, linear in the nine numbers. */
function equations(from: readonly PlanePoint[], to: readonly PlanePoint[]): number[][] {
  return from.flatMap(({ x, y }, at) => {
    const { x: u, y: v } = to[at] ?? { x: 0, y: 0 };
    return [
      [0, 0, 0, -x, -y, -1, v * x, v * y, v],
      [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
    ];
  });
}

/** What was solved between centred points, between the points as they lie. */
function uncentred(matrix: Homography, from: Centred, to: Centred): Homography {
  const { x: fromX, y: fromY } = from.middle;
  const [a, b, c, d, e, f, g, h, i] = matrix;
  const row = (p: number, q: number, r: number) =>
    [p * from.factor, q * from.factor, r - from.factor * (p * fromX + q * fromY)] as const;
  const [first, second, weight] = [row(a, b, c), row(d, e, f), row(g, h, i)];
  const moved = (of: readonly [number, number, number], by: number) =>
    [
      of[0] / to.factor + by * weight[0],
      of[1] / to.factor + by * weight[1],
      of[2] / to.factor + by * weight[2],
    ] as const;
  return ofLengthOne([...moved(first, to.middle.x), ...moved(second, to.middle.y), ...weight]);
}

function weightAt([, , , , , , g, h, i]: Homography, { x, y }: PlanePoint): number {
  return g * x + h * y + i;
}

function determinant([a, b, c, d, e, f, g, h, i]: Homography): number {
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
}

function ofLengthOne(matrix: Homography): Homography {
  return times(matrix, 1 / Math.hypot(...matrix));
}

function times(matrix: Homography, factor: number): Homography {
  return asMatrix(matrix.map((one) => one * factor));
}

function asMatrix(nine: readonly number[]): Homography {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = nine;
  return [a, b, c, d, e, f, g, h, i];
}
