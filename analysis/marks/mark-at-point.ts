/** Which mark the pointer is on, and which a box drawn on the photo holds. */
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import {
  boundsOf,
  distanceToMark,
  handlesOf,
  type Bounds,
  type Ground,
  type HandleName,
} from './mark-handles.ts';
import type { MarkLook } from './mark-look.ts';
import { markLabelBox } from './mark-to-drawing.ts';

export type PlacedMark<Id> = {
  readonly id: Id;
  readonly geometry: MarkGeometry;
  readonly look: MarkLook;
};

/**
 * The topmost mark whose label holds the point or whose line is within `reach` image pixels of it; the last of
 * `marks` is on top. Null when there is none.
 */
export function markAtPoint<Id>(
  marks: readonly PlacedMark<Id>[],
  point: ImagePoint,
  reach: number,
): Id | null {
  const found = marks.findLast((mark) => isOnLine(mark, point, reach) || isInLabel(mark, point));
  return found?.id ?? null;
}

function isOnLine<Id>({ geometry, look }: PlacedMark<Id>, point: ImagePoint, reach: number): boolean {
  // Of words the bounds say nothing of how far they run.
  if (geometry.kind !== 'text' && !isNear(boundsOf(geometry), point, reach)) return false;
  return distanceToMark(geometry, point, look) <= reach;
}

function isNear({ left, top, right, bottom }: Bounds, { x, y }: ImagePoint, reach: number): boolean {
  return x >= left - reach && x <= right + reach && y >= top - reach && y <= bottom + reach;
}

function isInLabel<Id>(mark: PlacedMark<Id>, point: ImagePoint): boolean {
  const box = markLabelBox(mark.geometry, mark.look);
  return (
    box !== null &&
    Math.abs(point.x - box.middle.x) <= box.halfWidth &&
    Math.abs(point.y - box.middle.y) <= box.halfHeight
  );
}

/** The marks that lie wholly in the box between two of its corners. */
export function marksInBox<Id>(marks: readonly PlacedMark<Id>[], from: ImagePoint, to: ImagePoint): Id[] {
  const [left, right] = from.x < to.x ? [from.x, to.x] : [to.x, from.x];
  const [top, bottom] = from.y < to.y ? [from.y, to.y] : [to.y, from.y];
  return marks
    .filter(({ geometry }) => {
      const bounds = boundsOf(geometry);
      return bounds.left >= left && bounds.right <= right && bounds.top >= top && bounds.bottom <= bottom;
    })
    .map(({ id }) => id);
}

/** The handle within `reach` image pixels of the point, the nearest one; null when there is none. */
export function handleAtPoint(
  geometry: MarkGeometry,
  point: ImagePoint,
  reach: number,
  ground: Ground,
): HandleName | null {
  let nearest: HandleName | null = null;
  let least = reach;
  for (const { name, at } of handlesOf(geometry, ground)) {
    const distance = Math.hypot(at.x - point.x, at.y - point.y);
    if (distance <= least) {
      least = distance;
      nearest = name;
    }
  }
  return nearest;
}
