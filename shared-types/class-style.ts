/**
 * How a class is told apart: letter, shape, line and colour, so that grey print and colour-blind eyes keep it.
 * Dash lengths are multiples of the line's width.
 */
import type { DamageClass } from './finding.ts';

export type LabelShape = 'square' | 'round' | 'diamond';

export type ClassStyle = {
  readonly letter: string;
  readonly shape: LabelShape;
  /** On a photo and on paper: always this, in both themes. Contrast with white text at least 4.5. */
  readonly colour: string;
  readonly dash: readonly number[];
};

export const classStyles: Readonly<Record<DamageClass, ClassStyle>> = {
  primary: { letter: 'P', shape: 'square', colour: '#b84700', dash: [] },
  secondary: { letter: 'S', shape: 'round', colour: '#0065a3', dash: [3.2, 2] },
  unrelated: { letter: 'U', shape: 'square', colour: '#5d6368', dash: [0.1, 2] },
  undecided: { letter: '?', shape: 'diamond', colour: '#8b3f79', dash: [4, 1.8, 0.1, 1.8] },
};

export const haloColour = '#ffffff';
