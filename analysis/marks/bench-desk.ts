/** The bench between page and library: the desk of analysis/history over marks and findings. */
import type { BenchChange, BenchOutcome } from '#shared-types/bench-change.ts';
import type { Finding } from '#shared-types/finding.ts';
import { deskOver, type WorkDesk } from '../history/work-desk.ts';
import {
  applyPatches,
  foldOutcome,
  inversePatches,
  likelySaved,
  sameRevisions,
  toChanges,
  type BenchPatch,
  type BenchState,
} from './bench-state.ts';

export type BenchDesk = WorkDesk<BenchState, BenchPatch>;

export const benchClerk = deskOver<BenchState, BenchPatch, BenchChange, BenchOutcome>({
  apply: applyPatches,
  inverse: inversePatches,
  toChanges,
  foldOutcome,
  likelySaved,
  sameRevisions,
});

export const { deskOf, perform, undoAt, redoAt, nextChanges, accepted, refused, readAnew } = benchClerk;

/**
 * A finding got its class, with a reason. That is no gesture that can be taken back: it is changed again, with a reason.
 * What was done before it cannot be undone any more, or the next undo would silently take back something else.
 */
export function classified(desk: BenchDesk, finding: Finding): BenchDesk {
  const outcome = { marks: [], findings: [finding], removedMarkIds: [], removedFindingIds: [] };
  const history = { done: [], undone: [] };
  const pending = desk.pending.map((work) => ({ ...work, historyBefore: history }));
  return benchClerk.told({ ...desk, pending, history }, outcome);
}
