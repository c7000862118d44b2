/** Taking hold of a mark: its handles, moving one, moving the whole, and how far it is from a point. */
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import { imagePoint, withinImage, type Size } from './planes.ts';

export type HandleName = 'tail' | 'tip';
export type Handle = { readonly name: HandleName; readonly at: ImagePoint };

/** Edges in image pixels. */
export type Bounds = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

/** The points by which a mark is reshaped, the one that matters most first. */
export function handlesOf(geometry: MarkGeometry): readonly Handle[] {
  return [
    { name: 'tip', at: geometry.tip },
    { name: 'tail', at: geometry.tail },
  ];
}

/** The mark with one handle somewhere else; a handle never leaves the picture. */
export function moveHandle(
  geometry: MarkGeometry,
  name: HandleName,
  to: ImagePoint,
  image: Size,
): MarkGeometry {
  return { ...geometry, [name]: withinImage(image, to) };
}

/** The whole mark moved by image pixels, as far as it goes without leaving the picture; its shape stays. */
export function moveMark(geometry: MarkGeometry, byX: number, byY: number, image: Size): MarkGeometry {
  const bounds = boundsOf(geometry);
  const dx = held(byX, bounds.left, bounds.right, image.width);
  const dy = held(byY, bounds.top, bounds.bottom, image.height);
  const moved = (point: ImagePoint) => imagePoint(point.x + dx, point.y + dy);
  return { ...geometry, tail: moved(geometry.tail), tip: moved(geometry.tip) };
}

function held(by: number, low: number, high: number, most: number): number {
  return Math.max(Math.min(by, most - high), -low);
}

export function boundsOf(geometry: MarkGeometry): Bounds {
  const { tail, tip } = geometry;
  return {
    left: Math.min(tail.x, tip.x),
    top: Math.min(tail.y, tip.y),
    right: Math.max(tail.x, tip.x),
    bottom: Math.max(tail.y, tip.y),
  };
}

/** Shortest distance in image pixels from a point to the mark's line. */
export function distanceToMark(geometry: MarkGeometry, point: ImagePoint): number {
  return distanceToSegment(point, geometry.tail, geometry.tip);
}

function distanceToSegment(point: ImagePoint, from: ImagePoint, to: ImagePoint): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / squared;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - share * dx, point.y - from.y - share * dy);
}

export function sameGeometry(one: MarkGeometry, other: MarkGeometry): boolean {
  return (
    one.tail.x === other.tail.x &&
    one.tail.y === other.tail.y &&
    one.tip.x === other.tip.x &&
    one.tip.y === other.tip.y
  );
}
