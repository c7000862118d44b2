/**
 * What pointer or keyboard are in the middle of on the photo. It is a draft: nothing of it is saved, and dropping it
 * leaves no trace.
 */
import type { MarkId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint, ScreenPoint } from '#shared-types/points.ts';
import { usualGreatestTilt } from '../../measure/photo-scale.ts';
import type { Reshape } from '../bench-deeds.ts';
import { markKinds } from '../mark-kinds/mark-kinds.ts';
import type { HandleName } from '../mark-kinds/mark-kind-rules.ts';
import { imagePoint, withinImage, type Size } from '../planes.ts';

export const tools = ['select', ...markKinds] as const;
export type Tool = (typeof tools)[number];
/** Drawn from one point to another. */
export type SpanTool = 'arrow' | 'ring' | 'line' | 'dimension' | 'scale';
/** Drawn corner by corner. */
export type CornersTool = 'outline' | 'rectangle';
export type Means = 'pointer' | 'keys';

/** What the arrow keys move of the chosen mark. */
export type Hold = 'whole' | HandleName;

export type PanGesture = {
  readonly gesture: 'pan';
  readonly begun: ScreenPoint;
  readonly at: ScreenPoint;
  readonly moved: boolean;
  /** What goes on when the picture lies where it should. */
  readonly under: Gesture | null;
};
/** A box that chooses what lies in it. */
export type FrameGesture = { readonly gesture: 'frame'; readonly from: ImagePoint; readonly to: ImagePoint };
export type SpanGesture = {
  readonly gesture: 'span';
  readonly tool: SpanTool;
  readonly from: ImagePoint;
  readonly to: ImagePoint;
  /** Shift is held: a ring is a circle. */
  readonly even: boolean;
  readonly by: Means;
};
/** An outline or a rectangle under way: its corners so far, and where the next would be. */
export type CornersGesture = {
  readonly gesture: 'corners';
  readonly tool: CornersTool;
  readonly corners: readonly ImagePoint[];
  readonly at: ImagePoint;
  readonly by: Means;
  /** The first corner is pressed again: letting go closes the outline. */
  readonly closing: boolean;
};
/** Pressed where words shall stand. */
export type PlaceGesture = { readonly gesture: 'place'; readonly at: ImagePoint };
/** The keyboard's cross before it has set its first point. */
export type CrossGesture = { readonly gesture: 'cross'; readonly tool: Tool; readonly at: ImagePoint };
export type ChangeGesture = {
  readonly gesture: 'change';
  readonly before: readonly Reshape[];
  readonly after: readonly Reshape[];
  readonly hold: Hold;
  /** Where the pointer took hold; null when the keyboard did. */
  readonly grip: {
    readonly from: ImagePoint;
    readonly on: ScreenPoint;
    readonly moved: boolean;
    readonly pressed: MarkId;
  } | null;
};
export type Gesture =
  PanGesture | FrameGesture | SpanGesture | CornersGesture | PlaceGesture | CrossGesture | ChangeGesture;

/** CSS pixels. */
export const reach = 9;
export const handleReach = 11;
/** CSS pixels the pointer has to travel before anything is moved. */
export const shortestDrag = 4;

/** Whether a gesture can go on under the tool that is chosen now. */
export function belongsTo(gesture: Gesture, tool: Tool): boolean {
  switch (gesture.gesture) {
    case 'pan':
      return gesture.under === null || belongsTo(gesture.under, tool);
    case 'frame':
    case 'change':
      return tool === 'select';
    case 'span':
    case 'cross':
    case 'corners':
      return gesture.tool === tool;
    case 'place':
      return tool === 'text';
  }
}

/** The mark that a span would be. A ring is drawn by the box round it, by keys from its centre to its rim. */
export function spanGeometry({ tool, from, to, even, by }: SpanGesture, image: Size): MarkGeometry {
  if (tool === 'arrow') return { kind: 'arrow', v: 1, tail: from, tip: to };
  if (tool === 'line') return { kind: 'line', v: 1, from, to };
  if (tool === 'dimension') return { kind: 'dimension', v: 1, from, to };
  if (tool === 'scale')
    return { kind: 'scale', v: 1, from, to, known: null, greatestTilt: usualGreatestTilt };
  const ring = { kind: 'ring', v: 1, rotation: 0 } as const;
  if (by === 'keys') {
    const radius = Math.hypot(to.x - from.x, to.y - from.y);
    return { ...ring, centre: from, radiusX: radius, radiusY: radius };
  }
  const end = even ? squareEnd(from, to, image) : to;
  return {
    ...ring,
    centre: imagePoint((from.x + end.x) / 2, (from.y + end.y) / 2),
    radiusX: Math.abs(end.x - from.x) / 2,
    radiusY: Math.abs(end.y - from.y) / 2,
  };
}

/** The far corner of a square box as large as the longer side of the one drawn, as far as the picture goes. */
function squareEnd(from: ImagePoint, to: ImagePoint, image: Size): ImagePoint {
  const [right, down] = [to.x >= from.x, to.y >= from.y];
  const room = Math.min(right ? image.width - from.x : from.x, down ? image.height - from.y : from.y);
  const side = Math.min(Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y)), room);
  return withinImage(image, imagePoint(from.x + (right ? side : -side), from.y + (down ? side : -side)));
}

/** The drafts to be painted: what is being drawn, and what is being changed as it would be. */
export function draftsOf(gesture: Gesture | null, image: Size): readonly MarkGeometry[] {
  switch (gesture?.gesture) {
    case 'span':
      return [spanGeometry(gesture, image)];
    case 'corners':
      return [{ kind: 'outline', v: 1, corners: [...gesture.corners, gesture.at] }];
    case 'pan':
      return draftsOf(gesture.under, image);
    case 'frame':
    case 'place':
    case 'cross':
    case 'change':
    case undefined:
      return [];
  }
}

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
