/**
 * What was done, so that it can be taken back, over any state that patches change. One gesture is one entry, whatever
 * it changed; what is selected and how far the view is zoomed are not history.
 */
export type StepEntry<Patch> = {
  readonly forward: readonly Patch[];
  readonly backward: readonly Patch[];
  /** Names the piece of writing this is part of; null for a gesture that stands alone. */
  readonly writing: string | null;
};

export type StepHistory<Patch> = {
  /** Oldest first. */
  readonly done: readonly StepEntry<Patch>[];
  /** Next to be redone last. */
  readonly undone: readonly StepEntry<Patch>[];
};

/** A history after one more step, the state it leads to, and the patches that have to be saved. */
export type Step<State, Patch> = {
  readonly history: StepHistory<Patch>;
  readonly state: State;
  readonly patches: readonly Patch[];
};

export type Patching<State, Patch> = {
  /** The state after the patches, in their order. */
  readonly apply: (state: State, patches: readonly Patch[]) => State;
  /** Patches that bring back, in this order, what `patches` change when applied to `state`. */
  readonly inverse: (state: State, patches: readonly Patch[]) => readonly Patch[];
};

export type StepHistorian<State, Patch> = {
  /**
   * Carries out a gesture. What had been undone can no longer be redone. Text is saved many times while it is written:
   * saves in a row that carry the same `writing` are one entry, taken back together.
   */
  readonly record: (
    history: StepHistory<Patch>,
    state: State,
    patches: readonly Patch[],
    writing?: string | null,
  ) => Step<State, Patch>;
  /** Takes the latest gesture back; null when there is none. */
  readonly undo: (history: StepHistory<Patch>, state: State) => Step<State, Patch> | null;
  /** Does again what was taken back last; null when there is nothing. */
  readonly redo: (history: StepHistory<Patch>, state: State) => Step<State, Patch> | null;
};

export function historyOver<State, Patch>({
  apply,
  inverse,
}: Patching<State, Patch>): StepHistorian<State, Patch> {
  return {
    record(history, state, patches, writing = null) {
      const last = history.done.at(-1);
      const goesOn = writing !== null && last?.writing === writing;
      const entry: StepEntry<Patch> = {
        forward: patches,
        backward: goesOn ? last.backward : inverse(state, patches),
        writing,
      };
      return {
        history: { done: [...(goesOn ? history.done.slice(0, -1) : history.done), entry], undone: [] },
        state: apply(state, patches),
        patches,
      };
    },

    undo(history, state) {
      const entry = history.done.at(-1);
      if (entry === undefined) return null;
      // Taken anew from the state: what was changed outside the history since then is what a redo brings back.
      const forward = inverse(state, entry.backward);
      return {
        history: {
          done: history.done.slice(0, -1),
          undone: [...history.undone, { forward, backward: entry.backward, writing: null }],
        },
        state: apply(state, entry.backward),
        patches: entry.backward,
      };
    },

    redo(history, state) {
      const entry = history.undone.at(-1);
      if (entry === undefined) return null;
      const backward = inverse(state, entry.forward);
      return {
        history: {
          done: [...history.done, { forward: entry.forward, backward, writing: null }],
          undone: history.undone.slice(0, -1),
        },
        state: apply(state, entry.forward),
        patches: entry.forward,
      };
    },
  };
}
