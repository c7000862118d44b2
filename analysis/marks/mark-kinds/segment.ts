/** Straight lines between image points. */
import type { PlanePoint } from '../drawing-path.ts';
import type { Bounds } from './mark-kind-rules.ts';

/** CSS pixels under which a drawn line was no more than a slip of the hand. */
export const shortestMeant = 6;

export function distanceToSegment(point: PlanePoint, from: PlanePoint, to: PlanePoint): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / squared;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - share * dx, point.y - from.y - share * dy);
}

/** Shortest distance to the line through the corners and back to the first. */
export function distanceToPolygon(point: PlanePoint, corners: readonly PlanePoint[]): number {
  return corners.reduce((least, corner, index) => {
    const next = corners[(index + 1) % corners.length] ?? corner;
    return Math.min(least, distanceToSegment(point, corner, next));
  }, Infinity);
}

/** Length in image pixels; direction of length 1, straight down where there is no length to take it from. */
export function courseOf(from: PlanePoint, to: PlanePoint) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return { length, direction: { x: 0, y: 1 } };
  return { length, direction: { x: (to.x - from.x) / length, y: (to.y - from.y) / length } };
}

export function boundsOfPoints(points: readonly PlanePoint[]): Bounds {
  return {
    left: Math.min(...points.map(({ x }) => x)),
    top: Math.min(...points.map(({ y }) => y)),
    right: Math.max(...points.map(({ x }) => x)),
    bottom: Math.max(...points.map(({ y }) => y)),
  };
}
