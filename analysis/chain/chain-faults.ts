/** What a chain can never be, found in the whole of it: the page asks before it does something, the engine before it writes. */
import { mostChainLinks, mostChainNodes } from '#shared-types/chain.ts';
import { AppError } from '#shared-types/errors.ts';
import type { ChainNodeId, FindingId } from '#shared-types/ids.ts';
import { chainNames } from '#shared-types/texts/chain.ts';
import { findLoop } from './chain-loops.ts';
import { nodeName, type ChainSubject } from './node-words.ts';
import type { ChainState } from './chain-state.ts';

/**
 * The sentence that refuses this chain, null for one that can be: AppError chain-too-large, chain-claim-twice,
 * chain-finding-twice, chain-link-loose, chain-self-link, chain-link-twice, chain-loop.
 */
export function chainFault(state: ChainState, subject: ChainSubject): AppError | null {
  const nodes = [...state.nodes.values()];
  const links = [...state.links.values()];
  const name = (id: ChainNodeId) => {
    const node = state.nodes.get(id);
    return node === undefined ? '' : nodeName(node, subject);
  };

  if (nodes.length > mostChainNodes) {
    return new AppError('chain-too-large', { limit: mostChainNodes, what: chainNames.nodes });
  }
  if (links.length > mostChainLinks) {
    return new AppError('chain-too-large', { limit: mostChainLinks, what: chainNames.links });
  }
  if (nodes.filter((node) => node.kind === 'claim').length > 1) return new AppError('chain-claim-twice');

  const standing = new Set<FindingId>();
  for (const node of nodes) {
    if (node.kind !== 'finding') continue;
    if (standing.has(node.findingId)) {
      const number = subject.findings.get(node.findingId)?.number ?? null;
      return new AppError('chain-finding-twice', { number });
    }
    standing.add(node.findingId);
  }

  const pairs = new Set<string>();
  for (const { causeId, effectId } of links) {
    if (!state.nodes.has(causeId) || !state.nodes.has(effectId)) return new AppError('chain-link-loose');
    if (causeId === effectId) return new AppError('chain-self-link', { name: capitalised(name(causeId)) });
    const pair = `${causeId} ${effectId}`;
    if (pairs.has(pair)) {
      return new AppError('chain-link-twice', { cause: name(causeId), effect: name(effectId) });
    }
    pairs.add(pair);
  }

  const loop = findLoop(links);
  return loop === null ? null : new AppError('chain-loop', { path: chainNames.path(loop.map(name)) });
}

export function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
