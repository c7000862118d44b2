/** What is measured: a number made of points in a plane, smooth in them so that it can be followed as they move. */
import type { PlanePoint } from '../marks/drawing-path.ts';

export type Unit = 'mm' | 'mm2' | 'deg' | 'px' | 'px2';

export type Quantity = {
  readonly unit: Unit;
  /** In image pixels, where the photo has no scale. */
  readonly unitWithoutScale: Unit;
  /** How it grows with the picture: 1 as a length, 2 as an area, 0 not at all. */
  readonly power: 0 | 1 | 2;
  /** Its sign says only which way round the points go. Null where the points make none. */
  readonly of: (points: readonly PlanePoint[]) => number | null;
  /** How far `one` is from `other`, with its sign. */
  readonly difference: (one: number, other: number) => number;
};

export const plainDifference = (one: number, other: number) => one - other;

/** Null where one of the points cannot be mapped. */
export function mapAll<From, To>(points: readonly From[], map: (point: From) => To | null): To[] | null {
  const mapped: To[] = [];
  for (const point of points) {
    const there = map(point);
    if (there === null) return null;
    mapped.push(there);
  }
  return mapped;
}
