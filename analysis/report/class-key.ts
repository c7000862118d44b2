/** The classes as a reader meets them beside a plate or in a table: the same boxes and lines as on the plates. */
import { stroked } from '#analysis/marks/drawing-path.ts';
import { labelBeside, labelDrawing } from '#analysis/marks/mark-label-drawing.ts';
import { textWidth } from '#analysis/text/font-metrics.ts';
import { classStyles } from '#shared-types/class-style.ts';
import type { Drawing } from '#shared-types/drawing.ts';
import { damageClasses, type DamageClass } from '#shared-types/finding.ts';
import { commonTexts } from '#shared-types/texts/common.ts';

/** A drawing with its size, in PDF points. */
export type SizedDrawing = { readonly width: number; readonly height: number; readonly drawing: Drawing };

/** Points of the page per drawing point of a mark: the boxes of a key are a little smaller than those on plates. */
const chipUnit = 0.6;
const keyHeight = 13;
const wordSize = 8.25;
const wordColour = '#1a1a1a';
const lineLength = 30;
const lineWidth = 1.8;

/** The letter of a class in its box. */
export function classChip(damageClass: DamageClass): SizedDrawing {
  return chipAt(0, damageClass);
}

/** Its left edge at `left`; the width is that of the box alone. */
function chipAt(left: number, damageClass: DamageClass): SizedDrawing {
  const style = classStyles[damageClass];
  const box = labelBeside(
    { x: left, y: keyHeight / 2 },
    { x: -1, y: 0 },
    style.letter,
    style.shape,
    chipUnit,
    undefined,
  );
  const chip = labelDrawing(box, style);
  return { width: box.halfWidth * 2, height: keyHeight, drawing: [chip.box, chip.text] };
}

/** Box, line and word of each class that occurs, in the order of the classes; null where none does. */
export function classKey(present: ReadonlySet<DamageClass>): SizedDrawing | null {
  const drawing: Drawing[number][] = [];
  let x = 0;
  for (const damageClass of damageClasses.filter((each) => present.has(each))) {
    const style = classStyles[damageClass];
    const chip = chipAt(x, damageClass);
    drawing.push(...chip.drawing);
    x += chip.width + 6;
    const line = `M${x} ${keyHeight / 2}L${x + lineLength} ${keyHeight / 2}`;
    drawing.push(
      stroked(
        line,
        style.colour,
        lineWidth,
        style.dash.map((part) => part * lineWidth),
      ),
    );
    x += lineLength + 6;
    const words = commonTexts.damageClasses[damageClass];
    drawing.push({
      type: 'text',
      text: words,
      x,
      y: keyHeight / 2 + wordSize * 0.33,
      size: wordSize,
      weight: 400,
      fill: wordColour,
    });
    x += textWidth(words, wordSize, 'sans-400') + 16;
  }
  return drawing.length === 0 ? null : { width: x - 16, height: keyHeight, drawing };
}
