import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markToDrawing } from '#analysis/marks/mark-to-drawing.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { classStyles } from '#shared-types/class-style.ts';
import type { Drawing, DrawingPath, DrawingText } from '#shared-types/drawing.ts';
import { damageClasses, type DamageClass } from '#shared-types/finding.ts';
import type { ArrowGeometry } from '#shared-types/mark.ts';

const unit = 2.5;

function arrow(tailX: number, tailY: number, tipX: number, tipY: number): ArrowGeometry {
  return { kind: 'arrow', v: 1, tail: imagePoint(tailX, tailY), tip: imagePoint(tipX, tipY) };
}

function paths(drawing: Drawing): DrawingPath[] {
  return drawing.filter((primitive) => primitive.type === 'path');
}

function texts(drawing: Drawing): DrawingText[] {
  return drawing.filter((primitive) => primitive.type === 'text');
}

/** End points and control points of path data: a path lies inside their hull. */
function pointsOf(d: string): { x: number; y: number }[] {
  const numbers = [...d.matchAll(/-?\d+(?:\.\d+)?/g)].map((match) => Number(match[0]));
  return Array.from({ length: numbers.length / 2 }, (_, at) => ({
    x: numbers[2 * at] ?? NaN,
    y: numbers[2 * at + 1] ?? NaN,
  }));
}

/** How far, along the arrow's direction, each path is painted past the tip; strokes reach half their width further. */
function paintedPastTip(geometry: ArrowGeometry, path: DrawingPath): number {
  const { tail, tip } = geometry;
  const length = Math.hypot(tip.x - tail.x, tip.y - tail.y);
  const along = pointsOf(path.d).map(
    (point) => ((point.x - tip.x) * (tip.x - tail.x) + (point.y - tip.y) * (tip.y - tail.y)) / length,
  );
  return Math.max(...along) + (path.stroke === null ? 0 : path.strokeWidth / 2);
}

function isWhite(path: DrawingPath): boolean {
  return (path.stroke ?? path.fill) === '#ffffff';
}

const coordinate = fc.double({ min: 0, max: 6000, noNaN: true });
const anyArrow = fc
  .tuple(coordinate, coordinate, coordinate, coordinate)
  .filter(([a, b, c, d]) => Math.hypot(c - a, d - b) > 1)
  .map(([a, b, c, d]) => arrow(a, b, c, d));
const anyUnit = fc.double({ min: 0.05, max: 12, noNaN: true });

describe('the tip of an arrow', () => {
  it('is the furthest point painted in the colour of the class, for any arrow at any size', () => {
    fc.assert(
      fc.property(anyArrow, anyUnit, fc.constantFrom(...damageClasses), (geometry, size, damageClass) => {
        const drawing = markToDrawing(geometry, { class: damageClass, label: '', unit: size });
        const coloured = paths(drawing).filter((path) => !isWhite(path));
        const furthest = Math.max(...coloured.map((path) => paintedPastTip(geometry, path)));
        expect(Math.abs(furthest)).toBeLessThan(0.01);
      }),
    );
  });

  it('has no more than half a line of white past it', () => {
    fc.assert(
      fc.property(anyArrow, anyUnit, (geometry, size) => {
        const drawing = markToDrawing(geometry, { class: 'primary', label: '', unit: size });
        const line = paths(drawing).find((path) => path.stroke !== null && !isWhite(path));
        fc.pre(line !== undefined);
        const furthest = Math.max(...paths(drawing).map((path) => paintedPastTip(geometry, path)));
        expect(furthest).toBeLessThanOrEqual(line.strokeWidth / 2 + 0.01);
      }),
    );
  });

  it('is a corner of the head in exact image pixels', () => {
    const drawing = markToDrawing(arrow(400, 300, 1234.5, 987.25), { class: 'primary', label: '', unit });
    const head = paths(drawing).find((path) => path.fill === classStyles.primary.colour);
    expect(pointsOf(head?.d ?? '')[0]).toEqual({ x: 1234.5, y: 987.25 });
  });

  it('is drawn for an arrow without length too', () => {
    const drawing = markToDrawing(arrow(50, 60, 50, 60), { class: 'undecided', label: '? 1.1', unit: 1 });
    const head = paths(drawing).find((path) => path.fill === classStyles.undecided.colour);
    expect(pointsOf(head?.d ?? '')[0]).toEqual({ x: 50, y: 60 });
    expect(JSON.stringify(drawing)).not.toContain('NaN');
  });
});

