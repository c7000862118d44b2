/** Lengths, angles, diameters and areas on a photo, with what they stand on. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { imagePoint } from '#analysis/marks/planes.ts';
import { angleAt } from '#analysis/measure/angle-at.ts';
import { circleOnPhoto, diameterThrough } from '#analysis/measure/diameter-through.ts';
import { lengthBetween } from '#analysis/measure/length-between.ts';
import type { Basis } from '#analysis/measure/measure-quantity.ts';
import type { Measured, NotMeasured } from '#analysis/measure/measured.ts';
import { areaWithin } from '#analysis/measure/outline-area.ts';
import type { LengthScale, PhotoScale } from '#analysis/measure/photo-scale.ts';
import { readScale } from '#analysis/measure/scale-reading.ts';
import type { ImagePoint } from '#shared-types/points.ts';

import { aLengthScale, aRectangleScale, plate } from './some-scales.ts';

const on = (scale: PhotoScale | null): Basis => ({ clickUncertainty: 1.5, scale });
const bySquareCamera: LengthScale = { ...aLengthScale, greatestTilt: 0 };
const camera = { distanceMm: 400, middle: imagePoint(1200, 900) };

function measured<One extends Measured>(result: One | NotMeasured): One {
  if (result.kind === 'refused') throw new Error(`${result.of}: ${result.because}`);
  return result;
}

const faultOf = (result: Measured | NotMeasured) =>
  result.kind === 'refused' ? `${result.of} ${result.because}` : 'measured';

const a = imagePoint(300, 700);
const b = imagePoint(800, 700);
const c = imagePoint(300, 1000);

/** Where a place of the plate, in mm from its upper left corner, is seen. */
const onPlate = (x: number, y: number): ImagePoint => readScale(aRectangleScale)!.toPhoto({ x, y })!;

function round(x: number, y: number, radius: number, turns: readonly number[]): ImagePoint[] {
  return turns.map((turn) => {
    const angle = (turn * Math.PI) / 180;
    return imagePoint(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
  });
}

describe('a value', () => {
  test('is in mm, degrees and mm² by two clicks on a known length', () => {
    expect(measured(lengthBetween(a, b, on(aLengthScale)))).toMatchObject({ value: 50, unit: 'mm' });
    const angle = measured(angleAt(b, a, c, on(aLengthScale)));
    expect(angle.value).toBeCloseTo(90, 10);
    expect(angle.unit).toBe('deg');
    const area = measured(areaWithin([a, b, c], on(aLengthScale)));
    expect(area.value).toBeCloseTo(750, 8);
    expect(area.unit).toBe('mm2');
    const diameter = measured(
      diameterThrough(round(700, 600, 150, [0, 50, 130, 200, 300]), on(aLengthScale)),
    );
    expect(diameter.value).toBeCloseTo(30, 8);
    expect(diameter.unit).toBe('mm');
  });

  test('by a rectangle is true although the camera was tilted', () => {
    const basis = on(aRectangleScale);
    expect(measured(lengthBetween(plate[0], plate[2], basis)).value).toBeCloseTo(Math.hypot(100, 60), 8);
    expect(measured(angleAt(onPlate(20, 10), onPlate(50, 10), onPlate(80, 40), basis)).value).toBeCloseTo(
      135,
      8,
    );
    expect(measured(areaWithin([...plate], basis)).value).toBeCloseTo(6000, 6);
    const ring = [0, 70, 140, 210, 290].map((turn) => {
      const angle = (turn * Math.PI) / 180;
      return onPlate(40 + 15 * Math.cos(angle), 30 + 15 * Math.sin(angle));
    });
    const { value, circle } = measured(diameterThrough(ring, basis));
    expect(value).toBeCloseTo(30, 7);
    expect(circle.centre.x).toBeCloseTo(40, 7);
    // It is drawn where it is seen: through the clicks, by polygon sides of 5 degrees.
    const drawn = circleOnPhoto(circle, basis)!;
    expect(Math.hypot(drawn[0]!.x - ring[0]!.x, drawn[0]!.y - ring[0]!.y)).toBeLessThan(1e-5);
    expect(drawn).toHaveLength(72);
  });

  test('is in pixels without a scale, and says nothing in mm', () => {
    const length = measured(lengthBetween(a, b, on(null)));
    expect(length).toMatchObject({ value: 500, unit: 'px' });
    expect(length.warnings).toEqual(['no-scale', 'tilt-not-corrected', 'lens-not-corrected']);
    // Two coordinates along the length, of 1.5 pixels each; those across it do nothing.
    expect(length.standardUncertainty).toBeCloseTo(1.5 * Math.SQRT2, 6);
    expect(length.expanded).toBeCloseTo(3 * Math.SQRT2, 6);
    expect(length.parts).toEqual({ clicks: 1, scale: 0, offset: 0, tilt: 0 });
    expect(measured(areaWithin([a, b, c], on(null))).unit).toBe('px2');
    expect(measured(angleAt(b, a, c, on(null))).unit).toBe('deg');
    expect(measured(diameterThrough([a, b, c], on(null))).unit).toBe('px');
  });

  test('is the same whichever corner of the rectangle was clicked first, and whichever way round', () => {
    const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(fc.nat(3), fc.boolean(), share, share, (start, turned, x, y) => {
        const order = [0, 1, 2, 3].map((step) => plate[(start + (turned ? 4 - step : step)) % 4]!);
        const [along, across] = aRectangleScale.sides;
        const scale: PhotoScale = {
          ...aRectangleScale,
          corners: order as unknown as typeof plate,
          sides: (start % 2 === 0) !== turned ? [along, across] : [across, along],
        };
        const [from, to] = [onPlate(2, 3), onPlate(10 + 85 * x, 10 + 45 * y)];
        const first = measured(lengthBetween(from, to, on(aRectangleScale)));
        const other = measured(lengthBetween(from, to, on(scale)));
        expect(other.value).toBeCloseTo(first.value, 7);
        expect(other.standardUncertainty).toBeCloseTo(first.standardUncertainty, 7);
      }),
      { numRuns: 40 },
    );
  });
});

