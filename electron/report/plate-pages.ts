/**
 * The plates on their pages: at most one, two or four on each, in their order. The first ones stand below what goes
 * before them where there is room for all of them.
 */
import { plateGap, type PageGeometry } from '#analysis/report/page-geometry.ts';
import type { ReportModel } from '#analysis/report/report-model.ts';
import type { ReportPlate } from '#analysis/report/report-plates.ts';
import type { Content } from 'pdfmake';

import { setPlate, surelyHolds, type SetPlate } from './plate-layout.ts';
import { lineHeight, voices, type Typesetter } from './typesetting.ts';

/** One plate across the page, or two beside each other. */
type Row = { readonly plates: readonly SetPlate[]; readonly height: number };

export function platesContent(
  plates: ReportModel['plates'],
  page: PageGeometry,
  type: Typesetter,
): Content[] {
  if (plates.plates.length === 0) {
    return [type.heading(plates, lineHeight(voices.body)), type.text([[plates.none, voices.body]])];
  }
  const columns = plates.aPage === 4 ? 2 : 1;
  const columnWidth = (page.measure - (columns - 1) * plateGap) / columns;
  const rows = columns === 1 ? inOneColumn(plates.plates, page, type) : inTwo(plates.plates, page, type);
  const pages = packed(rows, plates.aPage, headingHeight, page);
  return pages.flatMap((onPage, index) => {
    const content = onPage.flatMap((row, place) => rowContent(row, columnWidth, place > 0));
    if (index === 0) return [type.heading(plates, heightOf(onPage)), ...content];
    return content.map((part, place): Content =>
      place === 0 ? ({ ...(part as object), pageBreak: 'before' } as Content) : part,
    );
  });
}

/** The section's heading with the air below it. */
const headingHeight = lineHeight(voices.heading) + 6;

function inOneColumn(plates: readonly ReportPlate[], page: PageGeometry, type: Typesetter): Row[] {
  return plates.map((plate) => alone(setPlate(plate, page.measure, page, type)));
}

/** Two beside each other; one whose words are too many for a column has the whole width. */
function inTwo(plates: readonly ReportPlate[], page: PageGeometry, type: Typesetter): Row[] {
  const width = (page.measure - plateGap) / 2;
  const rows: Row[] = [];
  let left: SetPlate | null = null;
  const flush = () => {
    if (left !== null) rows.push(alone(left));
    left = null;
  };
  for (const plate of plates) {
    const narrow = setPlate(plate, width, page, type);
    if (narrow.rest.length > 0) {
      flush();
      rows.push(alone(setPlate(plate, page.measure, page, type)));
    } else if (left === null) {
      left = narrow;
    } else {
      const first: SetPlate = left;
      rows.push({ plates: [first, narrow], height: Math.max(first.height, narrow.height) });
      left = null;
    }
  }
  flush();
  return rows;
}

const alone = (plate: SetPlate): Row => ({ plates: [plate], height: plate.height });

/** Rows on pages, in their order: as many as fit, and no more plates than asked for. */
function packed(rows: readonly Row[], most: number, onFirst: number, page: PageGeometry): Row[][] {
  const pages: Row[][] = [];
  let used = onFirst;
  let count = 0;
  for (const row of rows) {
    const last = pages.at(-1);
    const needed = last === undefined || last.length === 0 ? row.height : row.height + plateGap;
    const fits = used + needed <= surelyHolds(page) && count + row.plates.length <= most;
    // One that runs on to the next page ends its own.
    const isOpen = last?.at(-1)?.plates.every(({ rest }) => rest.length === 0) ?? true;
    if (last !== undefined && fits && isOpen) {
      last.push(row);
      used += needed;
      count += row.plates.length;
    } else {
      used = (pages.length === 0 ? onFirst : 0) + row.height;
      count = row.plates.length;
      pages.push([row]);
    }
  }
  return pages;
}

/** In points, with a line more: kerning may add one to what the metrics promise. */
function heightOf(rows: readonly Row[]): number {
  const gaps = (rows.length - 1) * plateGap;
  return rows.reduce((sum, { height }) => sum + height, gaps) + lineHeight(voices.small);
}

function rowContent({ plates }: Row, columnWidth: number, follows: boolean): Content[] {
  const [first] = plates;
  const margin: [number, number, number, number] = [0, follows ? plateGap : 0, 0, 0];
  if (first === undefined) return [];
  if (plates.length === 1) return [{ stack: first.kept, unbreakable: true, margin }, ...first.rest];
  return [
    {
      unbreakable: true,
      columnGap: plateGap,
      columns: plates.map(({ kept }) => ({ width: columnWidth, stack: kept })),
      margin,
    },
  ];
}
