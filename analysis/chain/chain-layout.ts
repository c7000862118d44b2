/**
 * Where the boxes and arrows of a chain stand: causes on the left, effects to the right, laid out in layers by dagre
 * (Sugiyama's method). Pure, and the same for the same chain whatever the order in which it was drawn: boxes are taken
 * in the order of their keys. Sizes in points of the printed figure.
 */
import { Graph, layout } from './layered-graph.ts';

export type BoxSize = {
  readonly id: string;
  /** Boxes are laid out in the order of their keys; no two share one. */
  readonly key: string;
  readonly width: number;
  readonly height: number;
};

export type LinkSize = {
  readonly id: string;
  readonly causeId: string;
  readonly effectId: string;
  /** Of the words that stand on the link. */
  readonly width: number;
  readonly height: number;
};

export type Spot = { readonly x: number; readonly y: number };
export type Box = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

export type LaidLink = {
  /** From the right edge of the cause to the left edge of its effect, each further to the right than the one before. */
  readonly points: readonly Spot[];
  /** Room for the words: the line runs through its middle, level. */
  readonly label: Box;
};

export type ChainLayout = {
  readonly width: number;
  readonly height: number;
  readonly boxes: ReadonlyMap<string, Box>;
  readonly links: ReadonlyMap<string, LaidLink>;
};

/** Points between things. */
export type ChainGaps = {
  /** Half of the distance between two layers, beside what the words on their links take. */
  readonly layers: number;
  /** Between boxes above each other. */
  readonly boxes: number;
  /** Between lines beside each other. */
  readonly lines: number;
};
const gap = { alone: 28, edge: 4 } as const;
/** Points between two arrows at the same edge of a box, and what the corners of a box keep for themselves. */
const port = { step: 10, corner: 11 } as const;
/** Width over height of a sheet of boxes that no link holds together. */
const sheetShape = 1.6;

/** Links may name only boxes that are there, and no loop; otherwise a RangeError. */
export function layoutChain(
  boxes: readonly BoxSize[],
  links: readonly LinkSize[],
  gaps: ChainGaps,
): ChainLayout {
  const ordered = [...boxes].sort((one, other) => compared(one.key, other.key));
  const place = new Map(ordered.map((box, index) => [box.id, index]));
  const placeOf = (id: string) => {
    const index = place.get(id);
    if (index === undefined) throw new RangeError(`a link names ${id}, which has no box`);
    return index;
  };
  const sorted = [...links].sort(
    (one, other) =>
      placeOf(one.causeId) - placeOf(other.causeId) || placeOf(one.effectId) - placeOf(other.effectId),
  );
  const linked = new Set(sorted.flatMap((link) => [link.causeId, link.effectId]));
  const layered = layers(
    ordered.filter((box) => linked.has(box.id)),
    sorted,
    gaps,
  );
  return withLoneBoxes(
    layered,
    ordered.filter((box) => !linked.has(box.id)),
    gaps.boxes,
  );
}

