/** Cause and effect: what a node of the chain can be. The chain's own screen builds on these. */
import { z } from './schema.ts';

export const chainNodeKinds = ['root-cause', 'condition', 'event', 'finding', 'claim'] as const;
export const chainNodeKindSchema = z.enum(chainNodeKinds);
export type ChainNodeKind = z.infer<typeof chainNodeKindSchema>;
