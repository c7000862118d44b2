/**
 * The circle that points lie on: least squares of their distances from it, by damped Gauss-Newton steps from the
 * algebraic fit (Gander, Golub & Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994) 558-578).
 */
import type { PlanePoint } from '../marks/drawing-path.ts';
import { centred, mean } from './centred-points.ts';
import { leastDirection } from './least-direction.ts';
import { spreadAcrossLine } from './spread-across-line.ts';

/** In the unit of the points. */
export type Circle = { readonly centre: PlanePoint; readonly radius: number };

/**
 * - too-few-points: it takes three;
 * - on-a-line: the points lie on a straight line, or are all one or no numbers;
 * - no-fit: the steps run away or do not settle: no circle fits them better than a straight line.
 */
export type CircleFault = 'too-few-points' | 'on-a-line' | 'no-fit';

export type FittedCircle =
  | { readonly kind: 'fitted'; readonly circle: Circle }
  | { readonly kind: 'refused'; readonly because: CircleFault };

/** Of the points' own reach: a set that stands less off its line has no digits left to make a circle of. */
const straight = 1e-9;
/** Of the points' own reach: a larger circle is a straight line to any eye. */
const largestRadius = 1e6;
const mostSteps = 500;
/** Of the points' own reach: steps shorter than this have arrived. */
const arrived = 1e-13;
/** A sum of squares may rise by so much of itself through rounding alone. */
const rounding = 1e-12;

export function fitCircle(points: readonly PlanePoint[]): FittedCircle {
  if (points.length < 3) return { kind: 'refused', because: 'too-few-points' };
  const near = centred(points);
  const offLine = near === null ? 0 : spreadAcrossLine(near.points);
  if (near === null || !(offLine >= straight)) return { kind: 'refused', because: 'on-a-line' };
  // Scattered points may have no algebraic circle at all; their middle is then as good a start as any.
  const start = algebraicCircle(near.points)?.centre ?? { x: 0, y: 0 };
  const centre = descend(near.points, start);
  if (centre === null) return { kind: 'refused', because: 'no-fit' };
  const circle = { centre, radius: radiusAbout(near.points, centre) };
  const offCircle = Math.sqrt(mean(distancesFrom(circle, near.points).map((one) => one * one)));
  if (offCircle > offLine) return { kind: 'refused', because: 'no-fit' };
  const { middle, factor } = near;
  return {
    kind: 'fitted',
    circle: {
      centre: { x: middle.x + centre.x / factor, y: middle.y + centre.y / factor },
      radius: circle.radius / factor,
    },
  };
}

/** Distances of the points from the circle, positive outside, in their order. */
export function distancesFrom({ centre, radius }: Circle, points: readonly PlanePoint[]): readonly number[] {
  return points.map((point) => Math.hypot(point.x - centre.x, point.y - centre.y) - radius);
}

/**
 * The circle a(x² + y²) + bx + cy + d = 0 whose four numbers, at length 1, all but annul the points (their section 3).
 * Null where they annul on a straight line.
 */
export function algebraicCircle(points: readonly PlanePoint[]): Circle | null {
  const { direction } = leastDirection(points.map(({ x, y }) => [x * x + y * y, x, y, 1]));
  const [a = 0, b = 0, c = 0, d = 0] = direction;
  const centre = { x: -b / (2 * a), y: -c / (2 * a) };
  const squared = centre.x * centre.x + centre.y * centre.y - d / a;
  return Number.isFinite(squared) && squared > 0 ? { centre, radius: Math.sqrt(squared) } : null;
}

const radiusAbout = (points: readonly PlanePoint[], centre: PlanePoint) =>
  mean(points.map(({ x, y }) => Math.hypot(x - centre.x, y - centre.y)));

/** The centre alone is sought: for every centre, the best radius is the mean distance. */
function descend(points: readonly PlanePoint[], start: PlanePoint): PlanePoint | null {
  let centre = start;
  let slope = slopeAt(points, centre);
  let damping = 1e-6;
  for (let step = 0; step < mostSteps; step += 1) {
    const move = stepDown(slope, damping);
    const next = { x: centre.x + move.x, y: centre.y + move.y };
    const there = slopeAt(points, next);
    if (!(Math.hypot(next.x, next.y) < largestRadius)) return null;
    if (there.squares <= slope.squares * (1 + rounding) + Number.MIN_VALUE) {
      [centre, slope, damping] = [next, there, damping / 10];
    } else damping *= 10;
    if (Math.hypot(move.x, move.y) <= arrived * (1 + Math.hypot(centre.x, centre.y))) return centre;
  }
  return null;
}

/** Sum of squared distances from the best circle about a centre, and the normal equations of a step from there. */
type Slope = {
  readonly squares: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  readonly x: number;
  readonly y: number;
};

function slopeAt(points: readonly PlanePoint[], centre: PlanePoint): Slope {
  const rays = points.map((point) => {
    const [x, y] = [centre.x - point.x, centre.y - point.y];
    const length = Math.hypot(x, y);
    return length === 0 ? { x: 0, y: 0, length } : { x: x / length, y: y / length, length };
  });
  const [x, y] = [mean(rays.map((ray) => ray.x)), mean(rays.map((ray) => ray.y))];
  const radius = mean(rays.map(({ length }) => length));
  const sum = { squares: 0, xx: 0, xy: 0, yy: 0, x: 0, y: 0 };
  for (const ray of rays) {
    const [off, alongX, alongY] = [ray.length - radius, ray.x - x, ray.y - y];
    sum.squares += off * off;
    sum.xx += alongX * alongX;
    sum.xy += alongX * alongY;
    sum.yy += alongY * alongY;
    sum.x += alongX * off;
    sum.y += alongY * off;
  }
  return sum;
}

/** Levenberg's damped step. */
function stepDown({ xx, xy, yy, x, y }: Slope, damping: number): PlanePoint {
  const [p, q] = [xx + damping, yy + damping];
  const determinant = p * q - xy * xy;
  return { x: (xy * y - q * x) / determinant, y: (xy * x - p * y) / determinant };
}
