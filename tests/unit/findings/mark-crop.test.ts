/** The piece of a photo that shows a mark. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { markCrop } from '#analysis/findings/mark-crop.ts';

const image = { width: 4000, height: 3000 };

const anyCase = fc
  .record({
    width: fc.integer({ min: 20, max: 12_000 }),
    height: fc.integer({ min: 20, max: 12_000 }),
    corners: fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
    others: fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
    proportion: fc.double({ min: 0.3, max: 3, noNaN: true }),
  })
  .map(({ width, height, corners, others, proportion }) => ({
    image: { width, height },
    proportion,
    bounds: {
      left: Math.min(corners[0], others[0]) * width,
      right: Math.max(corners[0], others[0]) * width,
      top: Math.min(corners[1], others[1]) * height,
      bottom: Math.max(corners[1], others[1]) * height,
    },
  }));

/** Rounding of the arithmetic, in pixels. */
const hair = 1e-6;

describe('the crop round a mark', () => {
  test('is inside the picture, in its proportion', () => {
    fc.assert(
      fc.property(anyCase, ({ image: size, bounds, proportion }) => {
        const crop = markCrop(bounds, size, proportion);
        expect(crop.x).toBeGreaterThanOrEqual(0);
        expect(crop.y).toBeGreaterThanOrEqual(0);
        expect(crop.x + crop.width).toBeLessThanOrEqual(size.width + hair);
        expect(crop.y + crop.height).toBeLessThanOrEqual(size.height + hair);
        expect(crop.width / crop.height).toBeCloseTo(proportion, 6);
      }),
    );
  });

  test('holds the whole mark wherever the picture has room for it in that proportion', () => {
    fc.assert(
      fc.property(anyCase, ({ image: size, bounds, proportion }) => {
        const largest = Math.min(size.width, size.height * proportion);
        fc.pre(bounds.right - bounds.left <= largest);
        fc.pre(bounds.bottom - bounds.top <= largest / proportion);
        const crop = markCrop(bounds, size, proportion);
        expect(crop.x).toBeLessThanOrEqual(bounds.left + hair);
        expect(crop.y).toBeLessThanOrEqual(bounds.top + hair);
        expect(crop.x + crop.width).toBeGreaterThanOrEqual(bounds.right - hair);
        expect(crop.y + crop.height).toBeGreaterThanOrEqual(bounds.bottom - hair);
      }),
    );
  });

  test('has room on every side of a mark in the middle of the picture', () => {
    const bounds = { left: 1600, right: 2400, top: 1200, bottom: 1800 };
    const crop = markCrop(bounds, image, 4 / 3);
    for (const gap of [
      bounds.left - crop.x,
      crop.x + crop.width - bounds.right,
      bounds.top - crop.y,
      crop.y + crop.height - bounds.bottom,
    ]) {
      expect(gap).toBeGreaterThan(100);
    }
  });

  test('shows a mark that is next to nothing large with its surroundings', () => {
    const crop = markCrop({ left: 2000, right: 2004, top: 1500, bottom: 1503 }, image, 4 / 3);
    expect(crop.width).toBeGreaterThan(400);
    expect(crop.x + crop.width / 2).toBeCloseTo(2002, 6);
    expect(crop.y + crop.height / 2).toBeCloseTo(1501.5, 6);
  });

  test('stops at the edge of the picture', () => {
    const crop = markCrop({ left: 0, right: 50, top: 2990, bottom: 3000 }, image, 4 / 3);
    expect(crop.x).toBe(0);
    expect(crop.y + crop.height).toBeCloseTo(3000, 6);
  });
});
