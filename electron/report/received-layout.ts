/** Who instructed and pays, in which state the unit came in, and through whose hands. */
import type { PageGeometry } from '#analysis/report/page-geometry.ts';
import type { ReportModel } from '#analysis/report/report-model.ts';
import type { CustodyRow } from '#analysis/report/what-was-received.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Content, TableCell } from 'pdfmake/interfaces.js';

import { labelledBlock, lineOfBlock } from './labelled-block.ts';
import { twoLines } from './own-words-layout.ts';
import { captionOf, headHeight, rowAir, ruledTable, sharedWidth } from './ruled-table.ts';
import { lineHeight, voices, type Typesetter } from './typesetting.ts';

/** Inner widths in points; the reason takes what is left. */
const columns = { when: 70, item: 84, event: 50, from: 66, to: 66 } as const;
const columnCount = 6;
/** Characters of a cell that surely is not higher than a page. */
const mostInARowThatIsKeptWhole = 900;

export function instructionContent(
  instruction: ReportModel['instruction'],
  page: PageGeometry,
  type: Typesetter,
): Content[] {
  return [type.heading(instruction, 2 * lineOfBlock), labelledBlock(instruction.lines, page, type)];
}

export function receivedContent(
  received: ReportModel['received'],
  page: PageGeometry,
  type: Typesetter,
): Content[] {
  const state = received.state.trim() === '' ? received.stateNone : received.state;
  const { caption, none } = received.custody;
  const gap = 8;
  return [
    type.heading(received, twoLines),
    type.text([[state, voices.body]], {
      verbatim: true,
      width: page.measure,
      margin: [0, 0, 0, gap],
    }),
    ...(caption === null
      ? [type.text([[none, voices.body]])]
      : [
          captionOf(caption, headHeight + firstRow(received.rows, page, type), type),
          custodyTable(received.rows, page, type),
        ]),
  ];
}

function whyWidth(page: PageGeometry): number {
  const given = columns.when + columns.item + columns.event + columns.from + columns.to;
  return sharedWidth(page.measure, columnCount, given);
}

/** An estimate of the first row's height in points. */
function firstRow(rows: readonly CustodyRow[], page: PageGeometry, type: Typesetter): number {
  const [row] = rows;
  if (row === undefined) return 0;
  const high = (words: string, width: number) => type.heightOf([[words, voices.small]], width);
  const highest = Math.max(
    high(row.when, columns.when),
    high(row.item, columns.item),
    high(row.from, columns.from),
    high(row.to, columns.to),
    high(row.why, whyWidth(page)) + high(row.struck ?? '', whyWidth(page)),
  );
  return Math.min(highest + lineHeight(voices.small) + rowAir, page.textHeight / 2);
}

function custodyTable(rows: readonly CustodyRow[], page: PageGeometry, type: Typesetter): Content {
  const words = reportTexts.received.columns;
  const why = whyWidth(page);
  return ruledTable(
    {
      widths: [columns.when, columns.item, columns.event, columns.from, columns.to, why],
      heads: [words.when, words.item, words.event, words.from, words.to, words.why],
      rowsStayWhole: rows.every(
        (row) => row.why.length + (row.struck?.length ?? 0) <= mostInARowThatIsKeptWhole,
      ),
      rows: rows.map((row) => custodyRow(row, why, type)),
    },
    type,
  );
}

/** A struck entry is crossed out; by whom, when and why stands beside it. */
function custodyRow(row: CustodyRow, why: number, type: Typesetter): TableCell[] {
  const struck = row.struck !== null;
  const cell = (text: string, width: number) =>
    type.text([[text, voices.small]], { width, struck }) as TableCell;
  const reason = row.struck === null ? [] : [type.text([[row.struck, voices.small]], { width: why })];
  return [
    cell(row.when, columns.when),
    cell(row.item, columns.item),
    cell(row.event, columns.event),
    cell(row.from, columns.from),
    cell(row.to, columns.to),
    { stack: [cell(row.why, why) as Content, ...reason] },
  ];
}
