/** The plain line: no head, and a tick across each end, so that nobody takes it for an arrow. */
import { classStyles, haloColour } from '#shared-types/class-style.ts';
import type { LineGeometry } from '#shared-types/mark.ts';
import { pointDigits, stroked, type PlanePoint } from '../drawing-path.ts';
import { labelBeside } from '../mark-label-drawing.ts';
import { haloWidth, lineWidth } from '../mark-look.ts';
import { imagePoint, withinImage } from '../planes.ts';
import type { MarkKindRules } from './mark-kind-rules.ts';
import { boundsOfPoints, courseOf, distanceToSegment, shortestMeant } from './segment.ts';

/** Measures in drawing points: half a tick's length, and how far the label keeps off it. */
const tickHalf = 6;
const labelGap = 4;

export const lineRules: MarkKindRules<LineGeometry> = {
  body({ from, to }, look) {
    const { colour, dash } = classStyles[look.class];
    const { unit } = look;
    const { direction } = courseOf(from, to);
    const line = `M${pointDigits(from)}L${pointDigits(to)}`;
    const ticks = [from, to].map((end) => tick(end, direction, tickHalf * unit)).join('');
    const dashes = dash.map((part) => part * lineWidth * unit);
    return {
      halo: [stroked(line + ticks, haloColour, (lineWidth + 2 * haloWidth) * unit, [])],
      ink: [
        stroked(line, colour, lineWidth * unit, dashes),
        // A dash could leave nothing of a tick.
        stroked(ticks, colour, lineWidth * unit, []),
      ],
    };
  },

  labelBox({ from, to }, look) {
    const { direction } = courseOf(from, to);
    const gap = labelGap * look.unit;
    const anchor = { x: from.x - direction.x * gap, y: from.y - direction.y * gap };
    return labelBeside(anchor, direction, look.label, classStyles[look.class].shape, look.unit, look.within);
  },

  handles({ from, to }) {
    return [
      { name: 'to', at: to },
      { name: 'from', at: from },
    ];
  },

  moveHandle(line, name, to, { image }) {
    if (name !== 'from' && name !== 'to') return line;
    return { ...line, [name]: withinImage(image, to) };
  },

  movedBy(line, byX, byY) {
    const moved = ({ x, y }: PlanePoint) => imagePoint(x + byX, y + byY);
    return { ...line, from: moved(line.from), to: moved(line.to) };
  },

  bounds({ from, to }) {
    return boundsOfPoints([from, to]);
  },

  distance({ from, to }, point) {
    return distanceToSegment(point, from, to);
  },

  isMeant({ from, to }, unit) {
    return courseOf(from, to).length >= shortestMeant * unit;
  },
};

function tick(end: PlanePoint, direction: PlanePoint, half: number): string {
  const side = (sign: 1 | -1) => ({
    x: end.x - sign * direction.y * half,
    y: end.y + sign * direction.x * half,
  });
  return `M${pointDigits(side(1))}L${pointDigits(side(-1))}`;
}
