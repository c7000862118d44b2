/**
 * The figure of a chain: one drawing for the screen, the printed page and an SVG. Units are points of the figure at its
 * full size. It reads in grey: kinds by shape and word, classes by letter and shape, how sure a link is by line and word.
 */
import { chainNodeKinds, type LinkCertainty } from '#shared-types/chain.ts';
import { classStyles } from '#shared-types/class-style.ts';
import type { Drawing, DrawingPrimitive, DrawingText } from '#shared-types/drawing.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { ChainLinkId, ChainNodeId } from '#shared-types/ids.ts';
import { chainFigureTexts } from '#shared-types/texts/chain.ts';
import { filled, pointDigits, polygon, stroked } from '../marks/drawing-path.ts';
import { labelBeside, labelDrawing, type LabelBox } from '../marks/mark-label-drawing.ts';
import type { SizedDrawing } from '../report/class-key.ts';
import { textWidth, type Face } from '../text/font-metrics.ts';
import { unwrapped, wrapWords, type WrappedWords } from '../text/wrap-words.ts';
import { boxOutline } from './box-outlines.ts';
import type { ChainContent, FigureLink, FigureNode } from './chain-content.ts';
import { layoutChain, type Box, type ChainGaps, type LaidLink, type Spot } from './chain-layout.ts';

export type DrawnNode = Box & { readonly id: ChainNodeId; readonly drawing: Drawing };
export type DrawnLink = {
  readonly id: ChainLinkId;
  readonly causeId: ChainNodeId;
  readonly effectId: ChainNodeId;
  /** Begins at the cause's edge, ends at the effect's. */
  readonly points: readonly Spot[];
  /** The line alone, for whoever draws something under it. */
  readonly line: string;
  readonly label: Box;
  readonly drawing: Drawing;
};

/** A reason that stands below the figure; links for the same reason share its number. */
export type ChainNote = { readonly number: number; readonly words: string };

export type ChainFigure = {
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly DrawnNode[];
  readonly links: readonly DrawnLink[];
  readonly notes: readonly ChainNote[];
};

const head = { size: 8, lead: 9.8, below: 2.4, chipGap: 5 } as const;
const words = { size: 9.5, lead: 11.8 } as const;
const label = { width: 66, size: 8, lead: 9.6, off: 3.2, mostLines: 3 } as const;
const note = { size: 8.5, lead: 11, number: 18, above: 14, least: 260, between: 2.5 } as const;
/**
 * How much stands in the figure itself, and how close: short reasons on their links; or, of a chain too wide for that,
 * numbers alone and boxes close together, which leaves its words as large as can be on the page.
 */
type Setting = {
  readonly box: number;
  readonly padding: { readonly side: number; readonly top: number; readonly foot: number };
  readonly gaps: ChainGaps;
  readonly reasons: 'short ones on their links' | 'all below';
};
const roomy: Setting = {
  box: 122,
  padding: { side: 8, top: 7, foot: 8 },
  gaps: { layers: 30, boxes: 14, lines: 9 },
  reasons: 'short ones on their links',
};
const terse: Setting = {
  box: 110,
  padding: { side: 6, top: 5, foot: 5 },
  gaps: { layers: 9, boxes: 7, lines: 7 },
  reasons: 'all below',
};
/** Points: what an A4 page on its side shows at six tenths of its size. */
const widestRoomy = 1_200;
/** Of the width: text set with kerning may be a little wider than the metrics say. */
const surelyFits = 0.97;
const ink = { text: '#1a1a1a', quiet: '#4a4a4a', line: '#2b2b2b' } as const;
/** Points of the figure per drawing point of a mark's label. */
const chipUnit = 0.6;
const arrow = { length: 7.5, half: 3.2 } as const;
const lineOf: Readonly<Record<LinkCertainty, { readonly width: number; readonly dash: readonly number[] }>> =
  {
    established: { width: 1.3, dash: [] },
    likely: { width: 1.3, dash: [4.5, 3.6] },
    possible: { width: 1.5, dash: [0.1, 3.6] },
  };

/**
 * Lays the chain out and draws it: the same for the same chain, whatever the order of its nodes and links. Throws a
 * RangeError for links that go round in a loop or name a node that is not there.
 */
export function chainToDrawing(content: ChainContent): ChainFigure {
  const figure = drawn(content, roomy);
  return figure.width <= widestRoomy ? figure : drawn(content, terse);
}