function compared(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

function layers(boxes: readonly BoxSize[], links: readonly LinkSize[], gaps: ChainGaps): ChainLayout {
  if (boxes.length === 0) return { width: 0, height: 0, boxes: new Map(), links: new Map() };
  const graph = new Graph({ directed: true, multigraph: true });
  graph.setGraph({
    rankdir: 'LR',
    nodesep: gaps.boxes,
    edgesep: gaps.lines,
    ranksep: gaps.layers,
    marginx: gap.edge,
    marginy: gap.edge,
  });
  const nameOf = new Map(boxes.map((box, index) => [box.id, `box-${index}`]));
  const name = (id: string) => nameOf.get(id) ?? id;
  for (const { id, width, height } of boxes) graph.setNode(name(id), { width, height });
  links.forEach(({ causeId, effectId, width, height }, index) => {
    graph.setEdge(name(causeId), name(effectId), { width, height, labelpos: 'c' }, `link-${index}`);
  });
  layout(graph);

  const placed = new Map(
    boxes.map(({ id, width, height }) => {
      const { x, y } = graph.node(name(id));
      return [id, { x: x - width / 2, y: y - height / 2, width, height }];
    }),
  );
  const ways = links.map((link, index): Way => {
    const edge = graph.edge(name(link.causeId), name(link.effectId), `link-${index}`);
    // The first and the last point are where dagre meets the boxes: the arrows get places of their own there.
    return { link, middles: edge.points.slice(1, -1), label: { x: edge.x, y: edge.y } };
  });
  for (const { link } of ways) {
    const cause = placed.get(link.causeId);
    const effect = placed.get(link.effectId);
    if (cause === undefined || effect === undefined || effect.x < cause.x + cause.width) {
      throw new RangeError('the links go round in a loop');
    }
  }
  const { width, height } = graph.graph();
  return { width, height, boxes: placed, links: laidLinks(ways, placed) };
}

type Way = { readonly link: LinkSize; readonly middles: readonly Spot[]; readonly label: Spot };

function laidLinks(ways: readonly Way[], boxes: ReadonlyMap<string, Box>): Map<string, LaidLink> {
  const halves = columnHalves(ways, boxes);
  const flats = new Map(
    ways.map(({ link, middles }) => [
      link.id,
      middles.flatMap(({ x, y }): Spot[] => {
        const half = halves.get(column(x)) ?? 0;
        return [
          { x: x - half, y },
          { x: x + half, y },
        ];
      }),
    ]),
  );
  const leaving = ports(ways, boxes, 'causeId', (way) => flats.get(way.link.id)?.[0]?.y ?? 0);
  const arriving = ports(ways, boxes, 'effectId', (way) => flats.get(way.link.id)?.at(-1)?.y ?? 0);
  return new Map(
    ways.map(({ link, label }): [string, LaidLink] => {
      const cause = boxes.get(link.causeId);
      const effect = boxes.get(link.effectId);
      if (cause === undefined || effect === undefined) throw new RangeError('a link without its box');
      const points = [
        { x: cause.x + cause.width, y: leaving.get(link.id) ?? cause.y },
        ...(flats.get(link.id) ?? []),
        { x: effect.x, y: arriving.get(link.id) ?? effect.y },
      ];
      const { width, height } = link;
      return [link.id, { points, label: { x: label.x - width / 2, y: label.y - height / 2, width, height } }];
    }),
  );
}

/** Names a layer by the middle of what stands in it. */
function column(x: number): number {
  return Math.round(x * 10);
}

/** Half the width of each layer: a line that passes through one keeps straight all the way, between its boxes. */
function columnHalves(ways: readonly Way[], boxes: ReadonlyMap<string, Box>): Map<number, number> {
  const halves = new Map<number, number>();
  const note = (x: number, half: number) => {
    halves.set(column(x), Math.max(halves.get(column(x)) ?? 0, half));
  };
  for (const box of boxes.values()) note(box.x + box.width / 2, box.width / 2);
  for (const { link, label } of ways) note(label.x, link.width / 2);
  return halves;
}

/** Height at which each link meets the box: spread along its edge in the order of where the lines go. */
function ports(
  ways: readonly Way[],
  boxes: ReadonlyMap<string, Box>,
  end: 'causeId' | 'effectId',
  heightBeyond: (way: Way) => number,
): Map<string, number> {
  const ofBox = new Map<string, Way[]>();
  for (const way of ways) {
    const known = ofBox.get(way.link[end]);
    if (known === undefined) ofBox.set(way.link[end], [way]);
    else known.push(way);
  }
  const heights = new Map<string, number>();
  for (const [id, all] of ofBox) {
    const box = boxes.get(id);
    if (box === undefined) continue;
    const spread = [...all].sort((one, other) => heightBeyond(one) - heightBeyond(other));
    const room = Math.max(0, box.height - 2 * port.corner);
    const step = spread.length < 2 ? 0 : Math.min(port.step, room / (spread.length - 1));
    const first = box.y + box.height / 2 - (step * (spread.length - 1)) / 2;
    spread.forEach((way, index) => heights.set(way.link.id, first + index * step));
  }
  return heights;
}

/** Boxes without a link stand below, in rows. */
function withLoneBoxes(layered: ChainLayout, alone: readonly BoxSize[], between: number): ChainLayout {
  const [first] = alone;
  if (first === undefined) return layered;
  const across = first.width + between;
  const sheet = Math.sqrt(alone.length * sheetShape * (first.height / first.width));
  const columns = Math.max(
    1,
    Math.min(alone.length, Math.max(Math.ceil(sheet), Math.floor((layered.width + between) / across))),
  );
  const boxes = new Map(layered.boxes);
  let top = layered.height === 0 ? gap.edge : layered.height - gap.edge + gap.alone;
  let width = layered.width;
  for (let start = 0; start < alone.length; start += columns) {
    const row = alone.slice(start, start + columns);
    let left: number = gap.edge;
    for (const box of row) {
      boxes.set(box.id, { x: left, y: top, width: box.width, height: box.height });
      left += box.width + between;
    }
    width = Math.max(width, left - between + gap.edge);
    top += Math.max(...row.map((box) => box.height)) + between;
  }
  return { width, height: top - between + gap.edge, boxes, links: layered.links };
}
