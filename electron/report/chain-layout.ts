/** The figure of cause and effect on the page: across the measure where it can be read so, else on a page turned for it. */
import {
  chainToDrawing,
  figureDrawing,
  type ChainFigure,
  type ChainNote,
} from '#analysis/chain/chain-to-drawing.ts';
import { drawingToSvg } from '#analysis/report/drawing-to-svg.ts';
import type { PageGeometry } from '#analysis/report/page-geometry.ts';
import type { ReportModel } from '#analysis/report/report-model.ts';
import { chainFigureTexts, chainReportTexts } from '#shared-types/texts/chain.ts';
import type { Content } from 'pdfmake';

import type { PrintableText } from './printable-text.ts';
import { lineHeight, voices, type Spoken, type Typesetter } from './typesetting.ts';

/** Smaller than this share of its size a figure gets a page of its own, turned. */
const readable = 0.6;
const gap = { aboveCaption: 6, aboveNotes: 4, betweenNotes: 18, betweenRows: 1.5 } as const;
const mostNotesInOneColumn = 6;
/** Of a list of reasons in two columns: fewer are not left below the figure. */
const fewestRows = 4;
/** Height in points that the heading takes at the head of a page, with the air round it. */
const headroom = 42;

/** The page lying on its side: what its head and foot and the figure have room for then. */
export function turnedPage(page: PageGeometry): PageGeometry {
  const { margins } = page;
  return {
    width: page.height,
    height: page.width,
    margins,
    measure: page.height - margins.left - margins.right,
    textHeight: page.width - margins.top - margins.bottom,
  };
}

export function chainContent(
  chain: ReportModel['chain'],
  page: PageGeometry,
  type: Typesetter,
  printable: PrintableText,
): Content[] {
  if (chain === null) return [];
  const { name, caption, content } = chain;
  // Set as it can be printed before it is laid out, so that every box is as large as what stands in it.
  const plain = (words: string) => printable.plain(words, 'sans-400');
  const figure = chainToDrawing({
    nodes: content.nodes.map((node) => ({ ...node, words: plain(node.words) })),
    links: content.links.map((link) => ({ ...link, reason: plain(link.reason) })),
  });

  const captionOf = (scale: number): Spoken[] => [
    [`${name} `, voices.smallStrong],
    [[caption, ...remarks(figure, scale)].join(' '), voices.small],
  ];
  const upright = fitted(figure, page, type, captionOf(1));
  const turned = fitted(figure, turnedPage(page), type, captionOf(1));
  const isTurned = upright < readable && turned > upright;
  const scale = isTurned ? turned : upright;
  const on = isTurned ? turnedPage(page) : page;
  const printed = { width: figure.width * scale, height: figure.height * scale };
  const set = {
    unbreakable: true,
    stack: [
      { svg: drawingToSvg(figureDrawing(figure), figure, printed, 'sans'), ...printed },
      type.text(captionOf(scale), { margin: [0, gap.aboveCaption, 0, 0], width: on.measure }),
    ],
  } satisfies Content;
  const captionHeight = gap.aboveCaption + type.heightOf(captionOf(scale), on.measure);
  const heading = type.heading(chain, printed.height + captionHeight);
  const left = on.textHeight - headroom - printed.height - captionHeight;
  const below = notes(figure, on, type, left);
  if (!isTurned) return [heading, set, ...below];
  return [
    { ...(heading as object), pageBreak: 'before', pageOrientation: 'landscape' } as Content,
    set,
    ...below,
    { text: '', fontSize: 1, pageBreak: 'before', pageOrientation: 'portrait' },
  ];
}

/** Share of its size at which the figure fits the page with its heading and caption; never more than 1. */
function fitted(
  figure: ChainFigure,
  page: PageGeometry,
  type: Typesetter,
  caption: readonly Spoken[],
): number {
  // Kerning may add a line to what the metrics promise.
  const captionHeight =
    gap.aboveCaption + type.heightOf(caption, page.measure) + 2 * lineHeight(voices.small);
  const room = page.textHeight - headroom - captionHeight;
  return Math.min(1, page.measure / figure.width, room / figure.height);
}

function remarks(figure: ChainFigure, scale: number): string[] {
  return [
    ...(figure.notes.length === 0 ? [] : [chainReportTexts.reasons]),
    ...(scale < readable ? [chainReportTexts.scaled(Math.floor(scale * 100))] : []),
  ];
}

/**
 * The reasons that do not stand on their links, in the size of the text whatever the figure's; many in two columns. They
 * begin on the next page rather than leave a line or two of many below the figure, where `left` points are left.
 */
function notes({ notes }: ChainFigure, page: PageGeometry, type: Typesetter, left: number): Content[] {
  const isLong = notes.length > mostNotesInOneColumn;
  const columns = isLong ? 2 : 1;
  const width = (page.measure - (columns - 1) * gap.betweenNotes) / columns;
  const set = ({ number, words }: ChainNote, index: number) =>
    type.text([[`${chainFigureTexts.note(number)} ${words}`, voices.small]], {
      margin: [0, index === 0 ? gap.aboveNotes : gap.betweenRows, 0, 0],
      width,
    });
  if (!isLong) return notes.map(set);
  // A row holds one of each half: what breaks to the next page breaks between rows.
  const half = Math.ceil(notes.length / 2);
  const rowsThatFit = Math.floor(left / (lineHeight(voices.small) + gap.betweenRows));
  const isTorn = rowsThatFit < Math.min(half, fewestRows);
  return notes.slice(0, half).map((note, index): Content => {
    const beside = notes[half + index];
    return {
      unbreakable: true,
      ...(isTorn && index === 0 ? { pageBreak: 'before' } : {}),
      columnGap: gap.betweenNotes,
      columns: [
        { width, stack: [set(note, index)] },
        { width, stack: beside === undefined ? [] : [set(beside, index)] },
      ],
    };
  });
}
