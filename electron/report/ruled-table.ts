/** A table with a caption above it, heads that are repeated on every page, and rows that stay whole where they can. */
import type { TableCaption } from '#analysis/report/report-model.ts';
import type { Content, ContentTable, TableCell } from 'pdfmake/interfaces.js';

import { lineHeight, voices, type Typesetter } from './typesetting.ts';

/** Points that a column's padding takes; see tableLayouts. */
const padding = 8;
const paddingOfFirst = 4;
/** Line and padding of a row together, rounded up. */
export const rowAir = 8;
export const headHeight = lineHeight(voices.smallQuiet) + rowAir;

/** What is left for the columns without a width of their own, together, in points. */
export function sharedWidth(measure: number, columns: number, given: number): number {
  return measure - given - columns * padding + paddingOfFirst;
}

/** `room`: height in points of what must stand below it on its page. */
export function captionOf(caption: TableCaption, room: number, type: Typesetter): Content {
  return type.text(
    [
      [`${caption.name} `, voices.smallStrong],
      [caption.words, voices.small],
    ],
    { margin: [0, 0, 0, 4], destination: caption.destination, room },
  );
}

/** `rowsStayWhole`: false where a row may be higher than a page. */
export function ruledTable(
  table: {
    readonly widths: readonly number[];
    readonly heads: readonly string[];
    readonly rows: readonly (readonly TableCell[])[];
    readonly rowsStayWhole: boolean;
  },
  type: Typesetter,
): ContentTable {
  return {
    table: {
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: table.rowsStayWhole,
      widths: [...table.widths],
      body: [
        table.heads.map((words) => type.text([[words, voices.smallQuiet]]) as TableCell),
        ...table.rows.map((row) => [...row]),
      ],
    },
    layout: 'findings',
  };
}
