/** The chain between page and library: the desk of analysis/history over boxes and links. */
import type { ChainChange, ChainOutcome } from '#shared-types/chain.ts';
import { deskOver, type WorkDesk } from '../history/work-desk.ts';
import {
  applyPatches,
  foldOutcome,
  inversePatches,
  likelySaved,
  sameRevisions,
  toChanges,
  type ChainPatch,
  type ChainState,
} from './chain-state.ts';

export type ChainDesk = WorkDesk<ChainState, ChainPatch>;

export const chainClerk = deskOver<ChainState, ChainPatch, ChainChange, ChainOutcome>({
  apply: applyPatches,
  inverse: inversePatches,
  toChanges,
  foldOutcome,
  likelySaved,
  sameRevisions,
});

export const { deskOf, perform, undoAt, redoAt, nextChanges, accepted, refused, readAnew } = chainClerk;
