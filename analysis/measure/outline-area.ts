/** The area within an outline, in the plane of what is seen. */
import type { ImagePoint } from '#shared-types/points.ts';
import type { PlanePoint } from '../marks/drawing-path.ts';
import { doubledArea } from './corner-fault.ts';
import { basisFault, measure, type Basis } from './measure-quantity.ts';
import { notMeasured, type Measurement } from './measured.ts';
import { plainDifference, type Quantity } from './quantity.ts';
import { spreadAcrossLine } from './spread-across-line.ts';

const area: Quantity = {
  unit: 'mm2',
  unitWithoutScale: 'px2',
  power: 2,
  of: signedArea,
  difference: plainDifference,
};

/**
 * In mm², or in square pixels without a scale; at least three corners, in order, either way round. The uncertainty is
 * that of the corners: what a rounded edge has between them is not in it.
 */
export function areaWithin(corners: readonly ImagePoint[], basis: Basis): Measurement {
  const fault = basisFault(corners, basis);
  if (fault !== null) return fault;
  if (corners.length < 3) return notMeasured('too-few-points');
  if (spreadAcrossLine(corners) < basis.clickUncertainty) return notMeasured('on-a-line');
  if (crossesItself(corners)) return notMeasured('outline-crosses');
  return measure(area, corners, basis);
}

/** Positive where the corners run clockwise as seen in a picture; as fans from the first corner. */
function signedArea(corners: readonly PlanePoint[]): number | null {
  const [first, ...others] = corners;
  if (first === undefined) return null;
  return others.reduce((sum, corner, at) => {
    const next = others[at + 1];
    return next === undefined ? sum : sum + doubledArea(first, corner, next) / 2;
  }, 0);
}

type Side = readonly [PlanePoint, PlanePoint];

function crossesItself(corners: readonly PlanePoint[]): boolean {
  const sides = corners.map((corner, at): Side => [corner, corners[(at + 1) % corners.length] ?? corner]);
  return sides.some((side, at) => sides.slice(at + 1).some((other) => cross(side, other)));
}

/** Within both: sides that share a corner, or touch, do not cross. */
function cross([a, b]: Side, [c, d]: Side): boolean {
  return doubledArea(a, b, c) * doubledArea(a, b, d) < 0 && doubledArea(c, d, a) * doubledArea(c, d, b) < 0;
}
