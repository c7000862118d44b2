/** A scale of either kind on one photo: a plate of 100 by 60 mm at a slant, and a rule of 100 mm level in it. */
import { imagePoint } from '#analysis/marks/planes.ts';
import type { LengthScale, RectangleScale } from '#analysis/measure/photo-scale.ts';

/** Its corners, from the upper left one, clockwise as seen. */
export const plate = [
  imagePoint(400, 300),
  imagePoint(1900, 350),
  imagePoint(2000, 1200),
  imagePoint(300, 1100),
] as const;

export const aRectangleScale: RectangleScale = {
  kind: 'rectangle',
  corners: plate,
  sides: [
    { mm: 100, expandedMm: 0.05 },
    { mm: 60, expandedMm: 0.05 },
  ],
  clickUncertainty: 1.5,
  offsetMm: 0,
  camera: null,
};

/** Ten pixels to the millimetre. */
export const aLengthScale: LengthScale = {
  kind: 'length',
  ends: [imagePoint(200, 500), imagePoint(1200, 500)],
  length: { mm: 100, expandedMm: 0.1 },
  greatestTilt: 10,
  clickUncertainty: 1.5,
  offsetMm: 0,
  camera: null,
};
