/**
 * A mark as lines and words, once for the screen and the printed page alike. Pure; upright image pixels.
 * From the bottom up: a white halo, the halo of the label, the mark in the colour and dash of its class, and the label
 * in the shape of its class with the mark's number. What each kind paints is in mark-kinds/.
 */
import { classStyles, haloColour } from '#shared-types/class-style.ts';
import type { Drawing } from '#shared-types/drawing.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import { stroked } from './drawing-path.ts';
import { rulesFor } from './mark-kinds/mark-kinds.ts';
import { labelDrawing, type LabelBox } from './mark-label-drawing.ts';
import type { MarkLook } from './mark-look.ts';

export type { MarkLook } from './mark-look.ts';

/** The mark's drawing in upright image pixels; `look` says how it is labelled and how large a point is there. */
export function markToDrawing(geometry: MarkGeometry, look: MarkLook): Drawing {
  const { halo, ink } = rulesFor(geometry).body(geometry, look);
  const box = markLabelBox(geometry, look);
  if (box === null) return [...halo, ...ink];
  const label = labelDrawing(box, classStyles[look.class]);
  return [...halo, label.halo, ...ink, label.box, label.text];
}

/** Where the mark's label stands, in image pixels; null where it has none. */
export function markLabelBox(geometry: MarkGeometry, look: MarkLook): LabelBox | null {
  return look.label === '' ? null : rulesFor(geometry).labelBox(geometry, look);
}

/** On any metal: a bright line with a dark edge. Widths in drawing points, on each side of the mark's halo. */
const chosenLines = [
  { colour: '#101112', width: 3 },
  { colour: '#6cc3cb', width: 2 },
] as const;

/** What lies under a mark that is chosen: a second halo, round everything that is white in its drawing. */
export function chosenUnderlay(drawing: Drawing, unit: number): Drawing {
  const white = drawing.filter(
    (primitive) => primitive.type === 'path' && (primitive.stroke ?? primitive.fill) === haloColour,
  );
  return chosenLines.flatMap(({ colour, width }) =>
    white.flatMap((path) =>
      path.type === 'path' ? [stroked(path.d, colour, path.strokeWidth + 2 * width * unit, [])] : [],
    ),
  );
}
