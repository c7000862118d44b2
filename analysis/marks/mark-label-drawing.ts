/** The label of a mark: a box in the shape of its class with the mark's number in white. */
import { textWidth } from '../text/font-metrics.ts';
import { haloColour, type ClassStyle, type LabelShape } from '#shared-types/class-style.ts';
import type { DrawingPath, DrawingText } from '#shared-types/drawing.ts';
import { filled, polygon, roundedBox, type PlanePoint } from './drawing-path.ts';
import type { Size } from './planes.ts';

/** Measures in drawing points. */
const textSize = 13;
const height = 20;
const halo = 1;
const cornerRadius = 2;
/** How far the points of the diamond's box reach in from its ends. */
const diamondPoint = 8;
const sidePadding: Readonly<Record<LabelShape, number>> = { square: 7, round: 9, diamond: 11 };
/** Height of a capital of Source Sans 3 over its size: sCapHeight 660 of 1000 in the font's OS/2 table. */
const capitalHeight = 0.66;

/** Middle and half sizes in image pixels. */
export type LabelBox = {
  readonly text: string;
  readonly middle: PlanePoint;
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly unit: number;
};

/**
 * A box that touches `anchor` with its edge and lies on the side away from `direction` (length 1), pushed back into
 * the picture where it would stick out of it.
 */
export function labelBeside(
  anchor: PlanePoint,
  direction: PlanePoint,
  text: string,
  shape: LabelShape,
  unit: number,
  within: Size | undefined,
): LabelBox {
  const halfWidth = (textWidth(text, textSize, 'sans-600') / 2 + sidePadding[shape]) * unit;
  const halfHeight = (height / 2) * unit;
  const toEdge = Math.min(
    direction.x === 0 ? Infinity : halfWidth / Math.abs(direction.x),
    direction.y === 0 ? Infinity : halfHeight / Math.abs(direction.y),
  );
  const x = anchor.x - direction.x * toEdge;
  const y = anchor.y - direction.y * toEdge;
  const edge = halo * unit;
  return {
    text,
    middle:
      within === undefined
        ? { x, y }
        : { x: inside(x, halfWidth + edge, within.width), y: inside(y, halfHeight + edge, within.height) },
    halfWidth,
    halfHeight,
    unit,
  };
}

function inside(middle: number, half: number, size: number): number {
  return size < 2 * half ? size / 2 : Math.min(Math.max(middle, half), size - half);
}

export function labelDrawing(
  label: LabelBox,
  style: ClassStyle,
): { readonly halo: DrawingPath; readonly box: DrawingPath; readonly text: DrawingText } {
  const { middle, unit, halfWidth } = label;
  const width = halfWidth * 2 - 2 * sidePadding[style.shape] * unit;
  return {
    halo: filled(outline(label, style.shape, halo * unit), haloColour),
    box: filled(outline(label, style.shape, 0), style.colour),
    text: {
      type: 'text',
      text: label.text,
      x: middle.x - width / 2,
      y: middle.y + (capitalHeight * textSize * unit) / 2,
      size: textSize * unit,
      weight: 600,
      fill: haloColour,
    },
  };
}

/** The box's outline, `wider` image pixels further out on every side. */
function outline(label: LabelBox, shape: LabelShape, wider: number): string {
  const { x, y } = label.middle;
  const w = label.halfWidth + wider;
  const h = label.halfHeight + wider;
  if (shape === 'diamond') {
    const point = diamondPoint * label.unit;
    return polygon([
      { x: x - w, y },
      { x: x - w + point, y: y - h },
      { x: x + w - point, y: y - h },
      { x: x + w, y },
      { x: x + w - point, y: y + h },
      { x: x - w + point, y: y + h },
    ]);
  }
  return roundedBox(label.middle, w, h, shape === 'round' ? h : cornerRadius * label.unit + wider);
}
