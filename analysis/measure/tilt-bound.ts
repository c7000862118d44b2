/**
 * What a tilt that was not corrected can do to a measurement by two clicks: the plane is leaned by the greatest tilt,
 * every way round, and what was clicked is read in each. Plain geometry of a pinhole camera. Lengths up the slope are
 * seen short by 1 - cos of the tilt (5 degrees 0.38 %, 10 degrees 1.52 %), and what lies further up the slope smaller;
 * the second needs the camera's distance, and is left out where that is not known.
 */
import type { PlanePoint } from '../marks/drawing-path.ts';
import { courseOf } from '../marks/mark-kinds/segment.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import type { LengthScale } from './photo-scale.ts';
import { mapAll, type Quantity } from './quantity.ts';

/** Ways round that are tried: between two of them lies less than half a percent of the effect. */
const waysRound = 36;

/** Share by which a length seen at this tilt is short; degrees. */
export function foreshortening(tilt: number): number {
  return 1 - Math.cos((tilt * Math.PI) / 180);
}

/**
 * The most by which the quantity may be off either way, in its unit. A length or an area is never taken as better than
 * the foreshortening, although a length along the scale's own has none: the slope's direction is not known, nor,
 * without the camera's distance, its fall-off. Null where the plane, leaned so, would not be seen.
 */
export function tiltBound(
  quantity: Quantity,
  value: number,
  clicks: readonly ImagePoint[],
  scale: LengthScale,
): number | null {
  if (scale.greatestTilt === 0) return 0;
  let most = quantity.power === 0 ? 0 : foreshortening(scale.greatestTilt) * Math.abs(value);
  for (let way = 0; way < waysRound; way += 1) {
    const leaned = valueIfLeaning(quantity, clicks, scale, (way * 2 * Math.PI) / waysRound);
    if (leaned === null) return null;
    most = Math.max(most, Math.abs(quantity.difference(leaned, value)));
  }
  return most;
}

/** `towards`: which way the plane falls away from the camera, in radians clockwise as seen from the picture's x axis. */
function valueIfLeaning(
  quantity: Quantity,
  clicks: readonly ImagePoint[],
  scale: LengthScale,
  towards: number,
): number | null {
  const lean = leanOf(scale, towards);
  const ends = mapAll(scale.ends, (end) => onLeaningPlane(end, lean));
  const points = mapAll(clicks, (click) => onLeaningPlane(click, lean));
  const [from, to] = ends ?? [];
  if (from === undefined || to === undefined || points === null) return null;
  const factor = scale.length.mm / courseOf(from, to).length;
  return quantity.of(points.map(({ x, y }) => ({ x: x * factor, y: y * factor })));
}

type Lean = {
  readonly middle: PlanePoint;
  /** Camera to picture plane, in image pixels; Infinity where the camera's distance is not known. */
  readonly focalLength: number;
  readonly towards: number;
  /** Radians. */
  readonly tilt: number;
};

function leanOf({ camera, ends, length, greatestTilt }: LengthScale, towards: number): Lean {
  const tilt = (greatestTilt * Math.PI) / 180;
  if (camera === null) return { middle: ends[0], focalLength: Infinity, towards, tilt };
  const pixelsPerMm = courseOf(...ends).length / length.mm;
  return { middle: camera.middle, focalLength: camera.distanceMm * pixelsPerMm, towards, tilt };
}

/** Where the line of sight through a pixel meets the plane, in pixels of the picture's middle. */
function onLeaningPlane(point: ImagePoint, { middle, focalLength, towards, tilt }: Lean): PlanePoint | null {
  const [cos, sin] = [Math.cos(towards), Math.sin(towards)];
  const [dx, dy] = [point.x - middle.x, point.y - middle.y];
  const seenAlong = dx * cos + dy * sin;
  const nearing = Math.cos(tilt) - (seenAlong / focalLength) * Math.sin(tilt);
  if (!(nearing > 0)) return null;
  const along = seenAlong / nearing;
  const across = (dy * cos - dx * sin) * (1 + (along / focalLength) * Math.sin(tilt));
  return { x: along * cos - across * sin, y: along * sin + across * cos };
}
