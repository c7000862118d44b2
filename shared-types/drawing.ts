/**
 * A drawing: what both the screen and the page draw, in the coordinates of whatever it was made for.
 * markToDrawing makes one of a mark, in upright image pixels.
 * Strokes have round caps and round joins: a dash next to nothing long is a dot as wide as the line.
 * Text is set in Source Sans 3.
 */
export type DrawingPath = {
  readonly type: 'path';
  /** SVG path data. */
  readonly d: string;
  readonly stroke: string | null;
  readonly strokeWidth: number;
  /** Lengths, in the drawing's own units; empty for an unbroken line. */
  readonly dash: readonly number[];
  readonly fill: string | null;
  readonly opacity: number;
};

export type DrawingText = {
  readonly type: 'text';
  readonly text: string;
  /** Left end of the baseline. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: 400 | 600;
  readonly fill: string;
};

export type DrawingPrimitive = DrawingPath | DrawingText;
export type Drawing = readonly DrawingPrimitive[];
