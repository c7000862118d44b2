/** A mark on the stage: paints the primitives of its drawing and nothing else. */
import { memo, useMemo } from 'react';
import { Shape } from 'react-konva';
import { chosenUnderlay, markToDrawing } from '#analysis/marks/mark-to-drawing.ts';
import type { Size } from '#analysis/marks/planes.ts';
import type { Drawing, DrawingPath } from '#shared-types/drawing.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';

export type DrawnMarkProps = {
  geometry: MarkGeometry;
  damageClass: DamageClass;
  label: string;
  note?: boolean | undefined;
  reading?: string | undefined;
  /** Image pixels per CSS pixel. */
  unit: number;
  within: Size;
  /** A second halo shows that it is chosen. */
  chosen: boolean;
};

export const DrawnMark = memo(function DrawnMark(props: DrawnMarkProps) {
  const { geometry, damageClass, label, note = false, reading = '', unit, within, chosen } = props;
  const drawing = useMemo(() => {
    const mark = markToDrawing(geometry, { class: damageClass, label, note, reading, unit, within });
    return chosen ? [...chosenUnderlay(mark, unit), ...mark] : mark;
  }, [geometry, damageClass, label, note, reading, unit, within, chosen]);
  return (
    <Shape
      listening={false}
      perfectDrawEnabled={false}
      sceneFunc={(context) => paint(context._context, drawing)}
    />
  );
});

/** Source Sans 3, by the name the page's styles give it. */
const family = "'Source Sans 3', sans-serif";

const paths = new WeakMap<DrawingPath, Path2D>();

function pathOf(primitive: DrawingPath): Path2D {
  const known = paths.get(primitive);
  if (known !== undefined) return known;
  const path = new Path2D(primitive.d);
  paths.set(primitive, path);
  return path;
}

function paint(context: CanvasRenderingContext2D, drawing: Drawing): void {
  context.save();
  context.lineCap = 'round';
  context.lineJoin = 'round';
  for (const primitive of drawing) {
    if (primitive.type === 'text') {
      context.globalAlpha = 1;
      context.font = `${primitive.weight} ${primitive.size}px ${family}`;
      context.fillStyle = primitive.fill;
      context.fillText(primitive.text, primitive.x, primitive.y);
      continue;
    }
    const path = pathOf(primitive);
    context.globalAlpha = primitive.opacity;
    if (primitive.fill !== null) {
      context.fillStyle = primitive.fill;
      context.fill(path);
    }
    if (primitive.stroke !== null) {
      context.strokeStyle = primitive.stroke;
      context.lineWidth = primitive.strokeWidth;
      context.setLineDash([...primitive.dash]);
      context.stroke(path);
    }
  }
  context.restore();
}
