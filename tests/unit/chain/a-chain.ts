/** Chains to test with: short names stand for ids, so that a test reads as the chain it speaks of. */
import fc from 'fast-check';
import type { ChainContent, FigureLink, FigureNode } from '#analysis/chain/chain-content.ts';
import type { ChainPatch, ChainState } from '#analysis/chain/chain-state.ts';
import { applyPatches, chainStateOf } from '#analysis/chain/chain-state.ts';
import type { ChainFinding, ChainSubject } from '#analysis/chain/node-words.ts';
import {
  chainNodeKinds,
  linkCertainties,
  type ChainLink,
  type ChainLinkFields,
  type ChainNode,
  type ChainNodeFields,
  type WrittenNodeKind,
} from '#shared-types/chain.ts';
import { damageClasses } from '#shared-types/finding.ts';
import type { ChainLinkId, ChainNodeId, FindingId } from '#shared-types/ids.ts';
import { finding, findingId, pack } from '../../pdf/report-case.ts';

export { findingId };

export const nodeId = (name: string) => `node ${name}` as ChainNodeId;
export const linkId = (cause: string, effect: string) => `link ${cause} ${effect}` as ChainLinkId;

export const written = (name: string, kind: WrittenNodeKind = 'event', words = name): ChainNode => ({
  id: nodeId(name),
  kind,
  findingId: null,
  term: null,
  words,
  revision: 1,
});
export const root = (name: string) => written(name, 'root-cause');
export const ofFinding = (number: number): ChainNode => ({
  id: nodeId(`f${number}`),
  kind: 'finding',
  findingId: findingId(number),
  term: null,
  words: '',
  revision: 1,
});
export const claimNode: ChainNode = {
  id: nodeId('claim'),
  kind: 'claim',
  findingId: null,
  term: null,
  words: '',
  revision: 1,
};

/** "a b" is the link from a to b; with a reason unless it is told otherwise. */
export const link = (pair: string, more: Partial<ChainLink> = {}): ChainLink => {
  const [cause = '', effect = ''] = pair.split(' ');
  return {
    id: linkId(cause, effect),
    causeId: nodeId(cause),
    effectId: nodeId(effect),
    reason: 'as it was found',
    certainty: 'likely',
    revision: 1,
    ...more,
  };
};
export const leads = (...pairs: readonly string[]) => pairs.map((pair) => link(pair));

export const chainOf = (nodes: readonly ChainNode[], links: readonly ChainLink[] = []): ChainState =>
  chainStateOf({ nodes, links });

export function subjectOf(...findings: readonly ChainFinding[]): ChainSubject {
  return {
    findings: new Map(findings.map((one) => [one.id, one])),
    pack,
    claim: 'The nut came loose and wrecked it.',
  };
}
export const caseFinding: (number: number, change?: Partial<ChainFinding>) => ChainFinding = finding;

/** Without revisions, and with nothing said of the order. */
export function contentOf(state: ChainState) {
  const bare = <Thing extends { revision: number | null }>({ revision: _, ...fields }: Thing) => fields;
  return {
    nodes: new Set([...state.nodes.values()].map((node) => JSON.stringify(bare(node)))),
    links: new Set([...state.links.values()].map((one) => JSON.stringify(bare(one)))),
  };
}

const words = fc.oneof(
  fc.string({ maxLength: 60 }),
  fc.constantFrom(
    'oil film lost',
    'the rotor touched',
    'Grit in the oil from the first hour on, as delivered',
  ),
);

const figureNode = (index: number): fc.Arbitrary<FigureNode> =>
  fc.record({
    id: fc.constant(nodeId(String(index))),
    kind: fc.constantFrom(...chainNodeKinds),
    head: fc.constantFrom('Finding 12, secondary', 'Event'),
    words,
    class: fc.option(fc.constantFrom(...damageClasses)),
    number: fc.nat(3),
  });

/** Links lead from lower to higher numbers only, so that no loop can come about. */
export const acyclicContent: fc.Arbitrary<ChainContent> = fc.integer({ min: 1, max: 24 }).chain((count) =>
  fc.record({
    nodes: fc.tuple(...Array.from({ length: count }, (_, index) => figureNode(index))),
    links: fc
      .uniqueArray(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)), {
        maxLength: 2 * count,
        selector: ([one, other]) => [Math.min(one, other), Math.max(one, other)].join(),
      })
      .map((pairs) => pairs.filter(([one, other]) => one !== other))
      .chain((pairs) =>
        fc.tuple(
          ...pairs.map(([one, other]): fc.Arbitrary<FigureLink> => {
            const [cause, effect] = [Math.min(one, other), Math.max(one, other)].map(String);
            return fc.record({
              id: fc.constant(linkId(cause ?? '', effect ?? '')),
              causeId: fc.constant(nodeId(cause ?? '')),
              effectId: fc.constant(nodeId(effect ?? '')),
              certainty: fc.constantFrom(...linkCertainties),
              reason: fc.oneof(fc.constant(''), words, fc.constant('a long reason '.repeat(20))),
            });
          }),
        ),
      ),
  }),
);

type Seeded = { readonly what: number; readonly one: number; readonly other: number };
const seeded = fc.record({ what: fc.nat(3), one: fc.nat(5), other: fc.nat(5) });

/** One gesture is a handful of steps; each step names one of a few nodes or links. */
export const gestures = fc.array(fc.array(seeded, { minLength: 1, maxLength: 4 }), {
  minLength: 1,
  maxLength: 12,
});

export function patchesOf(steps: readonly Seeded[]): ChainPatch[] {
  return steps.map(({ what, one, other }): ChainPatch => {
    switch (what) {
      case 0:
        return { patch: 'put-node', node: fieldsOf(written(String(one), 'event', `said ${other}`)) };
      case 1:
        return { patch: 'remove-node', nodeId: nodeId(String(one)) };
      case 2:
        return {
          patch: 'put-link',
          link: linkFieldsOf(link(`${one} ${other}`, { reason: `because ${what}${other}` })),
        };
      default:
        return { patch: 'remove-link', linkId: linkId(String(one), String(other)) };
    }
  });
}

export function fieldsOf({ revision: _, ...node }: ChainNode): ChainNodeFields {
  return node;
}
export function linkFieldsOf({ revision: _, ...fields }: ChainLink): ChainLinkFields {
  return fields;
}

export const after = (state: ChainState, ...patches: readonly ChainPatch[]) => applyPatches(state, patches);
export const findingIds = (...numbers: readonly number[]): FindingId[] => numbers.map(findingId);
