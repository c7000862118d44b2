/** The label of a mark that lies round something: outside, on the first side where it fits into the picture. */
import { classStyles } from '#shared-types/class-style.ts';
import type { PlanePoint } from './drawing-path.ts';
import { labelBeside, type LabelBox } from './mark-label-drawing.ts';
import type { MarkLook } from './mark-look.ts';
import type { Size } from './planes.ts';

/** The furthest points of the mark. */
export type Extremes = {
  readonly top: PlanePoint;
  readonly bottom: PlanePoint;
  readonly left: PlanePoint;
  readonly right: PlanePoint;
};

/** Drawing points between the middle of the mark's line and its label. */
const gap = 4;

/** Above, below, to the right, to the left; above and pushed into the picture where it fits nowhere. */
export function labelAround(extremes: Extremes, look: MarkLook): LabelBox {
  const { label, unit, within } = look;
  const { shape } = classStyles[look.class];
  const off = gap * unit;
  const sides = [
    { anchor: { x: extremes.top.x, y: extremes.top.y - off }, direction: { x: 0, y: 1 } },
    { anchor: { x: extremes.bottom.x, y: extremes.bottom.y + off }, direction: { x: 0, y: -1 } },
    { anchor: { x: extremes.right.x + off, y: extremes.right.y }, direction: { x: -1, y: 0 } },
    { anchor: { x: extremes.left.x - off, y: extremes.left.y }, direction: { x: 1, y: 0 } },
  ] as const;
  for (const { anchor, direction } of sides) {
    const box = labelBeside(anchor, direction, label, shape, unit, undefined);
    if (fitsWithin(box, within)) return box;
  }
  const [above] = sides;
  return labelBeside(above.anchor, above.direction, label, shape, unit, within);
}

/** Whether the box lies wholly in the picture. */
export function fitsWithin(box: LabelBox, within: Size | undefined): boolean {
  if (within === undefined) return true;
  const { middle, halfWidth, halfHeight } = box;
  return (
    middle.x >= halfWidth &&
    middle.y >= halfHeight &&
    middle.x <= within.width - halfWidth &&
    middle.y <= within.height - halfHeight
  );
}
