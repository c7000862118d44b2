import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boundsOf,
  distanceToMark,
  handlesOf,
  isMeant,
  moveHandle,
  moveMark,
  moveMarks,
  sameGeometry,
} from '#analysis/marks/mark-handles.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { markGeometrySchema, type MarkGeometry } from '#shared-types/mark.ts';
import { anyMark, anyOfKind, ground, image, kinds, pointInside } from './any-mark.ts';

const step = fc.double({ min: -9000, max: 9000, noNaN: true });
const look = { class: 'primary', label: '', unit: 1 } as const;

const arrow = { kind: 'arrow', v: 1, tail: imagePoint(100, 100), tip: imagePoint(400, 100) } as const;
const ring: MarkGeometry = {
  kind: 'ring',
  v: 1,
  centre: imagePoint(1000, 800),
  radiusX: 300,
  radiusY: 100,
  rotation: Math.PI / 2,
};

/** Every point that makes a mark what it is: of a ring its middle. */
function pointsOf(mark: MarkGeometry) {
  switch (mark.kind) {
    case 'arrow':
      return [mark.tail, mark.tip];
    case 'line':
    case 'dimension':
    case 'scale':
      return [mark.from, mark.to];
    case 'outline':
    case 'rectangle':
      return mark.corners;
    case 'ring':
      return [mark.centre];
    case 'text':
      return [mark.at];
  }
}

describe('taking hold of a mark', () => {
  it('moves one end and leaves the other', () => {
    const moved = moveHandle(arrow, 'tip', imagePoint(500, 200), ground);
    expect(moved).toEqual({ ...arrow, tip: { x: 500, y: 200 } });
    expect(handlesOf(moved, ground).map((handle) => handle.name)).toEqual(['tip', 'tail']);
  });

  it('never takes an end or a corner out of the picture', () => {
    expect(moveHandle(arrow, 'tail', imagePoint(-30, 9999), ground)).toEqual({
      ...arrow,
      tail: { x: 0, y: 3000 },
    });
  });

  it.each(['arrow', 'line', 'outline'] as const)('puts each handle of a %s where it is asked to', (kind) => {
    fc.assert(
      fc.property(anyOfKind[kind], pointInside, fc.nat(20), (mark, to, pick) => {
        const handles = handlesOf(mark, ground);
        const { name } = handles[pick % handles.length]!;
        const after = handlesOf(moveHandle(mark, name, to, ground), ground);
        expect(after.find((handle) => handle.name === name)?.at).toEqual(to);
        for (const other of handles.filter((handle) => handle.name !== name)) {
          expect(after.find((handle) => handle.name === other.name)?.at).toEqual(other.at);
        }
      }),
    );
  });

  it('changes one half axis of a ring and leaves the other, the middle and the turn', () => {
    // Turned by a quarter: its first half axis points down the picture.
    expect(moveHandle(ring, 'first-axis', imagePoint(1040, 1200), ground)).toEqual({ ...ring, radiusX: 400 });
    const narrower = moveHandle(ring, 'second-axis', imagePoint(950, 700), ground);
    expect(narrower).toMatchObject({ radiusX: 300, centre: ring.centre });
    expect(narrower).toHaveProperty('radiusY', expect.closeTo(50, 9));
  });

  it('turns a ring about its middle by the angle its handle is led through', () => {
    const upright = { ...ring, rotation: 0 };
    const from = handlesOf(upright, ground).find(({ name }) => name === 'turn')!.at;
    expect(from.x).toBeCloseTo(1000);
    expect(from.y).toBeLessThan(700);
    const turned = moveHandle(upright, 'turn', imagePoint(1500, 800), ground);
    expect(turned).toHaveProperty('rotation', expect.closeTo(Math.PI / 2, 9));
    expect(turned).toMatchObject({ radiusX: 300, radiusY: 100 });
  });

  it('leaves a ring wide enough to be taken hold of again, wherever its handles are led', () => {
    fc.assert(
      fc.property(
        anyOfKind.ring,
        fc.array(fc.tuple(fc.nat(2), pointInside), { maxLength: 6 }),
        (mark, pulls) => {
          let at = mark;
          for (const [pick, to] of pulls) {
            at = moveHandle(at, handlesOf(at, ground)[pick]!.name, to, ground);
          }
          expect(markGeometrySchema.safeParse(at).success).toBe(true);
          // Through the middle itself too: both radii stay as they were or at least 3 CSS pixels.
          const through = at.kind === 'ring' ? at : (ring as never);
          for (const name of ['first-axis', 'second-axis'] as const) {
            const flat = moveHandle(through, name, through.centre, ground);
            expect(markGeometrySchema.safeParse(flat).success).toBe(true);
          }
        },
      ),
    );
  });
});

describe.each(kinds)('moving a whole %s', (kind) => {
  it('never bends it and never takes it out of the picture', () => {
    fc.assert(
      fc.property(anyOfKind[kind], step, step, (mark, dx, dy) => {
        const moved = moveMark(mark, dx, dy, image);
        const [before, after] = [pointsOf(mark), pointsOf(moved)];
        const by = { x: after[0]!.x - before[0]!.x, y: after[0]!.y - before[0]!.y };
        for (const [index, point] of after.entries()) {
          expect(point.x - before[index]!.x).toBeCloseTo(by.x, 6);
          expect(point.y - before[index]!.y).toBeCloseTo(by.y, 6);
        }
        const was = boundsOf(mark);
        const bounds = boundsOf(moved);
        expect(bounds.left).toBeGreaterThanOrEqual(Math.min(0, was.left) - 1e-6);
        expect(bounds.top).toBeGreaterThanOrEqual(Math.min(0, was.top) - 1e-6);
        expect(bounds.right).toBeLessThanOrEqual(Math.max(image.width, was.right) + 1e-6);
        expect(bounds.bottom).toBeLessThanOrEqual(Math.max(image.height, was.bottom) + 1e-6);
      }),
    );
  });
});

