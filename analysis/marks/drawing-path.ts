/** Building blocks of a drawing: path data and the two ways a path is painted. */
import type { DrawingPath } from '#shared-types/drawing.ts';

export type PlanePoint = { readonly x: number; readonly y: number };

/** A thousandth of an image pixel is finer than any screen or printer, and keeps path data short. */
export function digits(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded);
}

export function pointDigits(point: PlanePoint): string {
  return `${digits(point.x)} ${digits(point.y)}`;
}

/** A closed polygon through the points. */
export function polygon(points: readonly PlanePoint[]): string {
  return `M${points.map(pointDigits).join('L')}Z`;
}

export function stroked(d: string, colour: string, width: number, dash: readonly number[]): DrawingPath {
  return { type: 'path', d, stroke: colour, strokeWidth: width, dash, fill: null, opacity: 1 };
}

export function filled(d: string, colour: string): DrawingPath {
  return { type: 'path', d, stroke: null, strokeWidth: 0, dash: [], fill: colour, opacity: 1 };
}

/** 4/3·(√2 − 1): a cubic curve with handles of this length over the radius is a quarter circle to 0.03 %. */
export const quarterCircle = (4 / 3) * (Math.SQRT2 - 1);

/** A rectangle with rounded corners; half width, half height and corner radius in image pixels. */
export function roundedBox(middle: PlanePoint, w: number, h: number, radius: number): string {
  const r = Math.min(radius, w, h);
  const bend = r * (1 - quarterCircle);
  const at = (dx: number, dy: number) => pointDigits({ x: middle.x + dx, y: middle.y + dy });
  return [
    `M${at(-w + r, -h)}`,
    `L${at(w - r, -h)}`,
    `C${at(w - bend, -h)} ${at(w, -h + bend)} ${at(w, -h + r)}`,
    `L${at(w, h - r)}`,
    `C${at(w, h - bend)} ${at(w - bend, h)} ${at(w - r, h)}`,
    `L${at(-w + r, h)}`,
    `C${at(-w + bend, h)} ${at(-w, h - bend)} ${at(-w, h - r)}`,
    `L${at(-w, -h + r)}`,
    `C${at(-w, -h + bend)} ${at(-w + bend, -h)} ${at(-w + r, -h)}`,
    'Z',
  ].join('');
}
