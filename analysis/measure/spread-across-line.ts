/** How far points stand off the straight line that fits them best. */
import type { PlanePoint } from '../marks/drawing-path.ts';
import { mean } from './centred-points.ts';

/** Root mean square distance from the line, in the points' unit; 0 for fewer than three points. */
export function spreadAcrossLine(points: readonly PlanePoint[]): number {
  if (points.length < 3) return 0;
  const middle = { x: mean(points.map(({ x }) => x)), y: mean(points.map(({ y }) => y)) };
  const offsets = points.map(({ x, y }) => ({ x: x - middle.x, y: y - middle.y }));
  const across = mean(offsets.map(({ x, y }) => x * x - y * y));
  const slanting = mean(offsets.map(({ x, y }) => 2 * x * y));
  const along = Math.atan2(slanting, across) / 2;
  return Math.sqrt(mean(offsets.map(({ x, y }) => (y * Math.cos(along) - x * Math.sin(along)) ** 2)));
}
