/** Which blade a click on a photo of the wheel lies on: the one nearest by its angle about the wheel's centre. */
import type { ImagePoint } from '#shared-types/points.ts';
import type { TurningSense } from '#shared-types/rotation.ts';
import type { PlanePoint } from '../marks/drawing-path.ts';
import { imagePoint } from '../marks/planes.ts';
import type { RectangleScale } from '../measure/photo-scale.ts';
import { readScale } from '../measure/scale-reading.ts';

export type NumberedWheel = {
  readonly centre: ImagePoint;
  /** How many are numbered: 1 to this, evenly round the wheel. */
  readonly blades: number;
  readonly reference: {
    readonly blade: number;
    /** Radians from the picture's x axis, clockwise as seen, at which its edge lies. */
    readonly angle: number;
  };
  /** Which way the numbers rise, as seen in the picture. */
  readonly numbered: TurningSense;
};

export type BladeOfClick = {
  /** 1 to the number of blades. */
  readonly blade: number;
  /** Pitches from the blade to the click, the way the numbers rise: -0.5 to 0.5. */
  readonly offBy: number;
  /** The click lies nearer to the middle between two blades than to either. Our own rule. */
  readonly isDoubtful: boolean;
};

/** Of a pitch. */
const doubtfulFrom = 0.25;

/** Radians from the picture's x axis to the click, clockwise as seen (y runs down). */
export function angleAbout(centre: PlanePoint, point: PlanePoint): number {
  return Math.atan2(point.y - centre.y, point.x - centre.x);
}

/**
 * Null for a click on the centre itself, or beyond the horizon of the scale's plane.
 *
 * @param scale takes the tilt out, where the wheel's edges lie in its plane or near it; without one the picture is taken
 *   as seen along the axis, and a slanting view draws blades together on two sides
 * @throws {RangeError} unless the blades are a whole number above 0 and the reference is one of them
 */
export function bladeOfClick(
  click: ImagePoint,
  wheel: NumberedWheel,
  scale: RectangleScale | null,
): BladeOfClick | null {
  const { blades, reference, numbered } = wheel;
  if (!(Number.isInteger(blades) && Number.isInteger(reference.blade))) {
    throw new RangeError('blades are counted in whole numbers');
  }
  if (!(reference.blade >= 1 && reference.blade <= blades)) {
    throw new RangeError(`blade ${reference.blade} is none of ${blades}`);
  }
  const turned = turnFromReference(click, wheel, scale);
  if (turned === null) return null;
  const pitches = ((numbered === 'clockwise' ? turned : -turned) * blades) / (2 * Math.PI);
  const nearest = Math.round(pitches);
  const offBy = pitches - nearest;
  return {
    blade: modulo(reference.blade - 1 + nearest, blades) + 1,
    offBy,
    isDoubtful: Math.abs(offBy) > doubtfulFrom,
  };
}

/** Clicks on each blade in the order of their numbers; clicks that lie on none are left out. Throws as bladeOfClick. */
export function clicksPerBlade(
  clicks: readonly ImagePoint[],
  wheel: NumberedWheel,
  scale: RectangleScale | null,
): readonly number[] {
  const perBlade = Array.from({ length: wheel.blades }, () => 0);
  for (const click of clicks) {
    const found = bladeOfClick(click, wheel, scale);
    if (found !== null) perBlade[found.blade - 1] = (perBlade[found.blade - 1] ?? 0) + 1;
  }
  return perBlade;
}

/** From the reference blade to the click, radians clockwise as seen square to the wheel; any number of whole turns. */
function turnFromReference(
  click: ImagePoint,
  { centre, reference }: NumberedWheel,
  scale: RectangleScale | null,
): number | null {
  if (click.x === centre.x && click.y === centre.y) return null;
  if (scale === null) return angleAbout(centre, click) - reference.angle;
  const toPlane = readScale(scale)?.toPlane;
  // A direction from the centre stays one: any point that way will do.
  const beside = imagePoint(centre.x + Math.cos(reference.angle), centre.y + Math.sin(reference.angle));
  const [middle, on, at] = [centre, beside, click].map((point) => toPlane?.(point) ?? null);
  if (!middle || !on || !at) return null;
  return angleAbout(middle, at) - angleAbout(middle, on);
}

const modulo = (value: number, by: number) => ((value % by) + by) % by;
