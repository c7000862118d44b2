/**
 * Cause and effect: what a node of the chain can be, and what holds two of them together. Root cause, then conditions,
 * then what happened and what was found; a link always leads from the cause to its effect.
 */
import {
  caseIdSchema,
  chainLinkIdSchema,
  chainNodeIdSchema,
  findingIdSchema,
  packTermIdSchema,
  revisionSchema,
  type ChainLinkId,
  type ChainNodeId,
} from './ids.ts';
import { z } from './schema.ts';

export const chainNodeKinds = ['root-cause', 'condition', 'event', 'finding', 'claim'] as const;
export const chainNodeKindSchema = z.enum(chainNodeKinds);
export type ChainNodeKind = z.infer<typeof chainNodeKindSchema>;

/** What the analyst writes in a node of the chain's own. */
export const writtenNodeKinds = ['root-cause', 'condition', 'event'] as const;
export type WrittenNodeKind = (typeof writtenNodeKinds)[number];

/** How sure the analyst is that the one led to the other. */
export const linkCertainties = ['established', 'likely', 'possible'] as const;
export const linkCertaintySchema = z.enum(linkCertainties);
export type LinkCertainty = z.infer<typeof linkCertaintySchema>;

/** Characters of a node's own words: a box of the figure holds them all. */
export const mostNodeWords = 300;
export const mostReasonWords = 2_000;
/** The loops are looked for, and the figure is laid out, over all of a case's chain at once. */
export const mostChainNodes = 200;
export const mostChainLinks = 400;

const noNul = (text: string) => !text.includes('\0');
const nulRefused = { message: 'a NUL character' };

const nodeId = { id: chainNodeIdSchema };

export const chainNodeFieldsSchema = z.discriminatedUnion('kind', [
  z
    .strictObject({
      ...nodeId,
      kind: z.enum(writtenNodeKinds),
      findingId: z.null(),
      /** A mechanism (root cause) or a condition of the machine kind's data; then its words may stay empty. */
      term: packTermIdSchema.nullable(),
      words: z.string().trim().max(mostNodeWords).refine(noNul, nulRefused),
    })
    .refine((node) => node.words !== '' || node.term !== null, {
      path: ['words'],
      message: 'neither words nor a term',
    }),
  /** Its words are those of the finding. */
  z.strictObject({
    ...nodeId,
    kind: z.literal('finding'),
    findingId: findingIdSchema,
    term: z.null(),
    words: z.literal(''),
  }),
  /** Its words are those of the case's claim. */
  z.strictObject({
    ...nodeId,
    kind: z.literal('claim'),
    findingId: z.null(),
    term: z.null(),
    words: z.literal(''),
  }),
]);
export type ChainNodeFields = z.infer<typeof chainNodeFieldsSchema>;
export type ChainNode = ChainNodeFields & { readonly revision: number };

export const chainLinkFieldsSchema = z.strictObject({
  id: chainLinkIdSchema,
  causeId: chainNodeIdSchema,
  effectId: chainNodeIdSchema,
  /** Why the one led to the other; empty while it was not written. */
  reason: z.string().trim().max(mostReasonWords).refine(noNul, nulRefused),
  certainty: linkCertaintySchema,
});
export type ChainLinkFields = z.infer<typeof chainLinkFieldsSchema>;
export type ChainLink = ChainLinkFields & { readonly revision: number };

export type Chain = { readonly nodes: readonly ChainNode[]; readonly links: readonly ChainLink[] };

/** As BenchChange: `revision` null for a new thing, or for one that undo brings back under its old id. */
export const chainChangeSchema = z.discriminatedUnion('change', [
  z.strictObject({
    change: z.literal('put-node'),
    node: chainNodeFieldsSchema,
    revision: revisionSchema.nullable(),
  }),
  z.strictObject({ change: z.literal('remove-node'), nodeId: chainNodeIdSchema, revision: revisionSchema }),
  z.strictObject({
    change: z.literal('put-link'),
    link: chainLinkFieldsSchema,
    revision: revisionSchema.nullable(),
  }),
  z.strictObject({ change: z.literal('remove-link'), linkId: chainLinkIdSchema, revision: revisionSchema }),
]);
export type ChainChange = z.infer<typeof chainChangeSchema>;

/** One committed gesture, whole or not at all: what goes first goes before what comes, so each thing is named once. */
export const chainCommitSchema = z.strictObject({
  caseId: caseIdSchema,
  changes: z
    .array(chainChangeSchema)
    .min(1)
    .max(mostChainNodes + mostChainLinks)
    .refine((changes) => new Set(changes.map(thingOf)).size === changes.length, {
      message: 'the same thing twice',
    }),
});
function thingOf(change: ChainChange): string {
  switch (change.change) {
    case 'put-node':
      return change.node.id;
    case 'remove-node':
      return change.nodeId;
    case 'put-link':
      return change.link.id;
    case 'remove-link':
      return change.linkId;
  }
}
export type ChainCommit = z.infer<typeof chainCommitSchema>;

export type ChainOutcome = {
  /** As they stand after the commit: only those that the commit put. */
  readonly nodes: readonly ChainNode[];
  readonly links: readonly ChainLink[];
  readonly removedNodeIds: readonly ChainNodeId[];
  readonly removedLinkIds: readonly ChainLinkId[];
};
