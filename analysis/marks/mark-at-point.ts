/** Which mark the pointer is on. */
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import { distanceToMark, handlesOf, type HandleName } from './mark-handles.ts';
import { markLabelBox, type MarkLook } from './mark-to-drawing.ts';

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
  const found = marks.findLast(
    (mark) => isInLabel(mark, point) || distanceToMark(mark.geometry, point) <= reach,
  );
  return found?.id ?? null;
}

function isInLabel<Id>(mark: PlacedMark<Id>, point: ImagePoint): boolean {
  const box = markLabelBox(mark.geometry, mark.look);
  return (
    box !== null &&
    Math.abs(point.x - box.middle.x) <= box.halfWidth &&
    Math.abs(point.y - box.middle.y) <= box.halfHeight
  );
}

/** The handle within `reach` image pixels of the point, the nearest one; null when there is none. */
export function handleAtPoint(geometry: MarkGeometry, point: ImagePoint, reach: number): HandleName | null {
  let nearest: HandleName | null = null;
  let least = reach;
  for (const { name, at } of handlesOf(geometry)) {
    const distance = Math.hypot(at.x - point.x, at.y - point.y);
    if (distance <= least) {
      least = distance;
      nearest = name;
    }
  }
  return nearest;
}