function drawn({ nodes, links }: ChainContent, setting: Setting): ChainFigure {
  const boxes = nodes.map((node) => ({ node, key: keyOf(node), said: saidIn(node, setting) }));
  boxes.sort((one, other) => (one.key < other.key ? -1 : 1));
  const place = new Map(boxes.map(({ node }, index) => [node.id, index]));
  const inOrder = [...links].sort(
    (one, other) =>
      (place.get(one.causeId) ?? 0) - (place.get(other.causeId) ?? 0) ||
      (place.get(one.effectId) ?? 0) - (place.get(other.effectId) ?? 0),
  );
  const numbers = new Map<string, number>();
  const numberOf = (words: string) => {
    const number = numbers.get(words) ?? numbers.size + 1;
    numbers.set(words, number);
    return number;
  };
  const labelled = inOrder.map((link) => {
    const said = linkLabel(link, setting, numberOf);
    const below = Math.max(1, said.lines.length - 1);
    return { link, lines: said.lines, width: said.width, height: 2 * (below * label.lead + label.off) };
  });
  const laid = layoutChain(
    boxes.map(({ node, key, said }) => ({ id: node.id, key, width: setting.box, height: said.height })),
    labelled.map(({ link, width, height }) => ({
      id: link.id,
      causeId: link.causeId,
      effectId: link.effectId,
      width,
      height,
    })),
    setting.gaps,
  );
  return {
    width: laid.width,
    height: laid.height,
    notes: [...numbers].map(([words, number]) => ({ number, words })),
    nodes: boxes.flatMap(({ node, said }) => {
      const box = laid.boxes.get(node.id);
      return box === undefined ? [] : [{ ...box, id: node.id, drawing: nodeDrawing(node, said, box) }];
    }),
    links: labelled.flatMap(({ link, lines }) => {
      const way = laid.links.get(link.id);
      return way === undefined ? [] : [drawnLink(link, lines, way)];
    }),
  };
}

/** By kind, then by number, then by words: ids decide only between boxes that say the same. */
function keyOf(node: FigureNode): string {
  const kind = chainNodeKinds.indexOf(node.kind);
  return [kind, String(node.number).padStart(6, '0'), node.words, node.id].join('\n');
}

type BoxWords = {
  readonly head: WrappedWords;
  /** Room that the letter of the class takes before the head. */
  readonly chip: number;
  readonly words: WrappedWords;
  readonly padding: Setting['padding'];
  readonly height: number;
};

function saidIn(node: FigureNode, { box, padding }: Setting): BoxWords {
  const room = box - 2 * padding.side;
  const chip = node.class === null ? 0 : chipAt({ x: 0, y: 0 }, node.class).halfWidth * 2 + head.chipGap;
  const headWords = wrapWords(node.head, (room - chip) * surelyFits, head.size, 'sans-400');
  const wrapped = wrapWords(node.words, room * surelyFits, words.size, faceOf(node));
  return {
    head: headWords,
    chip,
    words: wrapped,
    padding,
    height: padding.top + headHeight(headWords) + wrapped.lines.length * words.lead + padding.foot,
  };
}

function headHeight({ lines }: WrappedWords): number {
  return lines.length * head.lead + head.below;
}

function chipAt(left: Spot, damageClass: DamageClass): LabelBox {
  const { letter, shape } = classStyles[damageClass];
  return labelBeside(left, { x: -1, y: 0 }, letter, shape, chipUnit, undefined);
}

function faceOf(node: FigureNode): Face {
  return node.kind === 'root-cause' ? 'sans-600' : 'sans-400';
}

/** The figure without its notes: arrows below the boxes. */
export function figureDrawing(figure: ChainFigure): Drawing {
  return [...figure.links, ...figure.nodes].flatMap((part) => part.drawing);
}

/** The figure with its notes below it. */
export function figureWithNotes(figure: ChainFigure): SizedDrawing {
  const notes = notesDrawing(figure);
  return { width: notes.width, height: notes.height, drawing: [...figureDrawing(figure), ...notes.drawing] };
}

/** The notes alone, where they stand below the figure; the size is that of both together. */
export function notesDrawing(figure: ChainFigure): SizedDrawing {
  if (figure.notes.length === 0) return { width: figure.width, height: figure.height, drawing: [] };
  const width = Math.max(figure.width, note.least);
  const drawing: DrawingText[] = [];
  let y = figure.height + note.above;
  for (const { number, words: said } of figure.notes) {
    drawing.push(text(chainFigureTexts.note(number), 4, y, note.size, 400, ink.quiet));
    const wrapped = wrapWords(said, (width - note.number - 8) * surelyFits, note.size, 'sans-400');
    for (const line of wrapped.lines) {
      drawing.push(text(line.text, 4 + note.number, y, note.size, 400, ink.text));
      y += note.lead;
    }
    y += note.between;
  }
  return { width, height: y, drawing };
}

