/** From a photo into the plane of its scale, and back. */
import type { ImagePoint } from '#shared-types/points.ts';
import type { PlanePoint } from '../marks/drawing-path.ts';
import { courseOf } from '../marks/mark-kinds/segment.ts';
import { imagePoint } from '../marks/planes.ts';
import { runsClockwise, type FourCorners } from './corner-fault.ts';
import { inverseHomography, mapPoint, solveHomography } from './homography.ts';
import type { LengthScale, PhotoScale, RectangleScale } from './photo-scale.ts';

/** Between the picture and the scale's plane, whose millimetres run the same way round as the picture's pixels. */
export type PlaneReading = {
  /** In mm; null for a point on or beyond the plane's horizon. */
  readonly toPlane: (point: ImagePoint) => PlanePoint | null;
  /** Null for a point of the plane that no camera at that place can see. */
  readonly toPhoto: (point: PlanePoint) => ImagePoint | null;
};

/** A scale without a fault; null where there is no map all the same. */
export function readScale(scale: PhotoScale): PlaneReading | null {
  return scale.kind === 'length' ? readLength(scale) : readRectangle(scale);
}

function readLength({ ends, length }: LengthScale): PlaneReading {
  const mmPerPixel = length.mm / courseOf(...ends).length;
  return {
    toPlane: ({ x, y }) => ({ x: x * mmPerPixel, y: y * mmPerPixel }),
    toPhoto: ({ x, y }) => imagePoint(x / mmPerPixel, y / mmPerPixel),
  };
}

function readRectangle(scale: RectangleScale): PlaneReading | null {
  const inPlane = rectangleInPlane(scale);
  const solved = solveHomography(
    scale.corners.map((from, at) => ({ from, to: inPlane[at] ?? { x: 0, y: 0 } })),
  );
  if (solved.kind === 'refused') return null;
  const back = inverseHomography(solved.matrix);
  return {
    toPlane: (point) => mapPoint(solved.matrix, point),
    toPhoto: (point) => {
      const seen = mapPoint(back, point);
      return seen === null ? null : imagePoint(seen.x, seen.y);
    },
  };
}

/** The corners in mm, in the order clicked: the first at the origin, the second along x. */
export function rectangleInPlane({ corners, sides }: RectangleScale): FourCorners {
  const [{ mm: along }, { mm: across }] = sides;
  const y = runsClockwise(corners) ? across : -across;
  return [
    { x: 0, y: 0 },
    { x: along, y: 0 },
    { x: along, y },
    { x: 0, y },
  ];
}
