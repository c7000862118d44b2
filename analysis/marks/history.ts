/**
 * What was done at the bench, so that it can be taken back. One gesture is one entry, whatever it changed;
 * what is selected and how far the view is zoomed are not history.
 */
import { applyPatches, inversePatches, type BenchPatch, type BenchState } from './bench-state.ts';

export type HistoryEntry = {
  readonly forward: readonly BenchPatch[];
  readonly backward: readonly BenchPatch[];
  /** Names the piece of writing this is part of; null for a gesture that stands alone. */
  readonly writing: string | null;
};

export type History = {
  /** Oldest first. */
  readonly done: readonly HistoryEntry[];
  /** Next to be redone last. */
  readonly undone: readonly HistoryEntry[];
};

/** A history after one more step, the state it leads to, and the patches that have to be saved. */
export type HistoryStep = {
  readonly history: History;
  readonly state: BenchState;
  readonly patches: readonly BenchPatch[];
};

export const emptyHistory: History = { done: [], undone: [] };

/**
 * Carries out a gesture. What had been undone can no longer be redone. Text is saved many times while it is written:
 * saves in a row that carry the same `writing` are one entry, taken back together.
 */
export function record(
  history: History,
  state: BenchState,
  patches: readonly BenchPatch[],
  writing: string | null = null,
): HistoryStep {
  const last = history.done.at(-1);
  const goesOn = writing !== null && last?.writing === writing;
  const entry: HistoryEntry = {
    forward: patches,
    backward: goesOn ? last.backward : inversePatches(state, patches),
    writing,
  };
  return {
    history: { done: [...(goesOn ? history.done.slice(0, -1) : history.done), entry], undone: [] },
    state: applyPatches(state, patches),
    patches,
  };
}

/** Takes the latest gesture back; null when there is none. */
export function undo(history: History, state: BenchState): HistoryStep | null {
  const entry = history.done.at(-1);
  if (entry === undefined) return null;
  // Taken anew from the state: a class that was changed with its reason since then is what a redo brings back.
  const forward = inversePatches(state, entry.backward);
  return {
    history: {
      done: history.done.slice(0, -1),
      undone: [...history.undone, { forward, backward: entry.backward, writing: null }],
    },
    state: applyPatches(state, entry.backward),
    patches: entry.backward,
  };
}

/** Does again what was taken back last; null when there is nothing. */
export function redo(history: History, state: BenchState): HistoryStep | null {
  const entry = history.undone.at(-1);
  if (entry === undefined) return null;
  const backward = inversePatches(state, entry.forward);
  return {
    history: {
      done: [...history.done, { forward: entry.forward, backward, writing: null }],
      undone: history.undone.slice(0, -1),
    },
    state: applyPatches(state, entry.forward),
    patches: entry.forward,
  };
}
