import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chosenUnderlay, markLabelBox, markToDrawing } from '#analysis/marks/mark-to-drawing.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { classStyles } from '#shared-types/class-style.ts';
import type { Drawing, DrawingPath } from '#shared-types/drawing.ts';
import { damageClasses } from '#shared-types/finding.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import { anyOfKind, image, kinds } from './any-mark.ts';
import { pointsAlong } from './path-data.ts';

const look = { class: 'secondary', label: '', unit: 2 } as const;
const { colour } = classStyles.secondary;

function paths(drawing: Drawing): DrawingPath[] {
  return drawing.filter((primitive) => primitive.type === 'path');
}

const inColour = (geometry: MarkGeometry) =>
  paths(markToDrawing(geometry, look)).filter((path) => path.stroke === colour);

describe('a ring', () => {
  // (x/a)² + (y/b)² = 1 in the ellipse's own axes; four cubic curves with handles of 4/3·(√2−1) of the radius are off by
  // no more than 0.0273 % of it (a known property of that approximation, from memory).
  it('is the ellipse that its geometry says, to three parts in ten thousand', () => {
    fc.assert(
      fc.property(anyOfKind.ring, (mark) => {
        if (mark.kind !== 'ring') throw new Error('a ring was asked for');
        // Coordinates are written to a thousandth of a pixel.
        const written = 0.002 / Math.min(mark.radiusX, mark.radiusY);
        const [cos, sin] = [Math.cos(mark.rotation), Math.sin(mark.rotation)];
        for (const point of pointsAlong(inColour(mark)[0]!.d)) {
          const [dx, dy] = [point.x - mark.centre.x, point.y - mark.centre.y];
          const r = Math.hypot((dx * cos + dy * sin) / mark.radiusX, (dy * cos - dx * sin) / mark.radiusY);
          expect(Math.abs(r - 1)).toBeLessThan(0.0003 + written);
        }
      }),
    );
  });

  it('turned clockwise as seen has its first half axis below the horizontal', () => {
    const ring = { kind: 'ring', v: 1, centre: imagePoint(500, 500), radiusX: 200, radiusY: 50 } as const;
    const [start] = pointsAlong(inColour({ ...ring, rotation: 0.3 })[0]!.d);
    expect(start!.x).toBeCloseTo(500 + 200 * Math.cos(0.3), 2);
    expect(start!.y).toBeCloseTo(500 + 200 * Math.sin(0.3), 2);
  });
});

describe('an outline', () => {
  it('goes through its corners in their order and closes', () => {
    fc.assert(
      fc.property(anyOfKind.outline, (mark) => {
        if (mark.kind !== 'outline') throw new Error('an outline was asked for');
        const { d } = inColour(mark)[0]!;
        const drawn = pointsAlong(d);
        expect(drawn).toHaveLength(mark.corners.length);
        for (const [index, corner] of mark.corners.entries()) {
          expect(drawn[index]!.x).toBeCloseTo(corner.x, 2);
          expect(drawn[index]!.y).toBeCloseTo(corner.y, 2);
        }
        expect(d.endsWith('Z')).toBe(true);
      }),
    );
  });
});

describe('a plain line', () => {
  const line: MarkGeometry = { kind: 'line', v: 1, from: imagePoint(100, 100), to: imagePoint(400, 500) };

  it('runs from end to end, with a tick square across each and no head', () => {
    const [stroke, ticks] = inColour(line);
    expect(pointsAlong(stroke!.d)).toEqual([line.from, line.to]);
    const [a, b, c, d] = pointsAlong(ticks!.d);
    for (const [one, other, end] of [
      [a!, b!, line.from],
      [c!, d!, line.to],
    ] as const) {
      expect((one.x + other.x) / 2).toBeCloseTo(end.x, 2);
      expect((one.y + other.y) / 2).toBeCloseTo(end.y, 2);
      // (300, 400) is the line's course.
      expect((other.x - one.x) * 300 + (other.y - one.y) * 400).toBeCloseTo(0, 0);
    }
    expect(ticks!.dash).toEqual([]);
    expect(paths(markToDrawing(line, look)).some((path) => path.fill === colour)).toBe(false);
  });
});

