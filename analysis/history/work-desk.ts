/**
 * Work between page and library, over any state that patches change: what the library is known to hold, what was done
 * since and waits to be saved, and the history. Pure: the page sends `nextChanges` one at a time and hands the answers
 * back in.
 */
import { historyOver, type Patching, type Step, type StepHistory } from './step-history.ts';

/** Something done that the library has not answered to yet. */
export type PendingWork<Patch> = {
  readonly patches: readonly Patch[];
  /** The history to go back to if the library refuses. */
  readonly historyBefore: StepHistory<Patch>;
};

export type WorkDesk<State, Patch> = {
  /** As the library last answered. */
  readonly confirmed: State;
  /** Oldest first. */
  readonly pending: readonly PendingWork<Patch>[];
  /** What the user sees: `confirmed` with everything pending done to it. */
  readonly shown: State;
  readonly history: StepHistory<Patch>;
};

export type Saving<State, Patch, Change, Outcome> = Patching<State, Patch> & {
  /** What to ask of the library so that `confirmed` becomes what it is after the patches. */
  readonly toChanges: (confirmed: State, patches: readonly Patch[]) => Change[];
  readonly foldOutcome: (state: State, outcome: Outcome) => State;
  /** `after`, which is `before` with patches applied, as the library will most likely answer it once it has saved it. */
  readonly likelySaved: (before: State, after: State) => State;
  /** Whether both hold the same things at the same revisions. */
  readonly sameRevisions: (one: State, other: State) => boolean;
};

export type DeskClerk<State, Patch, Change, Outcome> = {
  readonly deskOf: (state: State) => WorkDesk<State, Patch>;
  readonly perform: (
    desk: WorkDesk<State, Patch>,
    patches: readonly Patch[],
    writing?: string | null,
  ) => WorkDesk<State, Patch>;
  /** Takes the latest gesture back; null when there is none. */
  readonly undoAt: (desk: WorkDesk<State, Patch>) => WorkDesk<State, Patch> | null;
  /** Does again what was taken back last; null when there is nothing. */
  readonly redoAt: (desk: WorkDesk<State, Patch>) => WorkDesk<State, Patch> | null;
  /** What to ask of the library next: null when nothing waits, empty when what waits changes nothing there. */
  readonly nextChanges: (desk: WorkDesk<State, Patch>) => Change[] | null;
  /**
   * What to ask in one go when the page goes away and no answer will come any more. `underWay`: `nextChanges` have been
   * sent, and are taken as carried out; should they be refused, so will these be, and nothing is saved that stood on
   * what was not. Null when nothing else waits.
   */
  readonly lastChanges: (desk: WorkDesk<State, Patch>, underWay: boolean) => Change[] | null;
  /** The library carried out `nextChanges`; `outcome` is null when there was nothing to ask for. */
  readonly accepted: (desk: WorkDesk<State, Patch>, outcome: Outcome | null) => WorkDesk<State, Patch>;
  /** The library tells of something that was done outside the history; what is pending stands on it. */
  readonly told: (desk: WorkDesk<State, Patch>, outcome: Outcome) => WorkDesk<State, Patch>;
  /**
   * The library refused `nextChanges`: everything pending is dropped and what it holds now is shown. What was done
   * before can still be undone, unless somebody else changed the library meanwhile.
   */
  readonly refused: (desk: WorkDesk<State, Patch>, library: State) => WorkDesk<State, Patch>;
  /**
   * Another reading of the library, made while nothing was pending. If somebody else changed something, the history
   * is forgotten: undoing across their change would silently undo it too.
   */
  readonly readAnew: (desk: WorkDesk<State, Patch>, library: State) => WorkDesk<State, Patch>;
};

export function deskOver<State, Patch, Change, Outcome>(
  saving: Saving<State, Patch, Change, Outcome>,
): DeskClerk<State, Patch, Change, Outcome> {
  type Desk = WorkDesk<State, Patch>;
  const { apply, toChanges, foldOutcome, likelySaved, sameRevisions } = saving;
  const { record, undo, redo } = historyOver(saving);

  const deskOf = (state: State): Desk => ({
    confirmed: state,
    pending: [],
    shown: state,
    history: { done: [], undone: [] },
  });

  const taken = (desk: Desk, step: Step<State, Patch>): Desk => ({
    ...desk,
    pending: [...desk.pending, { patches: step.patches, historyBefore: desk.history }],
    shown: step.state,
    history: step.history,
  });

  const takenIfAny = (desk: Desk, step: Step<State, Patch> | null) =>
    step === null ? null : taken(desk, step);

  const standingOn = (desk: Desk, confirmed: State): Desk => ({
    ...desk,
    confirmed,
    shown: desk.pending.reduce((state, { patches }) => apply(state, patches), confirmed),
  });

  return {
    deskOf,
    perform: (desk, patches, writing = null) =>
      patches.length === 0 ? desk : taken(desk, record(desk.history, desk.shown, patches, writing)),
    undoAt: (desk) => takenIfAny(desk, undo(desk.history, desk.shown)),
    redoAt: (desk) => takenIfAny(desk, redo(desk.history, desk.shown)),
    nextChanges: (desk) => {
      const next = desk.pending[0];
      return next === undefined ? null : toChanges(desk.confirmed, next.patches);
    },
    lastChanges: ({ confirmed, pending }, underWay) => {
      const [sent] = underWay ? pending : [];
      const held = sent === undefined ? confirmed : likelySaved(confirmed, apply(confirmed, sent.patches));
      const patches = pending.slice(sent === undefined ? 0 : 1).flatMap((work) => work.patches);
      const changes = toChanges(held, patches);
      return changes.length === 0 ? null : changes;
    },
    accepted: (desk, outcome) => {
      const confirmed = outcome === null ? desk.confirmed : foldOutcome(desk.confirmed, outcome);
      return standingOn({ ...desk, pending: desk.pending.slice(1) }, confirmed);
    },
    told: (desk, outcome) => standingOn(desk, foldOutcome(desk.confirmed, outcome)),
    refused: (desk, library) => ({
      confirmed: library,
      pending: [],
      shown: library,
      history: sameRevisions(desk.confirmed, library)
        ? (desk.pending[0]?.historyBefore ?? desk.history)
        : { done: [], undone: [] },
    }),
    readAnew: (desk, library) => (sameRevisions(desk.confirmed, library) ? desk : deskOf(library)),
  };
}
