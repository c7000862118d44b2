/** How a mark is shown: what its geometry does not say. */
import type { DamageClass } from '#shared-types/finding.ts';
import type { Size } from './planes.ts';

export type MarkLook = {
  readonly class: DamageClass;
  /** What stands in the label, "P 7.1" say; empty for no label. */
  readonly label: string;
  /** What is no damage (notes.ts): in plain ink, without the colour and the line of a class. */
  readonly note?: boolean;
  /** What was measured, "12.4 ± 0.3 mm" say: stands on marks that measure. */
  readonly reading?: string;
  /** Image pixels per drawing point: per CSS pixel on screen, per PDF point on paper. */
  readonly unit: number;
  /** Size of the picture in image pixels: where it is given label and words are kept inside it. */
  readonly within?: Size;
};

/** Of notes, lengths and scales: almost black, on the white band that all words stand on. */
export const noteColour = '#101112';
/** Width of a mark's line in drawing points. */
export const lineWidth = 2.4;
/** White on every side of the line, in drawing points. */
export const haloWidth = lineWidth / 2;
