/** The whole report as a pdfmake document: sections in order, head and foot of every page. */
import { pageGeometry, type PageGeometry } from '#analysis/report/page-geometry.ts';
import type { LabelledValue, ReportModel } from '#analysis/report/report-model.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Content, CustomTableLayout } from 'pdfmake';
import type { TDocumentDefinitions } from 'pdfmake/interfaces.js';

import { findingsContent } from './findings-layout.ts';
import { plateContent, plateHeight } from './plate-layout.ts';
import type { PrintableText } from './printable-text.ts';
import { ink, lineHeight, typesetter, voices, type Margin, type Typesetter } from './typesetting.ts';

const labelColumn = 150;
const claimIndent = 14;
/** Least height of a text below its heading, with the air before it. */
const twoLines = 2 * lineHeight(voices.body) + 3;

export const tableLayouts: Record<string, CustomTableLayout> = {
  legend: noLines(0, 1),
  block: noLines(0, 2),
  findings: {
    hLineWidth: (row) => (row === 0 ? 0 : 0.5),
    vLineWidth: () => 0,
    hLineColor: () => ink.tableRule,
    paddingLeft: (column) => (column === 0 ? 0 : 4),
    paddingRight: () => 4,
    paddingTop: () => 3.5,
    paddingBottom: () => 2.5,
  },
};

function noLines(paddingTop: number, paddingBottom: number): CustomTableLayout {
  return {
    hLineWidth: () => 0,
    vLineWidth: () => 0,
    paddingLeft: () => 0,
    paddingRight: () => 0,
    paddingTop: () => paddingTop,
    paddingBottom: () => paddingBottom,
  };
}

/**
 * `pictures` holds an absolute path for every blob the plates show. What the document says of itself is set when it
 * is finished; only its date is needed here, since the file's identifier is made of it.
 */
export function pageLayout(
  model: ReportModel,
  pictures: Readonly<Record<string, string>>,
  printable: PrintableText,
): TDocumentDefinitions {
  const page = pageGeometry(model.paper);
  const type = typesetter(printable);
  const body: Content[] = [
    type.text([[model.title, voices.title]], { margin: [0, 0, 0, 10] }),
    block(model.titleBlock, page, type),
    ...claim(model, page, type),
    ...answer(model, page, type),
    ...findingsContent(model.findings, page, type),
    ...plates(model, page, type),
  ];
  // What follows is laid out last: only now is it known whether every character could be printed.
  const sentences = [
    ...model.limits.sentences,
    ...(printable.replacedAny ? [reportTexts.limits.replacedCharacters] : []),
  ];
  return {
    pageSize: { width: page.width, height: page.height },
    pageMargins: [page.margins.left, page.margins.top, page.margins.right, page.margins.bottom],
    content: [
      ...body,
      {
        unbreakable: true,
        stack: [
          type.heading(model.limits.heading, 0),
          type.text([[sentences.join(' '), voices.body]]),
          signature(model, page, type),
        ],
      },
      {
        unbreakable: true,
        stack: [type.heading(model.record.heading, 0), block(model.record.lines, page, type)],
      },
    ],
    header: () => head(model, page, type),
    footer: (current, count) => foot(model, page, type, current, count),
    images: { ...pictures },
    defaultStyle: { font: 'sans', fontSize: voices.small.size, color: ink.text },
    language: model.properties.language,
    info: { creationDate: new Date(model.madeAt), modDate: new Date(model.madeAt) },
    version: '1.7',
    // Not by what follows on the page: pdfmake counts everything in an unbreakable block to page 1.
    pageBreakBefore: ({ headlineLevel, startPosition }) =>
      headlineLevel !== undefined &&
      headlineLevel > (1 - startPosition.verticalRatio) * startPosition.pageInnerHeight,
  };
}

function block(lines: readonly LabelledValue[], page: PageGeometry, type: Typesetter): Content {
  return {
    table: {
      widths: [labelColumn, page.measure - labelColumn],
      dontBreakRows: true,
      body: lines.map(({ label, value }) => [
        type.text([[label, voices.smallQuiet]]),
        type.text([[value, voices.small]]),
      ]),
    },
    layout: 'block',
  };
}

