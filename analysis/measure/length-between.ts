/** The length between two clicks. */
import type { ImagePoint } from '#shared-types/points.ts';
import { courseOf } from '../marks/mark-kinds/segment.ts';
import { basisFault, measure, type Basis } from './measure-quantity.ts';
import { notMeasured, type Measurement } from './measured.ts';
import { plainDifference, type Quantity } from './quantity.ts';

/** Image pixels under which two clicks are one. */
export const leastApart = 1;

const length: Quantity = {
  unit: 'mm',
  unitWithoutScale: 'px',
  power: 1,
  of: ([from, to]) => (from === undefined || to === undefined ? null : courseOf(from, to).length),
  difference: plainDifference,
};

/** In mm, or in pixels without a scale. Both clicks are taken to lie in the scale's plane, or in one parallel to it. */
export function lengthBetween(from: ImagePoint, to: ImagePoint, basis: Basis): Measurement {
  const fault = basisFault([from, to], basis);
  if (fault !== null) return fault;
  if (courseOf(from, to).length < leastApart) return notMeasured('too-near');
  return measure(length, [from, to], basis);
}
