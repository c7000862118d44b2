/**
 * Points moved and scaled to lie round the origin at a mean distance of √2, so that equations in them are well posed
 * whatever the picture's size (Hartley & Zisserman, Multiple View Geometry, 2nd ed., 4.4.4).
 */
import type { PlanePoint } from '../marks/drawing-path.ts';

export type Centred = {
  readonly points: readonly PlanePoint[];
  readonly middle: PlanePoint;
  /** A centred point is (point - middle) times this. */
  readonly factor: number;
};

/** Null where all points are one, or one of them is no number. */
export function centred(points: readonly PlanePoint[]): Centred | null {
  const middle = { x: mean(points.map(({ x }) => x)), y: mean(points.map(({ y }) => y)) };
  const reach = mean(points.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y)));
  const factor = Math.SQRT2 / reach;
  if (!Number.isFinite(factor) || factor === 0) return null;
  return {
    points: points.map(({ x, y }) => ({ x: (x - middle.x) * factor, y: (y - middle.y) * factor })),
    middle,
    factor,
  };
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
