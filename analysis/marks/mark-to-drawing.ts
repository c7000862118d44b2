/**
 * A mark as lines and words, once for the screen and the printed page alike. Pure; upright image pixels.
 * From the bottom up: a white halo, the line in the colour and dash of its class, its head, and the label in the
 * shape of its class with the mark's number.
 */
import { classStyles, haloColour } from '#shared-types/class-style.ts';
import type { Drawing } from '#shared-types/drawing.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { ArrowGeometry, MarkGeometry } from '#shared-types/mark.ts';
import { arrowHead, arrowHeadHalo, shaftJoint } from './arrow-head.ts';
import { filled, pointDigits, stroked } from './drawing-path.ts';
import { labelBeside, labelDrawing, type LabelBox } from './mark-label-drawing.ts';
import type { Size } from './planes.ts';

export type MarkLook = {
  readonly class: DamageClass;
  /** What stands in the label, "P 7.1" say; empty for no label. */
  readonly label: string;
  /** Image pixels per drawing point: per CSS pixel on screen, per PDF point on paper. */
  readonly unit: number;
  /** Size of the picture in image pixels: where it is given the label is kept inside it. */
  readonly within?: Size;
};

/** Measures in drawing points. */
const lineWidth = 2.4;
/** On every side; nothing is painted further past the tip than this, half a line's width. */
const haloWidth = lineWidth / 2;

/** The mark's drawing in upright image pixels; `look` says how it is labelled and how large a point is there. */
export function markToDrawing(geometry: MarkGeometry, look: MarkLook): Drawing {
  return arrowToDrawing(geometry, look);
}

/** Where the mark's label stands, in image pixels; null where it has none. */
export function markLabelBox(geometry: MarkGeometry, look: MarkLook): LabelBox | null {
  if (look.label === '') return null;
  const { direction } = lineOf(geometry);
  return labelBeside(
    geometry.tail,
    direction,
    look.label,
    classStyles[look.class].shape,
    look.unit,
    look.within,
  );
}

/** Length in image pixels, direction of length 1 from tail to tip. */
function lineOf({ tail, tip }: ArrowGeometry) {
  const length = Math.hypot(tip.x - tail.x, tip.y - tail.y);
  // An arrow without length has no direction of its own: it points straight down.
  if (length === 0) return { length, direction: { x: 0, y: 1 } };
  return { length, direction: { x: (tip.x - tail.x) / length, y: (tip.y - tail.y) / length } };
}

function arrowToDrawing(arrow: ArrowGeometry, look: MarkLook): Drawing {
  const style = classStyles[look.class];
  const { unit } = look;
  const { length, direction } = lineOf(arrow);
  const shaftLength = Math.max(0, length - shaftJoint * unit);
  const shaftEnd = {
    x: arrow.tail.x + direction.x * shaftLength,
    y: arrow.tail.y + direction.y * shaftLength,
  };
  const shaft = shaftLength === 0 ? null : `M${pointDigits(arrow.tail)}L${pointDigits(shaftEnd)}`;
  const dash = style.dash.map((part) => part * lineWidth * unit);
  const box = markLabelBox(arrow, look);
  const label = box === null ? null : labelDrawing(box, style);
  return [
    ...(shaft === null ? [] : [stroked(shaft, haloColour, (lineWidth + 2 * haloWidth) * unit, [])]),
    filled(arrowHeadHalo(arrow.tip, direction, unit, haloWidth), haloColour),
    ...(label === null ? [] : [label.halo]),
    ...(shaft === null ? [] : [stroked(shaft, style.colour, lineWidth * unit, dash)]),
    filled(arrowHead(arrow.tip, direction, unit), style.colour),
    ...(label === null ? [] : [label.box, label.text]),
  ];
}
