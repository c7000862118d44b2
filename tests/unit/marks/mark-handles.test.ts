import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf, distanceToMark, handlesOf, moveHandle, moveMark } from '#analysis/marks/mark-handles.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';

const image = { width: 4000, height: 3000 };
const inside = fc
  .tuple(
    fc.double({ min: 0, max: image.width, noNaN: true }),
    fc.double({ min: 0, max: image.height, noNaN: true }),
  )
  .map(([x, y]) => imagePoint(x, y));
const anyMark = fc
  .tuple(inside, inside)
  .map(([tail, tip]): MarkGeometry => ({ kind: 'arrow', v: 1, tail, tip }));
const step = fc.double({ min: -9000, max: 9000, noNaN: true });

const arrow: MarkGeometry = { kind: 'arrow', v: 1, tail: imagePoint(100, 100), tip: imagePoint(400, 100) };

describe('taking hold of a mark', () => {
  it('moves one handle and leaves the other', () => {
    const moved = moveHandle(arrow, 'tip', imagePoint(500, 200), image);
    expect(moved.tip).toEqual({ x: 500, y: 200 });
    expect(moved.tail).toEqual(arrow.tail);
    expect(handlesOf(moved).map((handle) => handle.name)).toEqual(['tip', 'tail']);
  });

  it('never takes a handle out of the picture', () => {
    expect(moveHandle(arrow, 'tail', imagePoint(-30, 9999), image).tail).toEqual({ x: 0, y: 3000 });
  });

  it('moves the whole without bending it and without leaving the picture', () => {
    fc.assert(
      fc.property(anyMark, step, step, (mark, dx, dy) => {
        const moved = moveMark(mark, dx, dy, image);
        expect(moved.tip.x - moved.tail.x).toBeCloseTo(mark.tip.x - mark.tail.x, 6);
        expect(moved.tip.y - moved.tail.y).toBeCloseTo(mark.tip.y - mark.tail.y, 6);
        const bounds = boundsOf(moved);
        expect(bounds.left).toBeGreaterThanOrEqual(-1e-6);
        expect(bounds.top).toBeGreaterThanOrEqual(-1e-6);
        expect(bounds.right).toBeLessThanOrEqual(image.width + 1e-6);
        expect(bounds.bottom).toBeLessThanOrEqual(image.height + 1e-6);
      }),
    );
  });

  it('moves by exactly what was asked where there is room', () => {
    const moved = moveMark(arrow, 10, -20, image);
    expect([moved.tail, moved.tip]).toEqual([
      { x: 110, y: 80 },
      { x: 410, y: 80 },
    ]);
  });

  it('measures the distance to the line, beside it and beyond its ends', () => {
    expect(distanceToMark(arrow, imagePoint(250, 130))).toBe(30);
    expect(distanceToMark(arrow, imagePoint(403, 104))).toBe(5);
    expect(distanceToMark(arrow, imagePoint(94, 92))).toBe(10);
    expect(distanceToMark(arrow, imagePoint(300, 100))).toBe(0);
  });
});
