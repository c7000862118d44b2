/**
 * The chain of one case as it is worked on: immutable, by id. Patches say what shall be; they carry no revisions, so
 * that undo can bring a thing back whatever was saved in between. toChanges fills the revisions in.
 */
import type {
  Chain,
  ChainChange,
  ChainLinkFields,
  ChainNodeFields,
  ChainOutcome,
} from '#shared-types/chain.ts';
import type { ChainLinkId, ChainNodeId } from '#shared-types/ids.ts';
import { likelyRevisions } from '../history/likely-revisions.ts';
import { sameRevisionsOf } from '../history/same-revisions.ts';

/** `revision` is null until the library has it. */
export type HeldNode = ChainNodeFields & { readonly revision: number | null };
export type HeldLink = ChainLinkFields & { readonly revision: number | null };

export type ChainState = {
  readonly nodes: ReadonlyMap<ChainNodeId, HeldNode>;
  readonly links: ReadonlyMap<ChainLinkId, HeldLink>;
};

export type ChainPatch =
  | { readonly patch: 'put-node'; readonly node: ChainNodeFields }
  | { readonly patch: 'remove-node'; readonly nodeId: ChainNodeId }
  | { readonly patch: 'put-link'; readonly link: ChainLinkFields }
  | { readonly patch: 'remove-link'; readonly linkId: ChainLinkId };

/** The state as the library answered it. */
export function chainStateOf(read: Chain): ChainState {
  return {
    nodes: new Map(read.nodes.map((node) => [node.id, node])),
    links: new Map(read.links.map((link) => [link.id, link])),
  };
}

/** The state after the patches, in their order. */
export function applyPatches(state: ChainState, patches: readonly ChainPatch[]): ChainState {
  if (patches.length === 0) return state;
  const nodes = new Map(state.nodes);
  const links = new Map(state.links);
  for (const patch of patches) {
    switch (patch.patch) {
      case 'put-node':
        nodes.set(patch.node.id, { ...patch.node, revision: nodes.get(patch.node.id)?.revision ?? null });
        break;
      case 'remove-node':
        nodes.delete(patch.nodeId);
        break;
      case 'put-link':
        links.set(patch.link.id, { ...patch.link, revision: links.get(patch.link.id)?.revision ?? null });
        break;
      case 'remove-link':
        links.delete(patch.linkId);
        break;
    }
  }
  return { nodes, links };
}

/** Patches that bring back, in this order, what `patches` changed when applied to `state`. */
export function inversePatches(state: ChainState, patches: readonly ChainPatch[]): readonly ChainPatch[] {
  const inverse: ChainPatch[] = [];
  let at = state;
  for (const patch of patches) {
    inverse.unshift(...inverseOf(at, patch));
    at = applyPatches(at, [patch]);
  }
  return inverse;
}

function inverseOf(state: ChainState, patch: ChainPatch): readonly ChainPatch[] {
  if (patch.patch === 'put-node' || patch.patch === 'remove-node') {
    const nodeId = patch.patch === 'put-node' ? patch.node.id : patch.nodeId;
    const held = state.nodes.get(nodeId);
    if (held !== undefined) return [{ patch: 'put-node', node: nodeFieldsOf(held) }];
    return patch.patch === 'put-node' ? [{ patch: 'remove-node', nodeId }] : [];
  }
  const linkId = patch.patch === 'put-link' ? patch.link.id : patch.linkId;
  const held = state.links.get(linkId);
  if (held !== undefined) return [{ patch: 'put-link', link: linkFieldsOf(held) }];
  return patch.patch === 'put-link' ? [{ patch: 'remove-link', linkId }] : [];
}

export function nodeFieldsOf(node: HeldNode): ChainNodeFields {
  const { revision: _ofTheRow, ...fields } = node;
  return fields;
}

export function linkFieldsOf(link: HeldLink): ChainLinkFields {
  const { id, causeId, effectId, reason, certainty } = link;
  return { id, causeId, effectId, reason, certainty };
}

/**
 * What to ask of the library so that `confirmed` (as the library last answered) becomes what it is after the patches.
 * A thing touched twice is asked for once. Order: links removed, nodes removed, nodes put, links put, so that a link
 * never names a node that is not there. Removing what the library never had asks for nothing.
 */
export function toChanges(confirmed: ChainState, patches: readonly ChainPatch[]): ChainChange[] {
  const after = applyPatches(confirmed, patches);
  const nodeIds = new Set<ChainNodeId>();
  const linkIds = new Set<ChainLinkId>();
  for (const patch of patches) {
    if (patch.patch === 'put-node') nodeIds.add(patch.node.id);
    else if (patch.patch === 'remove-node') nodeIds.add(patch.nodeId);
    else if (patch.patch === 'put-link') linkIds.add(patch.link.id);
    else linkIds.add(patch.linkId);
  }
  const linksGone: ChainChange[] = [];
  const nodesGone: ChainChange[] = [];
  const nodesPut: ChainChange[] = [];
  const linksPut: ChainChange[] = [];
  for (const nodeId of nodeIds) {
    const node = after.nodes.get(nodeId);
    const revision = confirmed.nodes.get(nodeId)?.revision ?? null;
    if (node !== undefined) nodesPut.push({ change: 'put-node', node: nodeFieldsOf(node), revision });
    else if (revision !== null) nodesGone.push({ change: 'remove-node', nodeId, revision });
  }
  for (const linkId of linkIds) {
    const link = after.links.get(linkId);
    const revision = confirmed.links.get(linkId)?.revision ?? null;
    if (link !== undefined) linksPut.push({ change: 'put-link', link: linkFieldsOf(link), revision });
    else if (revision !== null) linksGone.push({ change: 'remove-link', linkId, revision });
  }
  return [...linksGone, ...nodesGone, ...nodesPut, ...linksPut];
}

/** The patches that a commit asks for. */
export function patchesOf(changes: readonly ChainChange[]): ChainPatch[] {
  return changes.map((change) => {
    switch (change.change) {
      case 'put-node':
        return { patch: 'put-node', node: change.node };
      case 'remove-node':
        return { patch: 'remove-node', nodeId: change.nodeId };
      case 'put-link':
        return { patch: 'put-link', link: change.link };
      case 'remove-link':
        return { patch: 'remove-link', linkId: change.linkId };
    }
  });
}

/** The state with the library's answer to a commit taken in. */
export function foldOutcome(state: ChainState, outcome: ChainOutcome): ChainState {
  const nodes = new Map(state.nodes);
  const links = new Map(state.links);
  for (const node of outcome.nodes) nodes.set(node.id, node);
  for (const link of outcome.links) links.set(link.id, link);
  for (const id of outcome.removedNodeIds) nodes.delete(id);
  for (const id of outcome.removedLinkIds) links.delete(id);
  return { nodes, links };
}

/** `after` as the library will most likely hold it once it has saved it. */
export function likelySaved(before: ChainState, after: ChainState): ChainState {
  return {
    nodes: likelyRevisions(before.nodes, after.nodes),
    links: likelyRevisions(before.links, after.links),
  };
}

/** Whether both hold the same things at the same revisions. */
export function sameRevisions(one: ChainState, other: ChainState): boolean {
  return sameRevisionsOf(one.nodes, other.nodes) && sameRevisionsOf(one.links, other.links);
}
