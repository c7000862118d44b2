/** The whole report as a pdfmake document: sections in order, head and foot of every page. */
import { pageGeometry, type PageGeometry } from '#analysis/report/page-geometry.ts';
import type { ReportModel } from '#analysis/report/report-model.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Content } from 'pdfmake';
import type { TDocumentDefinitions } from 'pdfmake/interfaces.js';

import { registerContent, sheetContent } from './annex-layout.ts';
import { chainContent, turnedPage } from './chain-layout.ts';
import { findingsContent } from './findings-layout.ts';
import { labelledBlock } from './labelled-block.ts';
import { ownBlocks, ownSections, twoLines } from './own-words-layout.ts';
import { platesContent } from './plate-pages.ts';
import type { PrintableText } from './printable-text.ts';
import { instructionContent, receivedContent } from './received-layout.ts';
import { ink, lineHeight, typesetter, voices, type Margin, type Typesetter } from './typesetting.ts';

const claimIndent = 14;

/**
 * `images` holds a data URL for every name under which the layout asks for a picture. What the document says of itself
 * is set when it is finished; only its date is needed here, since the file's identifier is made of it.
 */
export function pageLayout(
  model: ReportModel,
  images: Readonly<Record<string, string>>,
  printable: PrintableText,
): TDocumentDefinitions {
  const page = pageGeometry(model.paper);
  const type = typesetter(printable);
  const body: Content[] = [
    type.text([[model.title, voices.title]], { margin: [0, 0, 0, 10], destination: 'title' }),
    labelledBlock(model.titleBlock, page, type),
    ...claim(model, page, type),
    ...instructionContent(model.instruction, page, type),
    ...receivedContent(model.received, page, type),
    ...ownSections(model.beforeFindings, page, type),
    ...findingsContent(model.findings, page, type),
    ...platesContent(model.plates, page, type),
    ...chainContent(model.chain, page, type, printable),
    ...ownSections(model.beforeAnswer, page, type),
    ...answer(model, page, type),
  ];
  const annexes: Content[] = [
    ...(model.register === null ? [] : registerContent(model.register, page, type)),
    ...(model.sheet === null ? [] : sheetContent(model.sheet, page, type)),
  ];
  const lying = ({ orientation }: { readonly orientation: string }) =>
    orientation === 'landscape' ? turnedPage(page) : page;
  // What stands between them is laid out last: only now is it known whether every character could be printed.
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
          type.heading(model.limits, 'kept'),
          type.text([[sentences.join(' '), voices.body]], { margin: [0, 0, 0, 5] }),
          type.text([[model.limits.handling, voices.body]]),
        ],
      },
      // Whoever signs, signs on the page that says what was signed.
      {
        unbreakable: true,
        stack: [
          type.heading(model.record, 'kept'),
          labelledBlock(model.record.lines, page, type),
          type.heading(model.signature, 'kept'),
          type.text([[model.signature.covers, voices.body]]),
          signature(model, page, type),
        ],
      },
      ...annexes,
    ],
    header: (_current, _count, size) => head(model, lying(size), type),
    footer: (current, count, size) => foot(model, lying(size), type, current, count),
    images: { ...images },
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

function claim(model: ReportModel, page: PageGeometry, type: Typesetter): Content[] {
  const { lead, words, none } = model.claim;
  const head = type.heading(model.claim, lineHeight(voices.smallQuiet) + twoLines);
  if (words.trim() === '') return [head, type.text([[none, voices.body]])];
  return [
    head,
    type.text([[lead, voices.smallQuiet]], { margin: [0, 0, 0, 3], width: page.measure }),
    type.text([[words, voices.claim]], {
      margin: [claimIndent, 0, claimIndent, 0],
      verbatim: true,
      width: page.measure - 2 * claimIndent,
    }),
  ];
}

/** What was concluded, in the analyst's words; before it what that says of the claim, after it what it does not say. */
function answer(model: ReportModel, page: PageGeometry, type: Typesetter): Content[] {
  const { outcome, conclusion, liability } = model.answer;
  return [
    type.heading(model.answer, lineHeight(voices.strong) + twoLines),
    type.text([[outcome, voices.strong]], { margin: [0, 0, 0, 5] }),
    ...ownBlocks(conclusion, page.measure, type),
    ...(liability === '' ? [] : [type.text([[liability, voices.body]], { margin: [0, 5, 0, 0] })]),
  ];
}

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
