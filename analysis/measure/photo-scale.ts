/**
 * What a photo's pixels are in millimetres, in one plane of what it shows. Two clicks on a known length give one
 * factor for the whole picture and leave the camera's tilt in it; the four corners of a known rectangle take the tilt
 * out in their plane. What the lens bends is not straightened in either.
 */
import type { KnownLength } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import { courseOf } from '../marks/mark-kinds/segment.ts';
import { cornerFault, type CornerFault, type FourCorners } from './corner-fault.ts';

/**
 * Standard uncertainty of each coordinate of a click, in image pixels, unless another is entered: what a careful hand
 * does on an edge at full size. Common practice, no source.
 */
export const usualClickUncertainty = 1.5;

/** Degrees between the line of sight and the plane's normal that count as square to it, unless another is entered. */
export const usualGreatestTilt = 10;

/** Degrees. Beyond it two clicks say too little to print: a rectangle is needed. */
export const mostTilt = 45;

export type { KnownLength } from '#shared-types/mark.ts';

/** Where the camera stood. Needed only to say what a plane offset does, and how a leaning plane falls off. */
export type CameraPlace = {
  /** From the camera to the scale's plane, square to the plane, in mm. */
  readonly distanceMm: number;
  /** The middle of the whole picture as it was taken. */
  readonly middle: ImagePoint;
};

type OfAnyScale = {
  /** Standard uncertainty of each coordinate of the scale's own clicks, in image pixels. */
  readonly clickUncertainty: number;
  /**
   * How far, in mm, what is measured may lie before or behind the scale's plane, in a plane parallel to it; 0 where it
   * lies in it. It is not corrected, only counted.
   */
  readonly offsetMm: number;
  /** Null where it was not entered. */
  readonly camera: CameraPlace | null;
};

export type LengthScale = OfAnyScale & {
  readonly kind: 'length';
  readonly ends: readonly [ImagePoint, ImagePoint];
  readonly length: KnownLength;
  /** The plane may lean by as much, any way, from square to the line of sight; degrees, 0 to mostTilt. */
  readonly greatestTilt: number;
};

export type RectangleScale = OfAnyScale & {
  readonly kind: 'rectangle';
  /** One after the other round it, from any corner and either way round. */
  readonly corners: FourCorners<ImagePoint>;
  /** From the first corner to the second, and from the second to the third. Its corners are taken as square. */
  readonly sides: readonly [KnownLength, KnownLength];
};

export type PhotoScale = LengthScale | RectangleScale;

/**
 * Why a scale will not do: its corners (see CornerFault), or
 * - known-length: a length is not above 0, or its uncertainty below 0;
 * - click-uncertainty: not above 0;
 * - tilt: not between 0 and mostTilt;
 * - plane-offset: below 0, or no number;
 * - camera-distance: not above 0 or, with a plane offset, not entered.
 */
export type ScaleFault =
  CornerFault | 'known-length' | 'click-uncertainty' | 'tilt' | 'plane-offset' | 'camera-distance';

/** In standard uncertainties of a click; the same least as between a rectangle's corners. */
const leastGap = 10;

/** The first fault found; null for a scale that will do. */
export function scaleFault(scale: PhotoScale): ScaleFault | null {
  const { clickUncertainty, offsetMm, camera } = scale;
  if (!isAbove0(clickUncertainty)) return 'click-uncertainty';
  const known = scale.kind === 'length' ? [scale.length] : scale.sides;
  if (!known.every(({ mm, expandedMm }) => isAbove0(mm) && isAtLeast0(expandedMm))) return 'known-length';
  if (!isAtLeast0(offsetMm)) return 'plane-offset';
  if (camera === null ? offsetMm > 0 : !isAbove0(camera.distanceMm)) return 'camera-distance';
  if (scale.kind === 'rectangle') return cornerFault(scale.corners, clickUncertainty);
  if (!(isAtLeast0(scale.greatestTilt) && scale.greatestTilt <= mostTilt)) return 'tilt';
  const { length } = courseOf(...scale.ends);
  if (!Number.isFinite(length)) return 'not-finite';
  return length < leastGap * clickUncertainty ? 'too-small' : null;
}

const isAtLeast0 = (value: number) => Number.isFinite(value) && value >= 0;
const isAbove0 = (value: number) => Number.isFinite(value) && value > 0;