describe('an uncertainty', () => {
  // (u_s/s)² = (u_L/L)² + (u_N/N)²: a scale's relative uncertainty from its length L and its N pixels.
  test('by two clicks is that of the clicks and of the scale, in quadrature', () => {
    const { value, standardUncertainty, expanded, parts } = measured(lengthBetween(a, b, on(bySquareCamera)));
    const clicks = 1.5 * Math.SQRT2 * 0.1;
    const scale = value * Math.hypot(0.05 / 100, (1.5 * Math.SQRT2) / 1000);
    expect(standardUncertainty).toBeCloseTo(Math.hypot(clicks, scale), 8);
    expect(expanded).toBeCloseTo(2 * standardUncertainty, 12);
    expect(parts.clicks).toBeCloseTo(clicks ** 2 / (clicks ** 2 + scale ** 2), 6);
    expect(parts.clicks + parts.scale).toBeCloseTo(1, 12);
  });

  // The variance of an outline's area, each coordinate moved by itself: u²/4 times the sum of its squared diagonals.
  test('of an area is that of its corners', () => {
    const { standardUncertainty } = measured(areaWithin([a, b, imagePoint(800, 1000), c], on(null)));
    const diagonal = Math.hypot(500, 300);
    expect(standardUncertainty).toBeCloseTo((1.5 / 2) * Math.sqrt(4 * diagonal ** 2), 4);
  });

  test('of an angle is there at a half turn too', () => {
    const [left, right] = [imagePoint(400, 500), imagePoint(1000, 500)];
    const straight = measured(angleAt(left, imagePoint(700, 500), right, on(null)));
    expect(straight.value).toBe(180);
    // Both ends at 300 pixels, and the vertex between them against both: u/300 · √(1 + 1 + 2²).
    expect(straight.standardUncertainty).toBeCloseTo(((1.5 / 300) * Math.sqrt(6) * 180) / Math.PI, 6);
  });

  test('of a diameter is less the more clicks there are, and more the shorter the arc', () => {
    const of = (turns: readonly number[]) =>
      measured(diameterThrough(round(900, 800, 300, turns), on(null))).standardUncertainty;
    const [three, twelve] = [of([0, 120, 240]), of(Array.from({ length: 12 }, (_, at) => at * 30))];
    // Evenly round: the radius is the mean of n distances, the diameter twice that: 2u/√n.
    expect(three).toBeCloseTo(3 / Math.sqrt(3), 5);
    expect(twelve).toBeCloseTo(3 / Math.sqrt(12), 5);
    expect(of([0, 30, 60])).toBeGreaterThan(5 * three);
  });

  // An offset dz at the distance Z scales by dz/Z: a length by as much, an area by twice, an angle not at all.
  test('has a plane offset that was entered as a term of its own', () => {
    const offset = (basis: Basis) => {
      const { value, standardUncertainty, parts, warnings } = measured(lengthBetween(a, b, basis));
      expect(warnings).toContain('plane-offset-entered');
      return (standardUncertainty * Math.sqrt(parts.offset)) / value;
    };
    const raised = { offsetMm: 2, camera };
    expect(offset(on({ ...bySquareCamera, ...raised }))).toBeCloseTo(2 / 400, 10);
    const basis = on({ ...aRectangleScale, ...raised });
    expect(offset(basis)).toBeCloseTo(2 / 400, 10);
    const area = measured(areaWithin([...plate], basis));
    expect((area.standardUncertainty * Math.sqrt(area.parts.offset)) / area.value).toBeCloseTo(4 / 400, 10);
    expect(measured(angleAt(b, a, c, basis)).parts.offset).toBe(0);
  });
});

