/** A measurement on a photo as it is told: the value, how sure it is, what that stands on, and what was not corrected. */
import type { ScaleFault } from './photo-scale.ts';
import type { Unit } from './quantity.ts';

/** Clicks: those on what is measured. Scale: its own clicks and known lengths. */
export type UncertaintySource = 'clicks' | 'scale' | 'offset' | 'tilt';

/**
 * - no-scale: the value is in pixels, and says nothing in mm;
 * - tilt-not-corrected: the camera may not have been square to what is measured;
 * - fall-off-not-counted: nor is it counted that a leaning plane is seen smaller the further it is away, for the
 *   camera's distance was not entered;
 * - lens-not-corrected: said of every measurement;
 * - plane-offset-entered: what is measured is said to lie off the scale's plane;
 * - beyond-scale-area: a click lies outside of what the scale was clicked on;
 * - short-arc: the points of a circle cover less than a quarter of it;
 * - off-the-circle: they lie further off it than clicks explain; it is not round, or is seen at a slant.
 */
export type MeasurementWarning =
  | 'no-scale'
  | 'tilt-not-corrected'
  | 'fall-off-not-counted'
  | 'lens-not-corrected'
  | 'plane-offset-entered'
  | 'beyond-scale-area'
  | 'short-arc'
  | 'off-the-circle';

export type Measured = {
  readonly kind: 'measured';
  readonly value: number;
  readonly unit: Unit;
  /** In the value's unit. */
  readonly standardUncertainty: number;
  /** In the value's unit, with a coverage factor of 2. */
  readonly expanded: number;
  /** Each source's share of the variance; together 1. */
  readonly parts: Readonly<Record<UncertaintySource, number>>;
  readonly warnings: readonly MeasurementWarning[];
};

/**
 * Why nothing was measured: the scale (see ScaleFault), or
 * - click-uncertainty: not above 0;
 * - not-finite: a click's coordinate is no number;
 * - too-few-points: it takes more clicks;
 * - too-near: two clicks that span the quantity are less than a pixel apart;
 * - on-a-line: the points cannot be told from points on one line, and there is no circle and no area;
 * - outline-crosses: the outline crosses itself;
 * - beyond-horizon: a click lies where the scale's plane is never seen;
 * - unsteady: no circle fits the points, or the result cannot be followed as the clicks move.
 */
export type MeasurementFault =
  | 'click-uncertainty'
  | 'not-finite'
  | 'too-few-points'
  | 'too-near'
  | 'on-a-line'
  | 'outline-crosses'
  | 'beyond-horizon'
  | 'unsteady';

export type NotMeasured =
  | { readonly kind: 'refused'; readonly of: 'scale'; readonly because: ScaleFault }
  | { readonly kind: 'refused'; readonly of: 'clicks'; readonly because: MeasurementFault };

export type Measurement = Measured | NotMeasured;

export const notMeasured = (because: MeasurementFault): NotMeasured => ({
  kind: 'refused',
  of: 'clicks',
  because,
});