describe('the class', () => {
  const shaftOf = (damageClass: DamageClass) =>
    paths(markToDrawing(arrow(100, 100, 500, 500), { class: damageClass, label: 'x', unit })).find(
      (path) => path.stroke === classStyles[damageClass].colour,
    );

  it('is told by the line: each class has a dash of its own, in multiples of the line width', () => {
    const width = shaftOf('primary')?.strokeWidth ?? NaN;
    expect(width).toBeCloseTo(2.4 * unit);
    expect(shaftOf('primary')?.dash).toEqual([]);
    const inWidths = (damageClass: DamageClass) =>
      shaftOf(damageClass)?.dash.map((part) => Math.round((part / width) * 1e6) / 1e6);
    expect(inWidths('secondary')).toEqual([3.2, 2]);
    expect(inWidths('unrelated')).toEqual([0.1, 2]);
    expect(shaftOf('undecided')?.dash).toHaveLength(4);
    expect(new Set(damageClasses.map((each) => JSON.stringify(shaftOf(each)?.dash))).size).toBe(4);
  });

  it('lies on an unbroken white line that is wider than it', () => {
    for (const damageClass of damageClasses) {
      const drawing = paths(
        markToDrawing(arrow(100, 100, 500, 500), { class: damageClass, label: 'x', unit }),
      );
      const coloured = drawing.findIndex((path) => path.stroke === classStyles[damageClass].colour);
      const halo = drawing.findIndex((path) => path.stroke === '#ffffff');
      expect(halo).toBeGreaterThanOrEqual(0);
      expect(halo).toBeLessThan(coloured);
      expect(drawing[halo]?.dash).toEqual([]);
      expect(drawing[halo]?.d).toBe(drawing[coloured]?.d);
      expect(drawing[halo]?.strokeWidth).toBeGreaterThan(drawing[coloured]?.strokeWidth ?? Infinity);
    }
  });

  it('is told by the shape of the label: corners for square, curves for round, points for diamond', () => {
    const boxOf = (damageClass: DamageClass) =>
      paths(markToDrawing(arrow(100, 100, 500, 100), { class: damageClass, label: 'x', unit })).at(-1)?.d ??
      '';
    expect(boxOf('primary')).toContain('C');
    expect(boxOf('secondary')).toContain('C');
    expect(boxOf('primary')).not.toBe(boxOf('secondary'));
    expect(boxOf('unrelated')).toBe(boxOf('primary'));
    expect(boxOf('undecided')).not.toContain('C');
    const diamond = pointsOf(boxOf('undecided'));
    const leftmost = diamond.filter((point) => point.x === Math.min(...diamond.map((each) => each.x)));
    expect(leftmost).toHaveLength(1);
  });
});

describe('the label', () => {
  const labelled = (geometry: ArrowGeometry, label: string, within?: { width: number; height: number }) => {
    const drawing = markToDrawing(geometry, { class: 'primary', label, unit, ...(within && { within }) });
    const text = texts(drawing)[0];
    const box = pointsOf(paths(drawing).at(-1)?.d ?? '');
    const xs = box.map((point) => point.x);
    const ys = box.map((point) => point.y);
    return {
      text,
      left: Math.min(...xs),
      right: Math.max(...xs),
      top: Math.min(...ys),
      bottom: Math.max(...ys),
    };
  };

  it('carries the number as it was given, white, semibold', () => {
    const { text } = labelled(arrow(700, 100, 300, 600), 'P 7.1');
    expect(text?.text).toBe('P 7.1');
    expect(text?.fill).toBe('#ffffff');
    expect(text?.weight).toBe(600);
    expect(text?.size).toBeCloseTo(13 * unit);
  });

  it('holds its text, with as much room on the left as on the right', () => {
    for (const label of ['P 1.1', 'P 107.24']) {
      const box = labelled(arrow(700, 400, 300, 600), label);
      const padding = (box.text?.x ?? NaN) - box.left;
      expect(padding).toBeCloseTo(7 * unit, 2);
      expect(box.bottom - box.top).toBeCloseTo(20 * unit, 2);
    }
    // "P 1.1" in Source Sans 3 Semibold: P 582, space 200, 1 513, period 275 thousandths of an em, as fontkit reads the
    // advance widths from the font file.
    const box = labelled(arrow(700, 400, 300, 600), 'P 1.1');
    expect(box.right - box.left).toBeCloseTo(((582 + 200 + 2 * 513 + 275) / 1000) * 13 * unit + 14 * unit, 2);
  });

  it('touches the tail on the side away from the tip', () => {
    const below = labelled(arrow(500, 500, 500, 900), 'P 7.1');
    expect(below.bottom).toBeCloseTo(500, 2);
    expect((below.left + below.right) / 2).toBeCloseTo(500, 2);
    const right = labelled(arrow(500, 500, 900, 500), 'P 7.1');
    expect(right.right).toBeCloseTo(500, 2);
    expect((right.top + right.bottom) / 2).toBeCloseTo(500, 2);
  });

  it('stays inside the picture when its size is known', () => {
    fc.assert(
      fc.property(anyArrow, (geometry) => {
        const box = labelled(geometry, 'P 7.1', { width: 6000, height: 6000 });
        expect(box.left).toBeGreaterThanOrEqual(-0.01);
        expect(box.top).toBeGreaterThanOrEqual(-0.01);
        expect(box.right).toBeLessThanOrEqual(6000.01);
        expect(box.bottom).toBeLessThanOrEqual(6000.01);
      }),
    );
  });

  it('is left out where there is nothing to say', () => {
    const drawing = markToDrawing(arrow(100, 100, 500, 500), { class: 'primary', label: '', unit });
    expect(texts(drawing)).toEqual([]);
  });
});

describe('the size on screen and on paper', () => {
  it('follows the point alone: twice the pixels a point, twice the width, the tip where it was', () => {
    const geometry = arrow(100, 100, 900, 400);
    const small = paths(markToDrawing(geometry, { class: 'primary', label: '', unit: 1 }));
    const large = paths(markToDrawing(geometry, { class: 'primary', label: '', unit: 2 }));
    const width = (drawing: DrawingPath[]) =>
      drawing.find((path) => path.stroke === classStyles.primary.colour)?.strokeWidth ?? NaN;
    expect(width(large)).toBeCloseTo(2 * width(small));
    for (const drawing of [small, large]) {
      const head = drawing.find((path) => path.fill === classStyles.primary.colour);
      expect(pointsOf(head?.d ?? '')[0]).toEqual({ x: 900, y: 400 });
    }
  });
});