describe('a tilt that was not corrected', () => {
  const tiltOf = ({ standardUncertainty, parts }: Measured) =>
    standardUncertainty * Math.sqrt(parts.tilt) * Math.sqrt(3);

  // Plain geometry, 1 - cos: 5 degrees 0.38 %, 10 degrees 1.52 %.
  test('counts as the foreshortening of a length along the scale', () => {
    const level = (greatestTilt: number) => {
      const result = measured(lengthBetween(a, b, on({ ...aLengthScale, greatestTilt })));
      return (tiltOf(result) / result.value) * 100;
    };
    expect(level(10)).toBeCloseTo(1.52, 2);
    expect(level(5)).toBeCloseTo(0.38, 2);
    expect(level(0)).toBe(0);
  });

  // Square to the scale, the slope can shorten either and not the other: 1/cos - 1.
  test('is larger for what lies across the scale', () => {
    const across = measured(lengthBetween(a, c, on(aLengthScale)));
    expect(tiltOf(across) / across.value).toBeCloseTo(1 / Math.cos(Math.PI / 18) - 1, 8);
  });

  // A right angle whose legs lie on either side of the slope is seen as twice the arc tangent of 1/cos: 0.87 degrees off.
  test('turns an angle', () => {
    const off = (2 * Math.atan(1 / Math.cos(Math.PI / 18)) * 180) / Math.PI - 90;
    expect(tiltOf(measured(angleAt(b, a, c, on(aLengthScale))))).toBeCloseTo(off, 1);
  });

  // At Z = 400 mm a length 60 mm further up a slope of 10 degrees is 60 · sin 10° = 10.4 mm, 2.6 %, further away.
  test('also counts what lies further up the slope, where the camera is known', () => {
    const far = [imagePoint(200, 1100), imagePoint(1200, 1100)] as const;
    const near = measured(lengthBetween(...far, on(aLengthScale)));
    expect(near.warnings).toContain('fall-off-not-counted');
    const known = measured(lengthBetween(...far, on({ ...aLengthScale, camera })));
    expect(known.warnings).not.toContain('fall-off-not-counted');
    expect(tiltOf(known) / known.value).toBeGreaterThan(0.026);
    expect(tiltOf(known) / known.value).toBeLessThan(0.04);
  });

  test('is warned of, and is none with a rectangle', () => {
    expect(measured(lengthBetween(a, b, on(aLengthScale))).warnings).toEqual([
      'tilt-not-corrected',
      'fall-off-not-counted',
      'lens-not-corrected',
    ]);
    const corrected = measured(lengthBetween(a, b, on(aRectangleScale)));
    expect(corrected.warnings).toEqual(['lens-not-corrected']);
    expect(corrected.parts.tilt).toBe(0);
  });
});

