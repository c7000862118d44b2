/** What the figure of a chain says, in words: plain JSON, before it is laid out. */
import type { ChainNodeKind, LinkCertainty } from '#shared-types/chain.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { ChainLinkId, ChainNodeId } from '#shared-types/ids.ts';
import type { ChainState } from './chain-state.ts';
import { nodeWords, type ChainSubject } from './node-words.ts';

export type FigureNode = {
  readonly id: ChainNodeId;
  readonly kind: ChainNodeKind;
  readonly head: string;
  readonly words: string;
  readonly class: DamageClass | null;
  /** Of a finding; 0 for what is none. */
  readonly number: number;
};

export type FigureLink = {
  readonly id: ChainLinkId;
  readonly causeId: ChainNodeId;
  readonly effectId: ChainNodeId;
  readonly certainty: LinkCertainty;
  readonly reason: string;
};

export type ChainContent = { readonly nodes: readonly FigureNode[]; readonly links: readonly FigureLink[] };

export function chainContent(state: ChainState, subject: ChainSubject): ChainContent {
  return {
    nodes: [...state.nodes.values()].map((node) => {
      const { head, words, class: damageClass } = nodeWords(node, subject);
      const number = node.kind === 'finding' ? (subject.findings.get(node.findingId)?.number ?? 0) : 0;
      return { id: node.id, kind: node.kind, head, words, class: damageClass, number };
    }),
    links: [...state.links.values()].map(({ id, causeId, effectId, certainty, reason }) => ({
      id,
      causeId,
      effectId,
      certainty,
      reason,
    })),
  };
}
