/** The numbers that a scale was made from, each of which is uncertain by itself. */
import type { ImagePoint } from '#shared-types/points.ts';
import { imagePoint } from '../marks/planes.ts';
import { ofExpanded } from './combined-uncertainty.ts';
import type { KnownLength, LengthScale, PhotoScale, RectangleScale } from './photo-scale.ts';

export type ScaleInput = {
  /** In its own unit: image pixels for a click's coordinate, mm for a known length. */
  readonly standardUncertainty: number;
  /** The scale as it would be with this number so much larger. */
  readonly moved: (by: number) => PhotoScale;
};

/** Every click's coordinate and every known length. */
export function scaleInputs(scale: PhotoScale): readonly ScaleInput[] {
  return scale.kind === 'length' ? lengthInputs(scale) : rectangleInputs(scale);
}

function lengthInputs(scale: LengthScale): readonly ScaleInput[] {
  const [from, to] = scale.ends;
  return [
    ...clickInputs(scale, from, (moved) => ({ ...scale, ends: [moved, to] })),
    ...clickInputs(scale, to, (moved) => ({ ...scale, ends: [from, moved] })),
    lengthInput(scale.length, (length) => ({ ...scale, length })),
  ];
}

function rectangleInputs(scale: RectangleScale): readonly ScaleInput[] {
  const [a, b, c, d] = scale.corners;
  const [along, across] = scale.sides;
  return [
    ...clickInputs(scale, a, (moved) => ({ ...scale, corners: [moved, b, c, d] })),
    ...clickInputs(scale, b, (moved) => ({ ...scale, corners: [a, moved, c, d] })),
    ...clickInputs(scale, c, (moved) => ({ ...scale, corners: [a, b, moved, d] })),
    ...clickInputs(scale, d, (moved) => ({ ...scale, corners: [a, b, c, moved] })),
    lengthInput(along, (moved) => ({ ...scale, sides: [moved, across] })),
    lengthInput(across, (moved) => ({ ...scale, sides: [along, moved] })),
  ];
}

function clickInputs(
  { clickUncertainty: standardUncertainty }: PhotoScale,
  { x, y }: ImagePoint,
  withClick: (moved: ImagePoint) => PhotoScale,
): readonly ScaleInput[] {
  return [
    { standardUncertainty, moved: (by) => withClick(imagePoint(x + by, y)) },
    { standardUncertainty, moved: (by) => withClick(imagePoint(x, y + by)) },
  ];
}

function lengthInput(known: KnownLength, withLength: (moved: KnownLength) => PhotoScale): ScaleInput {
  return {
    standardUncertainty: ofExpanded(known.expandedMm),
    moved: (by) => withLength({ ...known, mm: known.mm + by }),
  };
}
