/** The measured length: a plain line with the reading beside it. */
import { classStyles } from '#shared-types/class-style.ts';
import type { DrawingPath } from '#shared-types/drawing.ts';
import type { DimensionGeometry, LineGeometry } from '#shared-types/mark.ts';
import { stroked } from '../drawing-path.ts';
import { lineWidth, noteColour } from '../mark-look.ts';
import { bandBeside } from '../words-band.ts';
import { lineRules } from './line.ts';
import type { MarkKindRules } from './mark-kind-rules.ts';

const asLine = ({ from, to }: DimensionGeometry): LineGeometry => ({ kind: 'line', v: 1, from, to });
const withEnds = (dimension: DimensionGeometry, { from, to }: LineGeometry): DimensionGeometry => ({
  ...dimension,
  from,
  to,
});

/** The line and its ticks as their halo has them, without the dash of a class. */
function inPlainInk(halo: readonly DrawingPath[], unit: number): DrawingPath[] {
  return halo.map(({ d }) => stroked(d, noteColour, lineWidth * unit, []));
}

export const dimensionRules: MarkKindRules<DimensionGeometry> = {
  body(dimension, look) {
    const { unit, note = false, reading = '' } = look;
    const drawn = lineRules.body(asLine(dimension), look);
    const line = note ? { ...drawn, ink: inPlainInk(drawn.halo, unit) } : drawn;
    if (reading === '') return line;
    const colour = note ? noteColour : classStyles[look.class].colour;
    const { halo, ink } = bandBeside(reading, dimension, { unit, colour });
    return { halo: [...line.halo, halo], ink: [...line.ink, ink] };
  },

  labelBox: (dimension, look) => lineRules.labelBox(asLine(dimension), look),
  handles: (dimension, ground) => lineRules.handles(asLine(dimension), ground),
  moveHandle: (dimension, name, to, ground) =>
    withEnds(dimension, lineRules.moveHandle(asLine(dimension), name, to, ground)),
  movedBy: (dimension, byX, byY) => withEnds(dimension, lineRules.movedBy(asLine(dimension), byX, byY)),
  bounds: (dimension) => lineRules.bounds(asLine(dimension)),
  distance: (dimension, point, look) => lineRules.distance(asLine(dimension), point, look),
  isMeant: (dimension, unit) => lineRules.isMeant(asLine(dimension), unit),
};
