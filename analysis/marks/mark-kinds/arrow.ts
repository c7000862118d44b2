/** The arrow: "there". Its tip is exact; the label stands at its tail. */
import { classStyles, haloColour } from '#shared-types/class-style.ts';
import type { ArrowGeometry } from '#shared-types/mark.ts';
import { arrowHead, arrowHeadHalo, shaftJoint } from '../arrow-head.ts';
import { filled, pointDigits, stroked } from '../drawing-path.ts';
import { labelBeside } from '../mark-label-drawing.ts';
import { haloWidth, lineWidth } from '../mark-look.ts';
import { imagePoint, withinImage } from '../planes.ts';
import type { MarkKindRules } from './mark-kind-rules.ts';
import { boundsOfPoints, courseOf, distanceToSegment, shortestMeant } from './segment.ts';

export const arrowRules: MarkKindRules<ArrowGeometry> = {
  body({ tail, tip }, look) {
    const { colour, dash } = classStyles[look.class];
    const { unit } = look;
    const { length, direction } = courseOf(tail, tip);
    const shaftLength = Math.max(0, length - shaftJoint * unit);
    const shaftEnd = { x: tail.x + direction.x * shaftLength, y: tail.y + direction.y * shaftLength };
    const shaft = shaftLength === 0 ? null : `M${pointDigits(tail)}L${pointDigits(shaftEnd)}`;
    const dashes = dash.map((part) => part * lineWidth * unit);
    return {
      halo: [
        ...(shaft === null ? [] : [stroked(shaft, haloColour, (lineWidth + 2 * haloWidth) * unit, [])]),
        // Nothing is painted further past the tip than the halo's width, half a line.
        filled(arrowHeadHalo(tip, direction, unit, haloWidth), haloColour),
      ],
      ink: [
        ...(shaft === null ? [] : [stroked(shaft, colour, lineWidth * unit, dashes)]),
        filled(arrowHead(tip, direction, unit), colour),
      ],
    };
  },

  labelBox({ tail, tip }, look) {
    const { direction } = courseOf(tail, tip);
    return labelBeside(tail, direction, look.label, classStyles[look.class].shape, look.unit, look.within);
  },

  handles({ tail, tip }) {
    return [
      { name: 'tip', at: tip },
      { name: 'tail', at: tail },
    ];
  },

  moveHandle(arrow, name, to, { image }) {
    if (name !== 'tip' && name !== 'tail') return arrow;
    return { ...arrow, [name]: withinImage(image, to) };
  },

  movedBy(arrow, byX, byY) {
    const moved = ({ x, y }: { x: number; y: number }) => imagePoint(x + byX, y + byY);
    return { ...arrow, tail: moved(arrow.tail), tip: moved(arrow.tip) };
  },

  bounds({ tail, tip }) {
    return boundsOfPoints([tail, tip]);
  },

  distance({ tail, tip }, point) {
    return distanceToSegment(point, tail, tip);
  },

  isMeant({ tail, tip }, unit) {
    return courseOf(tail, tip).length >= shortestMeant * unit;
  },
};
