/** The angle between two directions from one click. */
import type { ImagePoint } from '#shared-types/points.ts';
import { courseOf } from '../marks/mark-kinds/segment.ts';
import { leastApart } from './length-between.ts';
import { basisFault, measure, type Basis } from './measure-quantity.ts';
import { notMeasured, type Measurement } from './measured.ts';
import type { Quantity } from './quantity.ts';

/** Signed, and followed through the half turn: an angle of 180 degrees has an uncertainty like any other. */
const angle: Quantity = {
  unit: 'deg',
  unitWithoutScale: 'deg',
  power: 0,
  of([first, vertex, second]) {
    if (first === undefined || vertex === undefined || second === undefined) return null;
    const [ax, ay] = [first.x - vertex.x, first.y - vertex.y];
    const [bx, by] = [second.x - vertex.x, second.y - vertex.y];
    return (Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI;
  },
  difference(one, other) {
    const turned = one - other;
    return turned - 360 * Math.round(turned / 360);
  },
};

/** Degrees, 0 to 180, at the second of the three clicks. */
export function angleAt(
  first: ImagePoint,
  vertex: ImagePoint,
  second: ImagePoint,
  basis: Basis,
): Measurement {
  const clicks = [first, vertex, second];
  const fault = basisFault(clicks, basis);
  if (fault !== null) return fault;
  if ([first, second].some((end) => courseOf(vertex, end).length < leastApart))
    return notMeasured('too-near');
  return measure(angle, clicks, basis);
}
