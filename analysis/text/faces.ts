/** The faces text is set in, on screen and on paper: Source Sans 3 and Source Serif 4, weight, italic or upright. */
export const faces = [
  'sans-400',
  'sans-600',
  'sans-400-italic',
  'serif-400',
  'serif-600',
  'serif-400-italic',
] as const;
export type Face = (typeof faces)[number];
