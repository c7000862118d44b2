/** What the pointer or the keyboard is in the middle of doing in the well. It is a draft: nothing of it is saved. */
import { moveHandle, moveMark, sameGeometry, type HandleName } from '#analysis/marks/mark-handles.ts';
import { imagePoint, withinImage, type Size } from '#analysis/marks/planes.ts';
import type { MarkId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint, ScreenPoint } from '#shared-types/points.ts';

export const tools = ['select', 'arrow'] as const;
export type Tool = (typeof tools)[number];

/** What the arrow keys move of the chosen mark. */
export type Hold = 'whole' | HandleName;

export type Gesture =
  | { readonly kind: 'pan'; readonly begun: ScreenPoint; readonly at: ScreenPoint; readonly moved: boolean }
  | { readonly kind: 'draw'; readonly tail: ImagePoint; readonly tip: ImagePoint }
  | { readonly kind: 'cross'; readonly at: ImagePoint; readonly tail: ImagePoint | null }
  | {
      readonly kind: 'change';
      readonly id: MarkId;
      readonly before: MarkGeometry;
      readonly geometry: MarkGeometry;
      readonly hold: Hold;
      /** Where the pointer took hold; null when the keyboard did. */
      readonly from: ImagePoint | null;
    };

/** CSS pixels. */
export const reach = 9;
export const handleReach = 11;
const shortestArrow = 6;
const shortestPan = 4;

export function arrowOf(tail: ImagePoint, tip: ImagePoint): MarkGeometry {
  return { kind: 'arrow', v: 1, tail, tip };
}

/** Whether an arrow is long enough to have been meant. `unit` is image pixels per CSS pixel. */
export function isMeant(tail: ImagePoint, tip: ImagePoint, unit: number): boolean {
  return Math.hypot(tip.x - tail.x, tip.y - tail.y) >= shortestArrow * unit;
}

/** The gesture with the pointer at another place. */
export function draggedTo(gesture: Gesture, at: ImagePoint, on: ScreenPoint, image: Size): Gesture {
  switch (gesture.kind) {
    case 'pan': {
      const far = Math.hypot(on.x - gesture.begun.x, on.y - gesture.begun.y) >= shortestPan;
      return { ...gesture, at: on, moved: gesture.moved || far };
    }
    case 'draw':
      return { ...gesture, tip: withinImage(image, at) };
    case 'cross':
      return gesture;
    case 'change': {
      if (gesture.from === null) return gesture;
      const { before, hold, from } = gesture;
      return { ...gesture, geometry: changedBy(before, hold, at.x - from.x, at.y - from.y, image) };
    }
  }
}

/** A mark moved, or one end of it, by image pixels. */
export function changedBy(
  geometry: MarkGeometry,
  hold: Hold,
  byX: number,
  byY: number,
  image: Size,
): MarkGeometry {
  if (hold === 'whole') return moveMark(geometry, byX, byY, image);
  const from = geometry[hold];
  return moveHandle(geometry, hold, imagePoint(from.x + byX, from.y + byY), image);
}

export function changesMark(gesture: Gesture): gesture is Extract<Gesture, { kind: 'change' }> {
  return gesture.kind === 'change' && !sameGeometry(gesture.before, gesture.geometry);
}

export const nextHold: Readonly<Record<Hold, Hold>> = { whole: 'tip', tip: 'tail', tail: 'whole' };

const arrowKeys: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Which way an arrow key points, ten times as far with Shift; null for any other key. */
export function keyStep(key: string, shift: boolean): readonly [number, number] | null {
  const direction = arrowKeys[key];
  if (direction === undefined) return null;
  const length = shift ? 10 : 1;
  return [direction[0] * length, direction[1] * length];
}
