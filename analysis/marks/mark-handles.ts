/** Taking hold of a mark: its handles, moving one, moving the whole, and how far it is from a point. */
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import { rulesFor } from './mark-kinds/mark-kinds.ts';
import type { Bounds, Ground, Handle, HandleName } from './mark-kinds/mark-kind-rules.ts';
import type { MarkLook } from './mark-look.ts';
import type { Size } from './planes.ts';

export type { Bounds, Ground, Handle, HandleName } from './mark-kinds/mark-kind-rules.ts';

/** The points by which a mark is reshaped, the one that matters most first; words have none. */
export function handlesOf(geometry: MarkGeometry, ground: Ground): readonly Handle[] {
  return rulesFor(geometry).handles(geometry, ground);
}

/** The mark with one handle somewhere else. The ends of a line and the corners of an outline never leave the picture. */
export function moveHandle(
  geometry: MarkGeometry,
  name: HandleName,
  to: ImagePoint,
  ground: Ground,
): MarkGeometry {
  return rulesFor(geometry).moveHandle(geometry, name, to, ground);
}

/** The whole mark moved by image pixels, as far as it goes without leaving the picture; its shape stays. */
export function moveMark(geometry: MarkGeometry, byX: number, byY: number, image: Size): MarkGeometry {
  return moveMarks([geometry], byX, byY, image)[0] ?? geometry;
}

/**
 * Marks moved together: all by the same image pixels, as far as none leaves the picture. One that sticks out of it
 * already goes no further out.
 */
export function moveMarks(
  geometries: readonly MarkGeometry[],
  byX: number,
  byY: number,
  image: Size,
): MarkGeometry[] {
  const { left, top, right, bottom } = boundsTogether(geometries);
  const dx = held(byX, left, right, image.width);
  const dy = held(byY, top, bottom, image.height);
  if (dx === 0 && dy === 0) return [...geometries];
  return geometries.map((geometry) => rulesFor(geometry).movedBy(geometry, dx, dy));
}

function held(by: number, low: number, high: number, most: number): number {
  return Math.max(Math.min(by, Math.max(0, most - high)), Math.min(0, -low));
}

export function boundsOf(geometry: MarkGeometry): Bounds {
  return rulesFor(geometry).bounds(geometry);
}

function boundsTogether(geometries: readonly MarkGeometry[]): Bounds {
  const all = geometries.map(boundsOf);
  return {
    left: Math.min(...all.map((each) => each.left)),
    top: Math.min(...all.map((each) => each.top)),
    right: Math.max(...all.map((each) => each.right)),
    bottom: Math.max(...all.map((each) => each.bottom)),
  };
}

/** Shortest distance in image pixels from a point to what is painted of the mark, its label left out. */
export function distanceToMark(geometry: MarkGeometry, point: ImagePoint, look: MarkLook): number {
  return rulesFor(geometry).distance(geometry, point, look);
}

/** Whether a mark is large enough to have been meant. `unit` is image pixels per CSS pixel. */
export function isMeant(geometry: MarkGeometry, unit: number): boolean {
  return rulesFor(geometry).isMeant(geometry, unit);
}

/** Both are made by us field by field in the same order: they are alike when their JSON is. */
export function sameGeometry(one: MarkGeometry, other: MarkGeometry): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}
