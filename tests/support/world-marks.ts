/** Marks of every kind, made of two points and a number: the same draw gives the same mark. */
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import { imagePointSchema } from '#shared-types/points.ts';

import { remarks } from './world-words.ts';

/** The kinds take turns as `turn` counts up; a ring lies in the box between the points and is never without width. */
export function geometryBetween(turn: number, from: ImagePoint, to: ImagePoint): MarkGeometry {
  switch (turn % 5) {
    case 0:
      return { kind: 'arrow', v: 1, tail: from, tip: to };
    case 1:
      return {
        kind: 'ring',
        v: 1,
        centre: point((from.x + to.x) / 2, (from.y + to.y) / 2),
        radiusX: Math.max(1, Math.abs(to.x - from.x) / 2),
        radiusY: Math.max(1, Math.abs(to.y - from.y) / 2),
        rotation: ((turn % 7) - 3) / 3,
      };
    case 2:
      return { kind: 'outline', v: 1, corners: [from, point(to.x, from.y), to, point(from.x, to.y)] };
    case 3:
      return { kind: 'line', v: 1, from, to };
    default:
      return { kind: 'text', v: 1, at: from, words: remarks[turn % remarks.length] ?? 'here' };
  }
}

function point(x: number, y: number): ImagePoint {
  return imagePointSchema.parse({ x, y });
}
