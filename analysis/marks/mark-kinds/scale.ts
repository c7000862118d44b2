/** The scale: two points a known length apart, in plain ink, with what is known beside it. */
import { haloColour } from '#shared-types/class-style.ts';
import type { LineGeometry, ScaleGeometry } from '#shared-types/mark.ts';
import { pointDigits, stroked, type PlanePoint } from '../drawing-path.ts';
import { haloWidth, lineWidth, noteColour } from '../mark-look.ts';
import { bandBeside } from '../words-band.ts';
import { lineRules } from './line.ts';
import type { MarkKindRules } from './mark-kind-rules.ts';
import { courseOf } from './segment.ts';

/** Measures in drawing points: half of an end's tick. Longer than a line's: the ends are what counts. */
const endHalf = 10;

const asLine = ({ from, to }: ScaleGeometry): LineGeometry => ({ kind: 'line', v: 1, from, to });

export const scaleRules: MarkKindRules<ScaleGeometry> = {
  body(scale, { unit, reading = '' }) {
    const { from, to } = scale;
    const { direction } = courseOf(from, to);
    const across = { x: -direction.y * endHalf * unit, y: direction.x * endHalf * unit };
    const end = ({ x, y }: PlanePoint) =>
      `M${pointDigits({ x: x - across.x, y: y - across.y })}L${pointDigits({ x: x + across.x, y: y + across.y })}`;
    const path = `M${pointDigits(from)}L${pointDigits(to)}${end(from)}${end(to)}`;
    const band = reading === '' ? null : bandBeside(reading, scale, { unit, colour: noteColour });
    return {
      halo: [
        stroked(path, haloColour, (lineWidth + 2 * haloWidth) * unit, []),
        ...(band === null ? [] : [band.halo]),
      ],
      ink: [stroked(path, noteColour, lineWidth * unit, []), ...(band === null ? [] : [band.ink])],
    };
  },

  labelBox: (scale, look) => lineRules.labelBox(asLine(scale), look),
  handles: (scale, ground) => lineRules.handles(asLine(scale), ground),
  moveHandle(scale, name, to, ground) {
    const { from, to: end } = lineRules.moveHandle(asLine(scale), name, to, ground);
    return { ...scale, from, to: end };
  },
  movedBy(scale, byX, byY) {
    const { from, to } = lineRules.movedBy(asLine(scale), byX, byY);
    return { ...scale, from, to };
  },
  bounds: (scale) => lineRules.bounds(asLine(scale)),
  distance: (scale, point, look) => lineRules.distance(asLine(scale), point, look),
  isMeant: (scale, unit) => lineRules.isMeant(asLine(scale), unit),
};
