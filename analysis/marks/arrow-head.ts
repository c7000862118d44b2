/**
 * The head of an arrow: a filled triangle whose apex is the tip itself. A stroked corner would not do: its mitre or
 * round join paints beyond the tip, and then the arrow points past what it is meant to show.
 */
import { polygon, type PlanePoint } from './drawing-path.ts';

/** Measures in drawing points. */
const headLength = 12;
const headHalfWidth = 4.6;

/** From the tip back to where the shaft ends, hidden under the head, in drawing points. */
export const shaftJoint = 9;

/** `direction` is of length 1, from tail to tip; `unit` is image pixels per drawing point. */
export function arrowHead(tip: PlanePoint, direction: PlanePoint, unit: number): string {
  return polygon([
    tip,
    behind(tip, direction, headLength * unit, headHalfWidth * unit),
    behind(tip, direction, headLength * unit, -headHalfWidth * unit),
  ]);
}

/**
 * The head widened by `width` drawing points on every side, its apex cut off square `width` ahead of the tip.
 * An edge of the head runs at b = a·W/L (a behind the tip, b aside); moved outward by h it is
 * b = a·W/L + h·√(L² + W²)/L.
 */
export function arrowHeadHalo(tip: PlanePoint, direction: PlanePoint, unit: number, width: number): string {
  const slope = headHalfWidth / headLength;
  const outward = (width * Math.hypot(headLength, headHalfWidth)) / headLength;
  const aside = (along: number) => along * slope + outward;
  const front = -width;
  const back = headLength + width;
  return polygon(
    [
      { along: front, aside: aside(front) },
      { along: back, aside: aside(back) },
      { along: back, aside: -aside(back) },
      { along: front, aside: -aside(front) },
    ].map((corner) => behind(tip, direction, corner.along * unit, corner.aside * unit)),
  );
}

function behind(tip: PlanePoint, direction: PlanePoint, along: number, aside: number): PlanePoint {
  return {
    x: tip.x - direction.x * along - direction.y * aside,
    y: tip.y - direction.y * along + direction.x * aside,
  };
}