describe('moving several', () => {
  it('keeps them where they are to each other, and all in the picture', () => {
    fc.assert(
      fc.property(fc.array(anyMark, { minLength: 1, maxLength: 6 }), step, step, (marks, dx, dy) => {
        const moved = moveMarks(marks, dx, dy, image);
        const shift = (index: number) => {
          const [before, after] = [pointsOf(marks[index]!)[0]!, pointsOf(moved[index]!)[0]!];
          return [after.x - before.x, after.y - before.y] as const;
        };
        const [x, y] = shift(0);
        for (const index of marks.keys()) {
          expect(shift(index)[0]).toBeCloseTo(x, 6);
          expect(shift(index)[1]).toBeCloseTo(y, 6);
        }
      }),
    );
  });

  it('moves by exactly what was asked where there is room', () => {
    expect(moveMark(arrow, 10, -20, image)).toEqual({
      ...arrow,
      tail: { x: 110, y: 80 },
      tip: { x: 410, y: 80 },
    });
  });
});

describe('bounds and distance', () => {
  it('measure the distance to a line, beside it and beyond its ends', () => {
    expect(distanceToMark(arrow, imagePoint(250, 130), look)).toBe(30);
    expect(distanceToMark(arrow, imagePoint(403, 104), look)).toBe(5);
    expect(distanceToMark(arrow, imagePoint(94, 92), look)).toBe(10);
    expect(distanceToMark(arrow, imagePoint(300, 100), look)).toBe(0);
  });

  // An ellipse is the set of (a cos t, b sin t), turned; its box is ±√(a²cos²φ + b²sin²φ), ±√(a²sin²φ + b²cos²φ).
  it('of a ring are those of the ellipse', () => {
    fc.assert(
      fc.property(anyOfKind.ring, fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (mark, t) => {
        if (mark.kind !== 'ring') throw new Error('a ring was asked for');
        const { centre, radiusX: a, radiusY: b, rotation } = mark;
        const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
        const at = imagePoint(
          centre.x + a * Math.cos(t) * cos - b * Math.sin(t) * sin,
          centre.y + a * Math.cos(t) * sin + b * Math.sin(t) * cos,
        );
        expect(distanceToMark(mark, at, look)).toBeLessThan(0.0011 * Math.max(a, b) + 1e-6);
        const bounds = boundsOf(mark);
        expect(bounds.right - centre.x).toBeCloseTo(Math.hypot(a * cos, b * sin), 6);
        expect(centre.x - bounds.left).toBeCloseTo(Math.hypot(a * cos, b * sin), 6);
        expect(bounds.bottom - centre.y).toBeCloseTo(Math.hypot(a * sin, b * cos), 6);
        expect(centre.y - bounds.top).toBeCloseTo(Math.hypot(a * sin, b * cos), 6);
      }),
    );
  });

  it('the middle of a ring and of an outline is ground, not mark', () => {
    expect(distanceToMark(ring, imagePoint(1000, 800), look)).toBeCloseTo(100, 0);
    const square = [
      [0, 0],
      [200, 0],
      [200, 200],
      [0, 200],
    ].map(([x, y]) => imagePoint(x!, y!));
    expect(distanceToMark({ kind: 'outline', v: 1, corners: square }, imagePoint(100, 100), look)).toBe(100);
    expect(distanceToMark({ kind: 'outline', v: 1, corners: square }, imagePoint(0, 90), look)).toBeCloseTo(
      0,
    );
  });
});

describe('what is too small to have been meant', () => {
  const at = imagePoint(500, 500);
  it('is refused for each kind that is drawn', () => {
    const near = imagePoint(500 + 4 * ground.unit, 500);
    expect(isMeant({ kind: 'arrow', v: 1, tail: at, tip: near }, ground.unit)).toBe(false);
    expect(isMeant({ kind: 'line', v: 1, from: at, to: near }, ground.unit)).toBe(false);
    expect(isMeant({ ...ring, radiusY: 2 * ground.unit }, ground.unit)).toBe(false);
    expect(isMeant({ kind: 'outline', v: 1, corners: [at, near] }, ground.unit)).toBe(false);
    expect(isMeant({ kind: 'outline', v: 1, corners: [at, near, at] }, ground.unit)).toBe(false);
    expect(isMeant({ kind: 'text', v: 1, at, words: '  ' }, ground.unit)).toBe(false);
    expect(isMeant(ring, ground.unit)).toBe(true);
  });
});

describe('the same geometry', () => {
  it('is told from any other', () => {
    fc.assert(
      fc.property(anyMark, (mark) => {
        expect(sameGeometry(mark, structuredClone(mark))).toBe(true);
        expect(sameGeometry(mark, moveMark(mark, 1, 1, { width: 9000, height: 9000 }))).toBe(false);
      }),
    );
  });
});