function nodeDrawing(node: FigureNode, said: BoxWords, box: Box): Drawing {
  const style = node.class === null ? null : classStyles[node.class];
  const { padding } = said;
  const left = box.x + padding.side;
  const headBase = box.y + padding.top + head.size;
  const drawing: DrawingPrimitive[] = [...boxOutline(node.kind, box, style?.colour ?? ink.line)];
  if (node.class !== null && style !== null) {
    const drawn = labelDrawing(chipAt({ x: left, y: headBase - head.size * 0.33 }, node.class), style);
    drawing.push(drawn.box, drawn.text);
  }
  said.head.lines.forEach((line, index) => {
    drawing.push(text(line.text, left + said.chip, headBase + index * head.lead, head.size, 400, ink.quiet));
  });
  said.words.lines.forEach((line, index) => {
    const y = box.y + padding.top + headHeight(said.head) + words.size + index * words.lead;
    drawing.push(text(line.text, left, y, words.size, node.kind === 'root-cause' ? 600 : 400, ink.text));
  });
  return drawing;
}

/**
 * How sure, which stands above the line, and the reason below it; or the number of the reason where it stands below
 * the figure, with how sure where only numbers stand on links.
 */
function linkLabel(link: FigureLink, { reasons }: Setting, numberOf: (words: string) => number) {
  const certainty = chainFigureTexts.certainties[link.certainty];
  const reason = link.reason.trim();
  const wrapped = wrapWords(reason, label.width * surelyFits, label.size, 'sans-400');
  const lines =
    reason === ''
      ? [certainty]
      : reasons === 'all below'
        ? [chainFigureTexts.note(numberOf(chainFigureTexts.surely(certainty, unwrapped(wrapped))))]
        : wrapped.lines.length <= label.mostLines
          ? [certainty, ...wrapped.lines.map((line) => line.text)]
          : [`${certainty} ${chainFigureTexts.note(numberOf(unwrapped(wrapped)))}`];
  return {
    lines,
    width: Math.max(...lines.map((line) => textWidth(line, label.size, 'sans-400'))) + 4,
  };
}

function drawnLink(link: FigureLink, lines: readonly string[], way: LaidLink): DrawnLink {
  const style = lineOf[link.certainty];
  const tip = way.points.at(-1) ?? { x: 0, y: 0 };
  const shaft = [...way.points.slice(0, -1), { x: tip.x - arrow.length + 1, y: tip.y }];
  const line = curveThrough(shaft);
  const back = tip.x - arrow.length;
  const headOfArrow = polygon([tip, { x: back, y: tip.y - arrow.half }, { x: back, y: tip.y + arrow.half }]);
  const { label: room } = way;
  const middle = room.x + room.width / 2;
  const onLine = room.y + room.height / 2;
  return {
    id: link.id,
    causeId: link.causeId,
    effectId: link.effectId,
    points: way.points,
    line,
    label: room,
    drawing: [
      stroked(line, ink.line, style.width, style.dash),
      filled(headOfArrow, ink.line),
      ...lines.map((said, index) => {
        const x = middle - textWidth(said, label.size, 'sans-400') / 2;
        const y =
          index === 0
            ? onLine - label.off
            : onLine + label.off + label.size * 0.72 + (index - 1) * label.lead;
        return text(said, x, y, label.size, 400, index === 0 ? ink.text : ink.quiet);
      }),
    ],
  };
}

/** Level at every point, so that a line leaves and meets boxes square and lies flat below its words. */
function curveThrough(points: readonly Spot[]): string {
  const [first, ...rest] = points;
  if (first === undefined) return '';
  let from = first;
  let d = `M${pointDigits(from)}`;
  for (const to of rest) {
    const half = (from.x + to.x) / 2;
    d +=
      Math.abs(from.y - to.y) < 0.01
        ? `L${pointDigits(to)}`
        : `C${pointDigits({ x: half, y: from.y })} ${pointDigits({ x: half, y: to.y })} ${pointDigits(to)}`;
    from = to;
  }
  return d;
}

function text(
  said: string,
  x: number,
  y: number,
  size: number,
  weight: 400 | 600,
  fill: string,
): DrawingText {
  return { type: 'text', text: said, x, y, size, weight, fill };
}
