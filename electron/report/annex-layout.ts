/** The photo register and the contact sheet. */
import type { PageGeometry } from '#analysis/report/page-geometry.ts';
import type { RegisterRow, SheetPhoto } from '#analysis/report/photo-annexes.ts';
import type { ReportModel } from '#analysis/report/report-model.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Content, TableCell } from 'pdfmake/interfaces.js';

import { captionOf, headHeight, rowAir, ruledTable, sharedWidth } from './ruled-table.ts';
import { lineHeight, voices, type Typesetter } from './typesetting.ts';

/** Inner widths in points; file and time share what is left. A hash stands on two lines of 32 figures. */
const columns = { photo: 34, plate: 22, sha256: 120 } as const;
const columnCount = 5;
const figuresALine = 32;
const mostInARowThatIsKeptWhole = 900;

export function registerContent(
  register: NonNullable<ReportModel['register']>,
  page: PageGeometry,
  type: Typesetter,
): Content[] {
  const words = reportTexts.register.columns;
  const shared = sharedWidth(page.measure, columnCount, columns.photo + columns.plate + columns.sha256);
  const [file, taken] = [shared * 0.54, shared * 0.46];
  return [
    onItsOwnPage(type.heading(register, 'kept')),
    type.text([[register.lead, voices.body]], { margin: [0, 0, 0, 8], width: page.measure }),
    captionOf(register.caption, headHeight + 4 * lineHeight(voices.small) + rowAir, type),
    ruledTable(
      {
        widths: [columns.photo, columns.plate, file, taken, columns.sha256],
        heads: [words.photo, words.plate, words.file, words.taken, words.sha256],
        rowsStayWhole: register.rows.every((row) => (row.takenOut?.length ?? 0) <= mostInARowThatIsKeptWhole),
        rows: register.rows.map((row) => registerRow(row, { file, taken }, type)),
      },
      type,
    ),
  ];
}

/** An annex begins on a page of its own. */
function onItsOwnPage(heading: Content): Content {
  return { ...(heading as object), pageBreak: 'before' } as Content;
}

function registerRow(
  row: RegisterRow,
  { file, taken }: { file: number; taken: number },
  type: Typesetter,
): TableCell[] {
  const [name = '', ...facts] = row.file;
  const out = row.takenOut === null ? [] : [type.text([[row.takenOut, voices.small]], { width: file })];
  return [
    type.text([[row.photo, voices.small]]),
    type.text([[row.plate, voices.small, row.destination]]),
    {
      stack: [
        type.text([[name, voices.small]], { width: file }),
        ...facts.map((fact) => type.text([[fact, voices.smallQuiet]], { width: file })),
        ...out,
      ],
    },
    {
      stack: row.taken.map((words) => type.text([[words, voices.small]], { width: taken })),
    },
    type.text([[inLines(row.sha256), voices.tiny]]),
  ];
}

function inLines(hash: string): string {
  return `${hash.slice(0, figuresALine)}\n${hash.slice(figuresALine)}`;
}

const sheetColumns = 5;
const sheetGap = 10;
/** Height of a picture's place to its width. */
const shape = 3 / 4;

export function sheetContent(
  sheet: NonNullable<ReportModel['sheet']>,
  page: PageGeometry,
  type: Typesetter,
): Content[] {
  const width = (page.measure - (sheetColumns - 1) * sheetGap) / sheetColumns;
  const rows = Array.from({ length: Math.ceil(sheet.photos.length / sheetColumns) }, (_, row) =>
    sheet.photos.slice(row * sheetColumns, (row + 1) * sheetColumns),
  );
  return [
    onItsOwnPage(type.heading(sheet, 'kept')),
    type.text([[sheet.lead, voices.body]], { margin: [0, 0, 0, 8], width: page.measure }),
    ...rows.map((photos): Content => ({
      unbreakable: true,
      columnGap: sheetGap,
      columns: photos.map((photo) => sheetCell(photo, width, type)),
      margin: [0, 0, 0, 8],
    })),
    ...sheet.remarks.map((remark) =>
      type.text([[remark, voices.body]], { margin: [0, 4, 0, 0], width: page.measure }),
    ),
  ];
}

/** Its picture stands on the foot of its place, so that the numbers below are level. */
function sheetCell(
  { number, blobId, sourceName, origin, picture }: SheetPhoto,
  width: number,
  type: Typesetter,
) {
  const place = { width, height: width * shape };
  const scale = Math.min(place.width / picture.width, place.height / picture.height);
  const size = { width: picture.width * scale, height: picture.height * scale };
  const nameWidth = width - type.widthOf(`${number}\u00a0\u00a0`, voices.tinyStrong);
  return {
    width,
    stack: [
      {
        image: thumbnailName(blobId),
        ...size,
        margin: [(place.width - size.width) / 2, place.height - size.height, 0, 3] as [
          number,
          number,
          number,
          number,
        ],
      },
      {
        columns: [
          {
            width: width - nameWidth,
            stack: [type.text([[String(number), voices.tinyStrong]])],
          },
          {
            width: nameWidth,
            stack: [
              type.oneLine(sourceName, voices.tiny, nameWidth),
              ...(origin === null ? [] : [type.oneLine(origin, voices.tinyStrong, nameWidth)]),
            ],
          },
        ],
      },
    ],
  };
}

/** Under which name the layout knows a photo's picture in small. */
export function thumbnailName(blobId: string): string {
  return `thumbnail-${blobId}`;
}
