/** Whether four clicks can be the corners of a rectangle seen by a camera, in the order they were made. */
import type { PlanePoint } from '../marks/drawing-path.ts';
import { courseOf } from '../marks/mark-kinds/segment.ts';

export type FourCorners<Point = PlanePoint> = readonly [Point, Point, Point, Point];

/**
 * - not-finite: a coordinate is no number;
 * - too-small: two corners lie so near each other that the clicks' own uncertainty would be most of what is measured;
 * - three-on-a-line: a corner cannot be told from the line through two others;
 * - crossing-order: the sides cross; the corners were not clicked one after the other round the rectangle;
 * - corner-inside: one corner lies within the other three, which no rectangle ever shows.
 */
export type CornerFault = 'not-finite' | 'too-small' | 'three-on-a-line' | 'crossing-order' | 'corner-inside';

/** In standard uncertainties of a click. Our own rule: below it the map is mostly noise. */
const leastGap = 10;
const leastHeight = 3;

/** The first fault in the order above; null for corners that will do. Corners and click uncertainty in image pixels. */
export function cornerFault(corners: FourCorners, clickUncertainty: number): CornerFault | null {
  if (!corners.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))) return 'not-finite';
  const [a, b, c, d] = corners;
  const pairs = [
    [a, b],
    [b, c],
    [c, d],
    [d, a],
    [a, c],
    [b, d],
  ] as const;
  if (pairs.some(([from, to]) => courseOf(from, to).length < leastGap * clickUncertainty)) return 'too-small';

  const triangles = [
    [d, a, b],
    [a, b, c],
    [b, c, d],
    [c, d, a],
  ] as const;
  if (triangles.some((one) => heightOf(one) < leastHeight * clickUncertainty)) return 'three-on-a-line';

  const leftTurns = triangles.filter((one) => doubledArea(...one) > 0).length;
  if (leftTurns === 2) return 'crossing-order';
  return leftTurns === 0 || leftTurns === 4 ? null : 'corner-inside';
}

/** True where the corners run clockwise as seen in a picture, whose y runs down. */
export function runsClockwise([a, b, c, d]: FourCorners): boolean {
  return doubledArea(a, b, c) + doubledArea(c, d, a) > 0;
}

/** Twice the triangle's area, positive where it runs clockwise as seen in a picture. */
export function doubledArea(a: PlanePoint, b: PlanePoint, c: PlanePoint): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** From the triangle's longest side to the corner across it. */
function heightOf([a, b, c]: readonly [PlanePoint, PlanePoint, PlanePoint]): number {
  const longest = Math.max(courseOf(a, b).length, courseOf(b, c).length, courseOf(c, a).length);
  return Math.abs(doubledArea(a, b, c)) / longest;
}
