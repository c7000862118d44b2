/** Lines of what something is, and its value. */
import type { PageGeometry } from '#analysis/report/page-geometry.ts';
import type { LabelledValue } from '#analysis/report/report-model.ts';
import type { Content } from 'pdfmake';

import { lineHeight, voices, type Typesetter } from './typesetting.ts';

const labelColumn = 150;

/** Least height of a line. */
export const lineOfBlock = lineHeight(voices.small) + 2;

export function labelledBlock(
  lines: readonly LabelledValue[],
  page: PageGeometry,
  type: Typesetter,
): Content {
  const width = page.measure - labelColumn;
  return {
    table: {
      widths: [labelColumn, width],
      dontBreakRows: lines.every(({ value }) => value.length <= 2_000),
      body: lines.map(({ label, value }) => [
        type.text([[label, voices.smallQuiet]]),
        type.text([[value, voices.small]], { width }),
      ]),
    },
    layout: 'block',
  };
}
