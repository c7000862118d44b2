/**
 * A quantity measured by clicks on a photo, with its uncertainty: every coordinate of every click and every known
 * length moved by itself (JCGM 100:2008, eq. 10, all independent), a plane offset and an uncorrected tilt as bounds.
 */
import type { ImagePoint } from '#shared-types/points.ts';
import type { PlanePoint } from '../marks/drawing-path.ts';
import { imagePoint } from '../marks/planes.ts';
import { contributionOf, coverageFactor, inQuadrature, ofRectangle } from './combined-uncertainty.ts';
import {
  notMeasured,
  type Measurement,
  type MeasurementWarning,
  type NotMeasured,
  type UncertaintySource,
} from './measured.ts';
import { scaleFault, type PhotoScale } from './photo-scale.ts';
import { mapAll, type Quantity } from './quantity.ts';
import { isBeyondScale } from './scale-area.ts';
import { scaleInputs } from './scale-inputs.ts';
import { readScale, type PlaneReading } from './scale-reading.ts';
import { tiltBound } from './tilt-bound.ts';

/** What a measurement stands on besides its clicks. */
export type Basis = {
  /** Standard uncertainty of each coordinate of a measuring click, in image pixels. */
  readonly clickUncertainty: number;
  /** Null where the photo has none: everything is then in image pixels. */
  readonly scale: PhotoScale | null;
};

/** What no quantity can be measured on; null where there is nothing of the kind. */
export function basisFault(clicks: readonly ImagePoint[], basis: Basis): NotMeasured | null {
  const { clickUncertainty, scale } = basis;
  if (!(Number.isFinite(clickUncertainty) && clickUncertainty > 0)) return notMeasured('click-uncertainty');
  if (!clicks.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))) return notMeasured('not-finite');
  const because = scale === null ? null : scaleFault(scale);
  return because === null ? null : { kind: 'refused', of: 'scale', because };
}

/** Pixels as they are, for a photo without a scale. */
const inPixels: PlaneReading = { toPlane: (point) => point, toPhoto: ({ x, y }) => imagePoint(x, y) };

/** Null where the scale gives no map. */
export function readingOf({ scale }: Basis): PlaneReading | null {
  return scale === null ? inPixels : readScale(scale);
}

/** The clicks have to be such that there is something to measure; `basisFault` is asked here. */
export function measure(quantity: Quantity, clicks: readonly ImagePoint[], basis: Basis): Measurement {
  const fault = basisFault(clicks, basis);
  if (fault !== null) return fault;
  const reading = readingOf(basis);
  if (reading === null) return notMeasured('unsteady');
  const points = mapAll(clicks, reading.toPlane);
  if (points === null) return notMeasured('beyond-horizon');
  const value = quantity.of(points);
  const contributions =
    value === null ? null : contributionsTo({ quantity, value, clicks, points, basis, reading });
  if (value === null || contributions === null) return notMeasured('unsteady');

  const standardUncertainty = inQuadrature(Object.values(contributions));
  const share = (source: UncertaintySource) => (contributions[source] / standardUncertainty) ** 2;
  return {
    kind: 'measured',
    value: Math.abs(value),
    unit: basis.scale === null ? quantity.unitWithoutScale : quantity.unit,
    standardUncertainty,
    expanded: coverageFactor * standardUncertainty,
    parts: { clicks: share('clicks'), scale: share('scale'), offset: share('offset'), tilt: share('tilt') },
    warnings: warningsOf(basis.scale, reading, clicks),
  };
}

type Stand = {
  readonly quantity: Quantity;
  readonly value: number;
  readonly clicks: readonly ImagePoint[];
  /** The clicks in the plane. */
  readonly points: readonly PlanePoint[];
  readonly basis: Basis;
  readonly reading: PlaneReading;
};

/** Standard uncertainty from each source, in the value's unit; null where one cannot be computed. */
function contributionsTo(stand: Stand): Record<UncertaintySource, number> | null {
  const [clicks, scale, offset, tilt] = [
    fromClicks(stand),
    fromScale(stand),
    fromOffset(stand),
    fromTilt(stand),
  ];
  if (clicks === null || scale === null || tilt === null) return null;
  return { clicks, scale, offset, tilt };
}

function fromClicks({ quantity, value, clicks, points, basis, reading }: Stand): number | null {
  const changeWith = (at: number, moved: ImagePoint) => {
    const point = reading.toPlane(moved);
    const changed = point === null ? null : quantity.of(points.with(at, point));
    return changed === null ? null : quantity.difference(changed, value);
  };
  const contributions = clicks.flatMap(({ x, y }, at) => [
    contributionOf(basis.clickUncertainty, (by) => changeWith(at, imagePoint(x + by, y))),
    contributionOf(basis.clickUncertainty, (by) => changeWith(at, imagePoint(x, y + by))),
  ]);
  return inQuadratureOrNull(contributions);
}

function fromScale({ quantity, value, clicks, basis }: Stand): number | null {
  if (basis.scale === null) return 0;
  const contributions = scaleInputs(basis.scale).map(({ standardUncertainty, moved }) =>
    contributionOf(standardUncertainty, (by) => {
      const reading = readScale(moved(by));
      const points = reading === null ? null : mapAll(clicks, reading.toPlane);
      const changed = points === null ? null : quantity.of(points);
      return changed === null ? null : quantity.difference(changed, value);
    }),
  );
  return inQuadratureOrNull(contributions);
}

/**
 * Planes parallel at dz, seen by a camera at Z, differ in size by dz/Z: plain geometry. The offset is there, whole and
 * not corrected, one way or the other: such an effect is as large as its standard uncertainty.
 */
function fromOffset({ quantity, value, basis: { scale } }: Stand): number {
  if (!scale?.camera) return 0;
  const { offsetMm, camera } = scale;
  return (quantity.power * Math.abs(value) * offsetMm) / camera.distanceMm;
}

function fromTilt({ quantity, value, clicks, basis: { scale } }: Stand): number | null {
  if (scale?.kind !== 'length') return 0;
  const bound = tiltBound(quantity, value, clicks, scale);
  return bound === null ? null : ofRectangle(bound);
}

function inQuadratureOrNull(contributions: readonly (number | null)[]): number | null {
  const known = contributions.filter((one) => one !== null);
  return known.length === contributions.length ? inQuadrature(known) : null;
}

function warningsOf(
  scale: PhotoScale | null,
  reading: PlaneReading,
  clicks: readonly ImagePoint[],
): readonly MeasurementWarning[] {
  if (scale === null) return ['no-scale', 'tilt-not-corrected', 'lens-not-corrected'];
  const isByLength = scale.kind === 'length';
  const warnings: readonly (readonly [MeasurementWarning, boolean])[] = [
    ['tilt-not-corrected', isByLength],
    ['fall-off-not-counted', isByLength && scale.camera === null],
    ['lens-not-corrected', true],
    ['plane-offset-entered', scale.offsetMm > 0],
    ['beyond-scale-area', clicks.some((click) => isBeyondScale(scale, reading, click))],
  ];
  return warnings.filter(([, holds]) => holds).map(([warning]) => warning);
}
