/** What was done at the bench, so that it can be taken back: the history of analysis/history over marks and findings. */
import { historyOver, type Step, type StepEntry, type StepHistory } from '../history/step-history.ts';
import { applyPatches, inversePatches, type BenchPatch, type BenchState } from './bench-state.ts';

export type HistoryEntry = StepEntry<BenchPatch>;
export type History = StepHistory<BenchPatch>;
export type HistoryStep = Step<BenchState, BenchPatch>;

export const emptyHistory: History = { done: [], undone: [] };

export const { record, undo, redo } = historyOver<BenchState, BenchPatch>({
  apply: applyPatches,
  inverse: inversePatches,
});