function claim(model: ReportModel, page: PageGeometry, type: Typesetter): Content[] {
  const head = type.heading(model.claim.heading, lineHeight(voices.smallQuiet) + twoLines);
  if (model.claim.words.trim() === '') return [head, type.text([[model.claim.none, voices.body]])];
  return [
    head,
    type.text([[model.claim.lead, voices.smallQuiet]], { margin: [0, 0, 0, 3] }),
    type.text([[model.claim.words, voices.claim]], {
      margin: [claimIndent, 0, claimIndent, 0],
      verbatim: true,
      width: page.measure - 2 * claimIndent,
    }),
  ];
}

function answer(model: ReportModel, page: PageGeometry, type: Typesetter): Content[] {
  const { outcome, conclusion } = model.answer;
  return [
    type.heading(model.answer.heading, lineHeight(voices.strong) + twoLines),
    type.text([[`${outcome}.`, voices.strong]], { margin: [0, 0, 0, 3] }),
    ...(conclusion.trim() === ''
      ? []
      : [type.text([[conclusion, voices.body]], { verbatim: true, width: page.measure })]),
  ];
}

function plates(model: ReportModel, page: PageGeometry, type: Typesetter): Content[] {
  const { heading, none, plates: all } = model.plates;
  const [first] = all;
  if (first === undefined) return [type.heading(heading, twoLines), type.text([[none, voices.body]])];
  return [
    type.heading(heading, plateHeight(first, page, type)),
    ...all.flatMap((plate) => plateContent(plate, page, type)),
  ];
}

/** Two lines to write on in ink, the analyst's name under the second. */
function signature(model: ReportModel, page: PageGeometry, type: Typesetter): Content {
  const between = 24;
  const width = (page.measure - between) / 2;
  const { name, qualification } = model.signature;
  return {
    margin: [0, 44, 0, 0],
    columnGap: between,
    columns: [
      { width, stack: [rule(width), under(reportTexts.signature.date)] },
      {
        width,
        stack: [
          rule(width),
          under(reportTexts.signature.signature),
          type.text([[name, voices.smallStrong]]),
          ...(qualification === '' ? [] : [type.text([[qualification, voices.small]])]),
        ],
      },
    ],
  };

  function under(words: string): Content {
    return type.text([[words, voices.smallQuiet]], { margin: [0, 3, 0, 0] });
  }
}

function head(model: ReportModel, page: PageGeometry, type: Typesetter): Content {
  return furniture(page, 48, [
    sides(model.running.report, model.running.unit, page, type),
    { ...rule(page.measure), margin: [0, 4, 0, 0] },
  ]);
}

function foot(
  model: ReportModel,
  page: PageGeometry,
  type: Typesetter,
  current: number,
  count: number,
): Content {
  return furniture(page, 16, [
    { ...rule(page.measure), margin: [0, 0, 0, 4] },
    sides(model.running.foot, reportTexts.pageOf(current, count), page, type),
  ]);
}

function furniture(page: PageGeometry, down: number, stack: Content[]): Content {
  const margin: Margin = [page.margins.left, down, page.margins.right, 0];
  return { stack, margin };
}

/** A fresh one each time: the layout writes into its nodes. */
function rule(width: number) {
  return {
    canvas: [
      {
        type: 'line' as const,
        x1: 0,
        y1: 0,
        x2: width,
        y2: 0,
        lineWidth: 0.5,
        lineColor: ink.rule,
      },
    ],
  };
}

function sides(left: string, right: string, page: PageGeometry, type: Typesetter): Content {
  const width = (page.measure - 16) / 2;
  return {
    columnGap: 16,
    columns: [
      { width, stack: [type.oneLine(left, voices.running, width)] },
      { width, stack: [type.oneLine(right, voices.running, width)], alignment: 'right' },
    ],
  };
}
