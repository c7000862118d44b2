/** The font files the report embeds, each with the face it is. Licence texts (SIL OFL 1.1) lie beside them. */
import type { Face } from '#analysis/text/font-metrics.ts';

import { shippedPath } from '../processes/entry-table.ts';

export const fontFileNames: Readonly<Record<Face, string>> = {
  'sans-400': 'source-sans-3-400.ttf',
  'sans-600': 'source-sans-3-600.ttf',
  'sans-400-italic': 'source-sans-3-400-italic.ttf',
  'serif-400': 'source-serif-4-400.ttf',
  'serif-600': 'source-serif-4-600.ttf',
  'serif-400-italic': 'source-serif-4-400-italic.ttf',
};

/** Absolute path of a face's TrueType file. */
export function fontFile(face: Face): string {
  return shippedPath('electron', 'report', 'fonts', fontFileNames[face]);
}
