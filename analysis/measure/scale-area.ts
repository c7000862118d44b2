/** How far a scale reaches: beyond what was clicked of it, a photo is measured by carrying the scale on. */
import type { ImagePoint } from '#shared-types/points.ts';
import { courseOf, distanceToSegment } from '../marks/mark-kinds/segment.ts';
import type { PhotoScale, RectangleScale } from './photo-scale.ts';
import { rectangleInPlane, type PlaneReading } from './scale-reading.ts';

/** Of a rectangle's longer side: outside it by less is still at its edge. Our own rule. */
const edge = 0.1;

/** Two clicks reach as far round themselves as they are apart; a rectangle reaches to its sides. Our own rule. */
export function isBeyondScale(scale: PhotoScale, reading: PlaneReading, click: ImagePoint): boolean {
  if (scale.kind === 'rectangle') return isBeyondRectangle(scale, reading, click);
  return distanceToSegment(click, ...scale.ends) > courseOf(...scale.ends).length;
}

function isBeyondRectangle(scale: RectangleScale, reading: PlaneReading, click: ImagePoint): boolean {
  const at = reading.toPlane(click);
  if (at === null) return true;
  const [{ mm: along }, { mm: across }] = scale.sides;
  const [corner, , opposite] = rectangleInPlane(scale);
  const aside = Math.abs(at.x - (corner.x + opposite.x) / 2) - along / 2;
  const down = Math.abs(at.y - (corner.y + opposite.y) / 2) - across / 2;
  return Math.max(aside, down) > edge * Math.max(along, across);
}
