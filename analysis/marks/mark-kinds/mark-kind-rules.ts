/** What every kind of mark has to know of itself. */
import type { DrawingPath, DrawingPrimitive } from '#shared-types/drawing.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import type { LabelBox } from '../mark-label-drawing.ts';
import type { MarkLook } from '../mark-look.ts';
import type { Size } from '../planes.ts';

/** Names the ends of a line, the half axes and the turning of a ring, the corners of an outline. */
export type HandleName =
  'tip' | 'tail' | 'from' | 'to' | 'first-axis' | 'second-axis' | 'turn' | `corner-${number}`;
export type Handle = { readonly name: HandleName; readonly at: ImagePoint };

/** Edges in image pixels. */
export type Bounds = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

/** Where a mark is worked on. */
export type Ground = {
  readonly image: Size;
  /** Image pixels per CSS pixel. */
  readonly unit: number;
};

/** The mark without its label: what is painted white below everything, and what is painted on that. */
export type MarkBody = { readonly halo: readonly DrawingPath[]; readonly ink: readonly DrawingPrimitive[] };

/** Methods, not fields: the registry hands the rules of one kind out as rules of any. */
export type MarkKindRules<G extends MarkGeometry> = {
  body(geometry: G, look: MarkLook): MarkBody;
  /** Where the label stands that `look` names. */
  labelBox(geometry: G, look: MarkLook): LabelBox;
  /** The points by which the mark is reshaped, the one that matters most first. */
  handles(geometry: G, ground: Ground): readonly Handle[];
  /** The mark with one handle somewhere else; a name that it does not have changes nothing. */
  moveHandle(geometry: G, name: HandleName, to: ImagePoint, ground: Ground): G;
  /** The whole moved by image pixels. */
  movedBy(geometry: G, byX: number, byY: number): G;
  bounds(geometry: G): Bounds;
  /** Shortest distance in image pixels from a point to what is painted of the mark, its label left out. */
  distance(geometry: G, point: ImagePoint, look: MarkLook): number;
  /** Whether it is large enough to have been meant. `unit` is image pixels per CSS pixel. */
  isMeant(geometry: G, unit: number): boolean;
};