describe('a warning', () => {
  test('says that a click lies beyond what the scale was clicked on', () => {
    const far = onPlate(130, 30);
    expect(measured(lengthBetween(a, far, on(aRectangleScale))).warnings).toContain('beyond-scale-area');
  });

  test('says that a circle hangs on a short arc', () => {
    const warnings = (turns: readonly number[]) =>
      measured(diameterThrough(round(900, 800, 300, turns), on(null))).warnings;
    expect(warnings([0, 40, 89])).toContain('short-arc');
    expect(warnings([0, 40, 91])).not.toContain('short-arc');
    expect(warnings([330, 10, 60])).not.toContain('short-arc');
    expect(warnings([330, 10, 50])).toContain('short-arc');
  });

  test('says that points lie further off their circle than clicks explain', () => {
    const ring = round(900, 800, 300, [0, 60, 120, 180, 240, 300]);
    const pushed = (by: number) =>
      ring.map(({ x, y }, at) => imagePoint(x + (at % 2 === 0 ? by : -by) * Math.sign(x - 900), y));
    const warnings = (by: number) => measured(diameterThrough(pushed(by), on(null))).warnings;
    expect(warnings(1)).not.toContain('off-the-circle');
    expect(warnings(8)).toContain('off-the-circle');
  });
});

describe('nothing is measured', () => {
  test('on clicks that make no such thing', () => {
    const near = imagePoint(a.x + 0.9, a.y);
    expect(faultOf(lengthBetween(a, near, on(null)))).toBe('clicks too-near');
    expect(faultOf(lengthBetween(a, imagePoint(NaN, 3), on(null)))).toBe('clicks not-finite');
    expect(faultOf(angleAt(b, a, near, on(null)))).toBe('clicks too-near');
    expect(faultOf(areaWithin([a, b], on(null)))).toBe('clicks too-few-points');
    expect(faultOf(areaWithin([a, b, imagePoint(500, 701)], on(null)))).toBe('clicks on-a-line');
    expect(faultOf(areaWithin([a, imagePoint(800, 1000), b, c], on(null)))).toBe('clicks outline-crosses');
    expect(faultOf(diameterThrough([a, b], on(null)))).toBe('clicks too-few-points');
    expect(faultOf(diameterThrough([a, b, imagePoint(500, 701)], on(null)))).toBe('clicks on-a-line');
    expect(faultOf(lengthBetween(a, b, { clickUncertainty: 0, scale: null }))).toBe(
      'clicks click-uncertainty',
    );
  });

  test('by a scale that will not do, or where its plane is never seen', () => {
    const crossing = { ...aRectangleScale, corners: [plate[0], plate[2], plate[1], plate[3]] } as const;
    expect(faultOf(lengthBetween(a, b, on(crossing)))).toBe('scale crossing-order');
    // A plate whose long sides meet at (1200, -300): above that lies no plane.
    const slanting = {
      ...aRectangleScale,
      corners: [imagePoint(900, 300), imagePoint(1500, 300), imagePoint(1800, 900), imagePoint(600, 900)],
    } as const;
    expect(faultOf(lengthBetween(imagePoint(1200, -290), imagePoint(1200, 600), on(slanting)))).toBe(
      'measured',
    );
    expect(faultOf(lengthBetween(imagePoint(1200, -310), imagePoint(1200, 600), on(slanting)))).toBe(
      'clicks beyond-horizon',
    );
  });
});
