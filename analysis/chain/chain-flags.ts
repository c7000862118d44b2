/** What does not go together in a chain, or is still missing from it. A flag refuses nothing: the analyst settles it. */
import type { ChainNodeKind } from '#shared-types/chain.ts';
import type { ChainLinkId, ChainNodeId, FindingId } from '#shared-types/ids.ts';
import { chainFlagTexts } from '#shared-types/texts/chain.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { capitalised } from './chain-faults.ts';
import { downstreamOf, upstreamOf } from './chain-loops.ts';
import type { ChainState, HeldNode } from './chain-state.ts';
import { nodeName, type ChainFinding, type ChainSubject } from './node-words.ts';

export type ChainFlagKind =
  | 'primary-follows'
  | 'root-follows'
  | 'absent-cause'
  | 'root-without-evidence'
  | 'secondary-alone'
  | 'unlinked'
  | 'claim-alone'
  | 'no-reason'
  | 'finding-outside';

export type ChainFlag = {
  readonly flag: ChainFlagKind;
  readonly nodeIds: readonly ChainNodeId[];
  readonly linkIds: readonly ChainLinkId[];
  readonly findingIds: readonly FindingId[];
  /** Ready to be shown and printed. */
  readonly sentence: string;
};

/** Contradictions first, then what is missing; within a kind as the chain has its boxes and links. */
export function chainFlags(state: ChainState, subject: ChainSubject): readonly ChainFlag[] {
  const nodes = [...state.nodes.values()];
  const links = [...state.links.values()];
  const causes = new Set(links.map((link) => link.causeId));
  const effects = new Set(links.map((link) => link.effectId));
  const name = (node: HeldNode) => nodeName(node, subject);
  const nameOf = (id: ChainNodeId) => {
    const node = state.nodes.get(id);
    return node === undefined ? '' : name(node);
  };
  const begins = (node: HeldNode) => capitalised(name(node));
  const findingOf = (node: HeldNode | undefined): ChainFinding | null =>
    node?.kind === 'finding' ? (subject.findings.get(node.findingId) ?? null) : null;
  const presentNodes = (ids: ReadonlySet<ChainNodeId>) =>
    nodes.filter((node) => ids.has(node.id) && findingOf(node)?.presence === 'present');
  const isPresent = (node: HeldNode, damageClass: ChainFinding['class']) => {
    const finding = findingOf(node);
    return finding?.presence === 'present' && finding.class === damageClass;
  };
  const standsAlone = (node: HeldNode) => !causes.has(node.id) && !effects.has(node.id);
  const ofNode = (node: HeldNode) => ({
    nodeIds: [node.id],
    linkIds: [],
    findingIds: node.kind === 'finding' ? [node.findingId] : [],
  });

  const primaries = nodes
    .filter((node) => isPresent(node, 'primary'))
    .flatMap((node): ChainFlag[] => {
      const before = presentNodes(upstreamOf(links, node.id));
      if (before.length === 0) return [];
      const sentence = chainFlagTexts.primaryFollows(begins(node), listed(before.map(name)));
      const nodeIds = [node.id, ...before.map((one) => one.id)];
      const findingIds = [node, ...before].flatMap((one) => findingOf(one)?.id ?? []);
      return [{ flag: 'primary-follows', nodeIds, linkIds: [], findingIds, sentence }];
    });

  const rootsThatFollow = nodes
    .filter((node) => node.kind === 'root-cause')
    .flatMap((node): ChainFlag[] => {
      const before = nodes.filter((one) => upstreamOf(links, node.id).has(one.id));
      if (before.length === 0) return [];
      const sentence = chainFlagTexts.rootFollows(begins(node), listed(before.map(name)));
      const nodeIds = [node.id, ...before.map((one) => one.id)];
      const findingIds = before.flatMap((one) => findingOf(one)?.id ?? []);
      return [{ flag: 'root-follows', nodeIds, linkIds: [], findingIds, sentence }];
    });

  const absentCauses = nodes
    .filter((node) => findingOf(node)?.presence === 'looked-for-absent' && causes.has(node.id))
    .map((node): ChainFlag => ({
      ...ofNode(node),
      flag: 'absent-cause',
      linkIds: links.filter((link) => link.causeId === node.id).map((link) => link.id),
      sentence: chainFlagTexts.absentCause(begins(node)),
    }));

  const reasoned = links.filter((link) => link.reason.trim() !== '');
  const roots = nodes
    .filter((node) => node.kind === 'root-cause')
    .flatMap((node): ChainFlag[] => {
      const sentence =
        presentNodes(downstreamOf(links, node.id)).length === 0
          ? chainFlagTexts.rootWithoutFinding(name(node))
          : presentNodes(downstreamOf(reasoned, node.id)).length === 0
            ? chainFlagTexts.rootWithoutReason(begins(node))
            : null;
      return sentence === null ? [] : [{ ...ofNode(node), flag: 'root-without-evidence', sentence }];
    });

  const secondaries = nodes
    .filter((node) => isPresent(node, 'secondary') && !effects.has(node.id) && !standsAlone(node))
    .map((node): ChainFlag => ({
      ...ofNode(node),
      flag: 'secondary-alone',
      sentence: chainFlagTexts.secondaryAlone(begins(node)),
    }));

  const alone = nodes
    .filter((node) => saidWhenAlone.has(node.kind) && standsAlone(node))
    .map((node): ChainFlag => ({
      ...ofNode(node),
      flag: isPresent(node, 'secondary') ? 'secondary-alone' : 'unlinked',
      sentence: isPresent(node, 'secondary')
        ? chainFlagTexts.secondaryAlone(begins(node))
        : chainFlagTexts.unlinked(begins(node)),
    }));

  const claims = nodes
    .filter((node) => node.kind === 'claim' && standsAlone(node))
    .map((node): ChainFlag => ({
      ...ofNode(node),
      flag: 'claim-alone',
      sentence: chainFlagTexts.claimAlone,
    }));

  const withoutReason = links
    .filter((link) => link.reason.trim() === '')
    .map((link): ChainFlag => ({
      flag: 'no-reason',
      nodeIds: [link.causeId, link.effectId],
      linkIds: [link.id],
      findingIds: [],
      sentence: chainFlagTexts.noReason(nameOf(link.causeId), nameOf(link.effectId)),
    }));

  return [
    ...primaries,
    ...rootsThatFollow,
    ...absentCauses,
    ...roots,
    ...secondaries,
    ...alone,
    ...claims,
    ...withoutReason,
    ...findingsOutside(nodes, subject),
  ];
}

/** A root cause and the claim have sentences of their own. */
const saidWhenAlone: ReadonlySet<ChainNodeKind> = new Set<ChainNodeKind>(['condition', 'event', 'finding']);

/** Unrelated damage and what is not there need no place in a chain. */
function findingsOutside(nodes: readonly HeldNode[], subject: ChainSubject): ChainFlag[] {
  const standing = new Set(nodes.map((node) => node.findingId));
  return [...subject.findings.values()]
    .filter(
      (finding) =>
        finding.presence === 'present' && finding.class !== 'unrelated' && !standing.has(finding.id),
    )
    .sort((one, other) => one.number - other.number)
    .map((finding) => ({
      flag: 'finding-outside',
      nodeIds: [],
      linkIds: [],
      findingIds: [finding.id],
      sentence: chainFlagTexts.findingOutside(
        capitalised(chainFlagTexts.finding(finding.number)),
        commonTexts.damageClasses[finding.class],
      ),
    }));
}

/** "a", "a and b", "a, b and c" */
function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  if (names.length < 2) return last;
  return `${names.slice(0, -1).join(chainFlagTexts.comma)}${chainFlagTexts.and}${last}`;
}