describe('words on the picture', () => {
  const text: MarkGeometry = { kind: 'text', v: 1, at: imagePoint(900, 700), words: 'scored here' };

  it('begin where they were put, in one line, in the colour of the class', () => {
    const [words] = markToDrawing(text, look).filter((primitive) => primitive.type === 'text');
    expect(words).toMatchObject({ text: 'scored here', x: 900, y: 700, weight: 600, fill: colour, size: 28 });
  });

  // Widths as in mark-at-point.test.ts, read from the font file by fontkit.
  it('are underlined as far as the font sets them, in the dash of the class', () => {
    const [underline] = inColour(text);
    const [from, to] = pointsAlong(underline!.d);
    const thousandths = 431 + 462 + 549 + 373 + 507 + 564 + 200 + 558 + 507 + 373 + 507;
    expect(from!.x).toBeCloseTo(900, 2);
    expect(to!.x - from!.x).toBeCloseTo((thousandths / 1000) * 28, 2);
    expect(underline!.dash).toHaveLength(classStyles.secondary.dash.length);
  });

  it('stay in the picture with their band, wherever they were put, as long as they are not wider than it', () => {
    fc.assert(
      fc.property(anyOfKind.text, (mark) => {
        const drawing = paths(markToDrawing(mark, { ...look, unit: 4, within: image }));
        for (const { x, y } of drawing.flatMap((path) => pointsAlong(path.d))) {
          expect(x).toBeGreaterThanOrEqual(-0.01);
          expect(y).toBeGreaterThanOrEqual(-0.01);
          expect(x).toBeLessThanOrEqual(image.width + 0.01);
          expect(y).toBeLessThanOrEqual(image.height + 0.01);
        }
      }),
    );
  });

  it('have their label before them, and over them where the picture begins', () => {
    const labelled = { ...look, label: 'S 3.1', within: image };
    const before = markLabelBox(text, labelled)!;
    expect(before.middle.x + before.halfWidth).toBeLessThanOrEqual(900);
    const edge = markLabelBox({ ...text, at: imagePoint(10, 700) }, labelled)!;
    expect(edge.middle.y).toBeLessThan(700 - 20);
    expect(edge.middle.x - edge.halfWidth).toBeGreaterThanOrEqual(0);
  });
});

describe.each(kinds)('a %s', (kind) => {
  it('has white on both sides of every line in colour, and never a broken number', () => {
    fc.assert(
      fc.property(anyOfKind[kind], fc.constantFrom(...damageClasses), (mark, damageClass) => {
        const drawing = markToDrawing(mark, { class: damageClass, label: 'x 1.1', unit: 2, within: image });
        expect(JSON.stringify(drawing)).not.toMatch(/NaN|Infinity|null,null/);
        const halo = drawing.findIndex(
          (each) => each.type === 'path' && (each.stroke ?? each.fill) === '#ffffff',
        );
        const ink = drawing.findIndex(
          (each) => each.type === 'path' && (each.stroke ?? each.fill) === classStyles[damageClass].colour,
        );
        expect(halo).toBeGreaterThanOrEqual(0);
        expect(ink).toBeGreaterThan(halo);
      }),
    );
  });

  it('keeps its label inside the picture, and off its own line where there is room', () => {
    fc.assert(
      fc.property(anyOfKind[kind], (mark) => {
        const box = markLabelBox(mark, { ...look, label: 'S 3.1', within: image })!;
        expect(box.middle.x - box.halfWidth).toBeGreaterThanOrEqual(-0.01);
        expect(box.middle.y - box.halfHeight).toBeGreaterThanOrEqual(-0.01);
        expect(box.middle.x + box.halfWidth).toBeLessThanOrEqual(image.width + 0.01);
        expect(box.middle.y + box.halfHeight).toBeLessThanOrEqual(image.height + 0.01);
      }),
    );
  });

  it('is shown to be chosen by wider lines under its own white, and by nothing over it', () => {
    fc.assert(
      fc.property(anyOfKind[kind], (mark) => {
        const drawing = markToDrawing(mark, { ...look, label: 'S 3.1' });
        const white = paths(drawing).filter((path) => (path.stroke ?? path.fill) === '#ffffff');
        const under = paths(chosenUnderlay(drawing, 2));
        expect(under).toHaveLength(2 * white.length);
        for (const path of under) {
          const own = white.find((each) => each.d === path.d)!;
          expect(path.strokeWidth).toBeGreaterThan(own.strokeWidth);
          expect(path.fill).toBeNull();
        }
      }),
    );
  });
});
