import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bringIntoSight,
  clampView,
  fitView,
  imagePoint,
  imageToPage,
  imageToScreen,
  pagePoint,
  pageToImage,
  screenPoint,
  screenToImage,
  withinImage,
  zoomAbout,
} from '#analysis/marks/planes.ts';

const coordinate = fc.double({ min: -20_000, max: 20_000, noNaN: true });
const size = fc.record({
  width: fc.integer({ min: 1, max: 12_000 }),
  height: fc.integer({ min: 1, max: 12_000 }),
});
const view = fc.record({
  scale: fc.double({ min: 0.01, max: 32, noNaN: true }),
  origin: fc.tuple(coordinate, coordinate).map(([x, y]) => screenPoint(x, y)),
});

describe('planes', () => {
  it('bring a point from picture to screen and back to where it was', () => {
    fc.assert(
      fc.property(view, coordinate, coordinate, (at, x, y) => {
        const back = screenToImage(at, imageToScreen(at, imagePoint(x, y)));
        expect(back.x).toBeCloseTo(x, 5);
        expect(back.y).toBeCloseTo(y, 5);
      }),
    );
  });

  it('bring a point from picture to page and back', () => {
    fc.assert(
      fc.property(view, coordinate, coordinate, (at, x, y) => {
        const plate = { scale: at.scale, origin: pagePoint(at.origin.x, at.origin.y) };
        const back = pageToImage(plate, imageToPage(plate, imagePoint(x, y)));
        expect(back.x).toBeCloseTo(x, 5);
        expect(back.y).toBeCloseTo(y, 5);
      }),
    );
  });

  it('put the image point (100, 50) at half size and origin (10, 20) on the screen point (60, 45)', () => {
    const at = imageToScreen({ scale: 0.5, origin: screenPoint(10, 20) }, imagePoint(100, 50));
    expect([at.x, at.y]).toEqual([60, 45]);
  });
});

describe('the view', () => {
  it('fits the whole picture into the middle of the well', () => {
    const fitted = fitView({ width: 4000, height: 3000 }, { width: 820, height: 800 }, 10);
    expect(fitted.scale).toBe(0.2);
    expect([fitted.origin.x, fitted.origin.y]).toEqual([10, 100]);
  });

  it('keeps under the pointer what was under it when zoomed', () => {
    fc.assert(
      fc.property(
        view,
        coordinate,
        coordinate,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        size,
        size,
        (at, x, y, factor, image, well) => {
          const pointer = screenPoint(x, y);
          const under = screenToImage(at, pointer);
          const after = imageToScreen(zoomAbout(at, pointer, factor, image, well), under);
          expect(after.x).toBeCloseTo(x, 4);
          expect(after.y).toBeCloseTo(y, 4);
        },
      ),
    );
  });

  it('never loses the picture: some of it stays in the well wherever it is dragged', () => {
    fc.assert(
      fc.property(view, size, size, (at, image, well) => {
        const held = clampView(at, image, well);
        const right = held.origin.x + image.width * held.scale;
        const bottom = held.origin.y + image.height * held.scale;
        expect(Math.min(right, well.width) - Math.max(held.origin.x, 0)).toBeGreaterThan(0);
        expect(Math.min(bottom, well.height) - Math.max(held.origin.y, 0)).toBeGreaterThan(0);
        expect(clampView(held, image, well).origin.x).toBeCloseTo(held.origin.x, 6);
      }),
    );
  });

  it('moves no further than it must to show a point', () => {
    const at = { scale: 1, origin: screenPoint(0, 0) };
    const well = { width: 500, height: 400 };
    expect(bringIntoSight(at, imagePoint(200, 200), well, 20)).toBe(at);
    const moved = bringIntoSight(at, imagePoint(600, 200), well, 20);
    expect([moved.origin.x, moved.origin.y]).toEqual([-120, 0]);
  });

  it('keeps a point of the picture in the picture', () => {
    const held = withinImage({ width: 100, height: 80 }, imagePoint(-5, 90));
    expect([held.x, held.y]).toEqual([0, 80]);
  });
});
