/** dagre by the few calls that are made of it: the types it brings name their own files in a way that is not resolved here. */
import * as dagre from '@dagrejs/dagre';

export type LayeredGraph = {
  setGraph(settings: {
    readonly rankdir: 'LR';
    readonly nodesep: number;
    readonly edgesep: number;
    readonly ranksep: number;
    readonly marginx: number;
    readonly marginy: number;
  }): void;
  setNode(name: string, size: { readonly width: number; readonly height: number }): void;
  setEdge(
    from: string,
    to: string,
    words: { readonly width: number; readonly height: number; readonly labelpos: 'c' },
    name: string,
  ): void;
  /** After the layout: size of the whole. */
  graph(): { readonly width: number; readonly height: number };
  /** After the layout: its middle. */
  node(name: string): { readonly x: number; readonly y: number };
  /** After the layout: the way of the line and the middle of its words. */
  edge(
    from: string,
    to: string,
    name: string,
  ): {
    readonly x: number;
    readonly y: number;
    readonly points: readonly { readonly x: number; readonly y: number }[];
  };
};

type Dagre = {
  readonly Graph: new (kind: { readonly directed: true; readonly multigraph: true }) => LayeredGraph;
  readonly layout: (graph: LayeredGraph) => void;
};

export const { Graph, layout } = dagre as unknown as Dagre;
