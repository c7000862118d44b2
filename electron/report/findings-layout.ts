/** The table of findings with its key, and what was written about each finding. */
import { destinations } from '#analysis/report/destinations.ts';
import type { FindingRow } from '#analysis/report/finding-rows.ts';
import type { PageGeometry } from '#analysis/report/page-geometry.ts';
import type { ReportModel } from '#analysis/report/report-model.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Content } from 'pdfmake';

import { captionOf, headHeight, rowAir } from './ruled-table.ts';
import { lineHeight, voices, type Typesetter } from './typesetting.ts';

/** Inner widths in points; the part and the finding share what is left of the measure. */
const columns = { number: 18, class: 26, presence: 58, extent: 50, plates: 82 } as const;
/** Padding of the seven columns together: 4 on either side, none before the first. */
const padding = 13 * 4;
const most = { platesInARowThatIsKeptWhole: 40, charactersInARowThatIsKeptWhole: 900 } as const;

export function findingsContent(
  findings: ReportModel['findings'],
  page: PageGeometry,
  type: Typesetter,
): Content[] {
  const [first] = findings.rows;
  if (first === undefined) {
    return [type.heading(findings, lineHeight(voices.body)), type.text([[findings.none, voices.body]])];
  }
  return [
    type.heading(findings, captionHeight + headHeight + rowHeight(first, page, type)),
    ...(findings.caption === null ? [] : [captionOf(findings.caption, 0, type)]),
    table(findings.rows, page, type),
    ...(findings.key === null
      ? []
      : [{ stack: [type.drawing(findings.key)], margin: [0, 6, 0, 0] } as Content]),
    ...(findings.remark === null
      ? []
      : [type.text([[findings.remark, voices.smallQuiet]], { margin: [0, 6, 0, 0] })]),
    ...notes(findings, page, type),
  ];
}

const captionHeight = lineHeight(voices.small) + 4;

/** An estimate, a line too high rather than too low. */
function rowHeight(row: FindingRow, page: PageGeometry, type: Typesetter): number {
  const shared = sharedWidth(page);
  const high = (words: string, width: number) => type.heightOf([[words, voices.small]], width);
  const cells = [
    high(row.part, shared),
    high(row.finding, shared),
    high(row.presence, columns.presence),
    high(row.extent, columns.extent),
    high(row.plates.join('\n'), columns.plates),
  ];
  return Math.min(Math.max(...cells) + lineHeight(voices.small) + rowAir, page.textHeight / 2);
}

/** Inner width in points of the two columns that share what the others leave. */
function sharedWidth(page: PageGeometry): number {
  const given = columns.number + columns.class + columns.presence + columns.extent + columns.plates;
  return (page.measure - given - padding) / 2;
}

function table(rows: readonly FindingRow[], page: PageGeometry, type: Typesetter): Content {
  const named = reportTexts.findings.columns;
  const shared = sharedWidth(page);
  const cell = (words: string) => type.text([[words, voices.small]]);
  const title = (words: string) => type.text([[words, voices.smallQuiet]]);
  return {
    table: {
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: rows.every(canBeKeptWhole),
      widths: [
        columns.number,
        columns.class,
        shared,
        shared,
        columns.presence,
        columns.extent,
        columns.plates,
      ],
      body: [
        [
          title(named.number),
          title(named.class),
          title(named.part),
          title(named.finding),
          title(named.presence),
          title(named.extent),
          title(named.plates),
        ],
        ...rows.map((row) => [
          type.text([[String(row.number), voices.small]], { destination: destinations.finding(row.number) }),
          row.chip === null ? cell(reportTexts.findings.noClass) : type.drawing(row.chip),
          cell(row.part),
          cell(row.finding),
          cell(row.presence),
          cell(row.extent),
          cell(row.plates.length === 0 ? reportTexts.findings.nowhere : row.plates.join('\n')),
        ]),
      ],
    },
    layout: 'findings',
  };
}

/** A row higher than a page cannot be kept on one. */
function canBeKeptWhole(row: FindingRow): boolean {
  return (
    row.plates.length <= most.platesInARowThatIsKeptWhole &&
    Math.max(row.part.length, row.finding.length) <= most.charactersInARowThatIsKeptWhole
  );
}

function notes(findings: ReportModel['findings'], page: PageGeometry, type: Typesetter): Content[] {
  if (findings.notes.length === 0) return [];
  return [
    type.subheading(findings.notesHeading, 2 * lineHeight(voices.body)),
    ...findings.notes.map((note) =>
      type.text(
        [
          [`${note.name} `, voices.strong],
          [note.words, voices.body],
        ],
        { margin: [0, 0, 0, 5], verbatim: true, width: page.measure },
      ),
    ),
  ];
}
