/** The diameter of the circle through clicks on an edge or a ring. */
import type { ImagePoint } from '#shared-types/points.ts';
import type { PlanePoint } from '../marks/drawing-path.ts';
import { imagePoint } from '../marks/planes.ts';
import { distancesFrom, fitCircle, type Circle } from './fit-circle.ts';
import { basisFault, measure, readingOf, type Basis } from './measure-quantity.ts';
import { notMeasured, type Measured, type MeasurementWarning, type NotMeasured } from './measured.ts';
import { mapAll, plainDifference, type Quantity } from './quantity.ts';
import { spreadAcrossLine } from './spread-across-line.ts';
import type { PlaneReading } from './scale-reading.ts';

const diameter: Quantity = {
  unit: 'mm',
  unitWithoutScale: 'px',
  power: 1,
  of(points) {
    const fitted = fitCircle(points);
    return fitted.kind === 'fitted' ? 2 * fitted.circle.radius : null;
  },
  difference: plainDifference,
};

export type MeasuredCircle = Measured & {
  /** In mm of the scale's plane, or in pixels without a scale. */
  readonly circle: Circle;
};

/** In mm, or in pixels without a scale, by geometric least squares; at least three clicks, anywhere on the circle. */
export function diameterThrough(clicks: readonly ImagePoint[], basis: Basis): MeasuredCircle | NotMeasured {
  const fault = basisFault(clicks, basis);
  if (fault !== null) return fault;
  if (clicks.length < 3) return notMeasured('too-few-points');
  if (spreadAcrossLine(clicks) < basis.clickUncertainty) return notMeasured('on-a-line');
  const measured = measure(diameter, clicks, basis);
  if (measured.kind === 'refused') return measured;

  const reading = readingOf(basis);
  const points = reading === null ? null : mapAll(clicks, reading.toPlane);
  const fitted = points === null ? null : fitCircle(points);
  if (reading === null || points === null || fitted?.kind !== 'fitted') return notMeasured('unsteady');
  const { circle } = fitted;
  const offCircle = isOffCircle({
    circle,
    points,
    clicks,
    reading,
    clickUncertainty: basis.clickUncertainty,
  });
  const warnings: readonly MeasurementWarning[] = [
    ...measured.warnings,
    ...(isShortArc(circle, points) ? (['short-arc'] as const) : []),
    ...(offCircle ? (['off-the-circle'] as const) : []),
  ];
  return { ...measured, circle, warnings };
}

/** As a closed polygon in the picture, so that a slanting circle is drawn as it is seen; null where it is not all seen. */
export function circleOnPhoto({ centre, radius }: Circle, basis: Basis, sides = 72): ImagePoint[] | null {
  const reading = readingOf(basis);
  if (reading === null) return null;
  const turns = Array.from({ length: sides }, (_, at) => (at * 2 * Math.PI) / sides);
  return mapAll(turns, (turn) =>
    reading.toPhoto({ x: centre.x + radius * Math.cos(turn), y: centre.y + radius * Math.sin(turn) }),
  );
}

/** A quarter: the widest gap between neighbours is then three. Our own rule; the fit of a short arc hangs on every click. */
const shortestArc = Math.PI / 2;

function isShortArc({ centre }: Circle, points: readonly PlanePoint[]): boolean {
  const turns = points.map(({ x, y }) => Math.atan2(y - centre.y, x - centre.x)).sort((a, b) => a - b);
  const gaps = turns.map((turn, at) => (turns[at + 1] ?? (turns[0] ?? 0) + 2 * Math.PI) - turn);
  return 2 * Math.PI - Math.max(...gaps) < shortestArc;
}

/** Times as far off the circle, root mean square, as clicks alone would put points. Our own rule. */
const farOff = 2;

type SeenCircle = {
  readonly circle: Circle;
  readonly points: readonly PlanePoint[];
  readonly clicks: readonly ImagePoint[];
  readonly reading: PlaneReading;
  readonly clickUncertainty: number;
};

/** Three numbers are fitted, so three points are never off. */
function isOffCircle({ circle, points, clicks, reading, clickUncertainty }: SeenCircle): boolean {
  const free = points.length - 3;
  if (free < 1) return false;
  const distances = distancesFrom(circle, points);
  const sum = clicks.reduce((squares, click, at) => {
    const expected = clickUncertainty * outwardPerPixel(circle, reading, click);
    return squares + ((distances[at] ?? 0) / expected) ** 2;
  }, 0);
  return Math.sqrt(sum / free) > farOff;
}

/** How far a click moves outward from the circle, in the plane's unit, for a pixel that it moves up the steepest way. */
function outwardPerPixel(circle: Circle, reading: PlaneReading, { x, y }: ImagePoint): number {
  const outward = (click: ImagePoint) => {
    const point = reading.toPlane(click);
    return point === null ? NaN : Math.hypot(point.x - circle.centre.x, point.y - circle.centre.y);
  };
  const half = 0.5;
  return Math.hypot(
    outward(imagePoint(x + half, y)) - outward(imagePoint(x - half, y)),
    outward(imagePoint(x, y + half)) - outward(imagePoint(x, y - half)),
  );
}
