/** What is done to a chain, as patches. Ids of new things are handed in. */
import type { ChainLinkId, ChainNodeId } from '#shared-types/ids.ts';
import type { ChainPatch, ChainState } from './chain-state.ts';
import type { ChainFinding } from './node-words.ts';

export type ChainPatches = readonly ChainPatch[];

/** The node and every link that begins or ends at it. */
export function removedNode(state: ChainState, nodeId: ChainNodeId): ChainPatches {
  return [
    ...[...state.links.values()]
      .filter((link) => link.causeId === nodeId || link.effectId === nodeId)
      .map((link): ChainPatch => ({ patch: 'remove-link', linkId: link.id })),
    { patch: 'remove-node', nodeId },
  ];
}

export function removedLink(linkId: ChainLinkId): ChainPatches {
  return [{ patch: 'remove-link', linkId }];
}

/** Primary and secondary findings that are present and not in the chain, by their numbers. */
export function findingsToBringIn<Held extends ChainFinding>(
  state: ChainState,
  findings: Iterable<Held>,
): readonly Held[] {
  const standing = new Set([...state.nodes.values()].map((node) => node.findingId));
  return [...findings]
    .filter(
      (finding) =>
        finding.presence === 'present' &&
        (finding.class === 'primary' || finding.class === 'secondary') &&
        !standing.has(finding.id),
    )
    .sort((one, other) => one.number - other.number);
}

export function broughtIn(findings: readonly ChainFinding[], newId: () => ChainNodeId): ChainPatches {
  return findings.map(({ id: findingId }) => ({
    patch: 'put-node',
    node: { id: newId(), kind: 'finding', findingId, term: null, words: '' },
  }));
}
