/** What a photo's pixels are in millimetres. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { imagePoint } from '#analysis/marks/planes.ts';
import type { FourCorners } from '#analysis/measure/corner-fault.ts';
import { scaleFault, type LengthScale, type RectangleScale } from '#analysis/measure/photo-scale.ts';
import { isBeyondScale } from '#analysis/measure/scale-area.ts';
import { scaleInputs } from '#analysis/measure/scale-inputs.ts';
import { readScale } from '#analysis/measure/scale-reading.ts';
import type { ImagePoint } from '#shared-types/points.ts';

import { aLengthScale, aRectangleScale, plate } from './some-scales.ts';

describe('a scale', () => {
  test('of two clicks has one factor for the whole picture', () => {
    const reading = readScale(aLengthScale)!;
    // 1000 pixels are 100 mm.
    expect(reading.toPlane(imagePoint(350, 120))).toEqual({ x: 35, y: 12 });
    expect(reading.toPhoto({ x: 35, y: 12 })).toEqual(imagePoint(350, 120));
  });

  test('of a rectangle brings its corners to their place, clockwise as they were clicked', () => {
    const reading = readScale(aRectangleScale)!;
    const places = aRectangleScale.corners.map((corner) => reading.toPlane(corner)!);
    for (const [at, [x, y]] of [
      [0, 0],
      [100, 0],
      [100, 60],
      [0, 60],
    ].entries()) {
      expect(places[at]!.x).toBeCloseTo(x!, 9);
      expect(places[at]!.y).toBeCloseTo(y!, 9);
    }
    const back = reading.toPhoto({ x: 100, y: 60 })!;
    expect(back.x).toBeCloseTo(plate[2].x, 8);
    expect(back.y).toBeCloseTo(plate[2].y, 8);
  });

  test('keeps which way round things lie, whichever way the corners were clicked', () => {
    const points = [imagePoint(600, 400), imagePoint(900, 420), imagePoint(700, 700)];
    fc.assert(
      fc.property(fc.nat(3), fc.boolean(), (start, turned) => {
        const reading = readScale(startedAt(start, turned))!;
        const [a, b, c] = points.map((one) => reading.toPlane(one)!) as [ImagePoint, ImagePoint, ImagePoint];
        expect((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)).toBeGreaterThan(0);
      }),
    );
  });

  test('has every coordinate and every known length as an input', () => {
    expect(scaleInputs(aLengthScale).map((one) => one.standardUncertainty)).toEqual([
      1.5, 1.5, 1.5, 1.5, 0.05,
    ]);
    expect(scaleInputs(aRectangleScale).map((one) => one.standardUncertainty)).toEqual([
      ...Array.from({ length: 8 }, () => 1.5),
      0.025,
      0.025,
    ]);
    const moved = scaleInputs(aRectangleScale).map((one) => one.moved(7) as RectangleScale);
    expect(moved[5]!.corners[2]).toEqual(imagePoint(plate[2].x, plate[2].y + 7));
    expect(moved[9]!.sides[1]).toEqual({ mm: 67, expandedMm: 0.05 });
  });

  test('reaches as far as it was clicked', () => {
    const isBeyond = (scale: LengthScale | RectangleScale, x: number, y: number) =>
      isBeyondScale(scale, readScale(scale)!, imagePoint(x, y));
    // Two clicks 1000 pixels apart at y = 500: a scale's length away from them at most.
    expect(isBeyond(aLengthScale, 600, 1499)).toBe(false);
    expect(isBeyond(aLengthScale, 600, 1501)).toBe(true);
    const onPlane = readScale(aRectangleScale)!.toPhoto;
    for (const [x, y, beyond] of [
      [50, 30, false],
      [109, 30, false],
      [111, 30, true],
      [-11, 30, true],
      [50, 69, false],
      [50, 71, true],
      [50, -11, true],
    ] as const) {
      const click = onPlane({ x, y })!;
      expect(isBeyond(aRectangleScale, click.x, click.y)).toBe(beyond);
    }
  });
});

/** The same plate, clicked from another corner on, or the other way round. */
function startedAt(start: number, turned: boolean): RectangleScale {
  const order = [0, 1, 2, 3].map((step) => (start + (turned ? 4 - step : step)) % 4);
  const [along, across] = aRectangleScale.sides;
  // From a corner the plate's longer side is next when start and sense agree.
  const longFirst = (start % 2 === 0) !== turned;
  return {
    ...aRectangleScale,
    corners: order.map((at) => plate[at]!) as unknown as FourCorners<ImagePoint>,
    sides: longFirst ? [along, across] : [across, along],
  };
}

describe('a scale that will not do', () => {
  const rectangle = (changes: Partial<RectangleScale>) => scaleFault({ ...aRectangleScale, ...changes });
  const length = (changes: Partial<LengthScale>) => scaleFault({ ...aLengthScale, ...changes });
  const camera = { distanceMm: 300, middle: imagePoint(1200, 900) };

  test('is refused for its clicks', () => {
    expect(scaleFault(aRectangleScale)).toBeNull();
    expect(scaleFault(aLengthScale)).toBeNull();
    const [a, b, c, d] = plate;
    expect(rectangle({ corners: [a, c, b, d] })).toBe('crossing-order');
    expect(rectangle({ corners: [a, b, b, d] })).toBe('too-small');
    expect(length({ ends: [a, imagePoint(a.x + 14.9, a.y)] })).toBe('too-small');
    expect(length({ ends: [a, imagePoint(NaN, a.y)] })).toBe('not-finite');
  });

  test('is refused for what was entered', () => {
    expect(length({ length: { mm: 0, expandedMm: 0.1 } })).toBe('known-length');
    expect(length({ length: { mm: 50, expandedMm: -0.1 } })).toBe('known-length');
    expect(
      rectangle({
        sides: [
          { mm: 100, expandedMm: 0 },
          { mm: NaN, expandedMm: 0 },
        ],
      }),
    ).toBe('known-length');
    expect(rectangle({ clickUncertainty: 0 })).toBe('click-uncertainty');
    expect(length({ greatestTilt: 45 })).toBeNull();
    expect(length({ greatestTilt: 45.1 })).toBe('tilt');
    expect(length({ greatestTilt: -1 })).toBe('tilt');
    expect(rectangle({ offsetMm: -1, camera })).toBe('plane-offset');
    expect(rectangle({ offsetMm: 1 })).toBe('camera-distance');
    expect(rectangle({ offsetMm: 1, camera })).toBeNull();
    expect(rectangle({ camera: { ...camera, distanceMm: 0 } })).toBe('camera-distance');
  });
});
