/** Words on a white band beside a line: what a mark measures, or what is known of it. */
import { haloColour } from '#shared-types/class-style.ts';
import type { DrawingPath, DrawingText } from '#shared-types/drawing.ts';
import { textWidth } from '../text/font-metrics.ts';
import { filled, roundedBox, type PlanePoint } from './drawing-path.ts';

/** Measures in drawing points. */
const size = 13;
const side = 4;
const half = 9;
const corner = 2;
/** From the line to the middle of the band. */
const off = 15;
/** From the middle of the band down to the baseline, as a share of the size. */
const toBaseline = 0.34;

export type WordsBand = { readonly halo: DrawingPath; readonly ink: DrawingText };

/** Level, its middle over the middle of the line, on the side of it that is further up; beside a line that stands. */
export function bandBeside(
  words: string,
  line: { readonly from: PlanePoint; readonly to: PlanePoint },
  look: { readonly unit: number; readonly colour: string },
): WordsBand {
  const { unit, colour } = look;
  const { from, to } = line;
  const width = textWidth(words, size, 'sans-600') + 2 * side;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const across =
    length === 0 ? { x: 0, y: -1 } : { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
  const up = across.y <= 0 ? across : { x: -across.x, y: -across.y };
  // A band beside a steep line has to clear it by half of its own width.
  const distance = off + Math.abs(up.x) * (width / 2 - half);
  return bandAt(
    words,
    {
      x: (from.x + to.x) / 2 + up.x * distance * unit,
      y: (from.y + to.y) / 2 + up.y * distance * unit,
    },
    look.unit,
    colour,
  );
}

/** Level, with its middle there. */
export function bandAt(words: string, middle: PlanePoint, unit: number, colour: string): WordsBand {
  const width = textWidth(words, size, 'sans-600');
  return {
    halo: filled(roundedBox(middle, (width / 2 + side) * unit, half * unit, corner * unit), haloColour),
    ink: {
      type: 'text',
      text: words,
      x: middle.x - (width / 2) * unit,
      y: middle.y + size * toBaseline * unit,
      size: size * unit,
      weight: 600,
      fill: colour,
    },
  };
}
