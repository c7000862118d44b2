/**
 * The bench between page and library: what the library is known to hold, what was done since and waits to be saved,
 * and the history. Pure: the page sends `nextChanges` one at a time and hands the answers back in.
 */
import type { BenchChange, BenchOutcome } from '#shared-types/bench-change.ts';
import type { Finding } from '#shared-types/finding.ts';
import {
  applyPatches,
  foldOutcome,
  sameRevisions,
  toChanges,
  type BenchPatch,
  type BenchState,
} from './bench-state.ts';
import { emptyHistory, record, redo, undo, type History, type HistoryStep } from './history.ts';

/** Something done that the library has not answered to yet. */
type Pending = {
  readonly patches: readonly BenchPatch[];
  /** The history to go back to if the library refuses. */
  readonly historyBefore: History;
};

export type BenchDesk = {
  /** As the library last answered. */
  readonly confirmed: BenchState;
  /** Oldest first. */
  readonly pending: readonly Pending[];
  /** What the user sees: `confirmed` with everything pending done to it. */
  readonly shown: BenchState;
  readonly history: History;
};

export function deskOf(state: BenchState): BenchDesk {
  return { confirmed: state, pending: [], shown: state, history: emptyHistory };
}

/** Carries out a gesture; `writing` as in history.ts. */
export function perform(
  desk: BenchDesk,
  patches: readonly BenchPatch[],
  writing: string | null = null,
): BenchDesk {
  return patches.length === 0 ? desk : taken(desk, record(desk.history, desk.shown, patches, writing));
}

/** Takes the latest gesture back; null when there is none. */
export function undoAt(desk: BenchDesk): BenchDesk | null {
  const step = undo(desk.history, desk.shown);
  return step === null ? null : taken(desk, step);
}

/** Does again what was taken back last; null when there is nothing. */
export function redoAt(desk: BenchDesk): BenchDesk | null {
  const step = redo(desk.history, desk.shown);
  return step === null ? null : taken(desk, step);
}

function taken(desk: BenchDesk, step: HistoryStep): BenchDesk {
  return {
    ...desk,
    pending: [...desk.pending, { patches: step.patches, historyBefore: desk.history }],
    shown: step.state,
    history: step.history,
  };
}

/** What to ask of the library next: null when nothing waits, empty when what waits changes nothing there. */
export function nextChanges(desk: BenchDesk): BenchChange[] | null {
  const next = desk.pending[0];
  return next === undefined ? null : toChanges(desk.confirmed, next.patches);
}

/** The library carried out `nextChanges`; `outcome` is null when there was nothing to ask for. */
export function accepted(desk: BenchDesk, outcome: BenchOutcome | null): BenchDesk {
  const confirmed = outcome === null ? desk.confirmed : foldOutcome(desk.confirmed, outcome);
  return standingOn({ ...desk, pending: desk.pending.slice(1) }, confirmed);
}

/**
 * The library refused `nextChanges`: everything pending is dropped and what it holds now is shown. What was done
 * before can still be undone, unless somebody else changed the library meanwhile.
 */
export function refused(desk: BenchDesk, library: BenchState): BenchDesk {
  const before = desk.pending[0]?.historyBefore ?? desk.history;
  return {
    confirmed: library,
    pending: [],
    shown: library,
    history: sameRevisions(desk.confirmed, library) ? before : emptyHistory,
  };
}

/**
 * Another reading of the library, made while nothing was pending. If somebody else changed something, the history
 * is forgotten: undoing across their change would silently undo it too.
 */
export function readAnew(desk: BenchDesk, library: BenchState): BenchDesk {
  return sameRevisions(desk.confirmed, library) ? desk : deskOf(library);
}

/** A finding got its class, with a reason, outside the history. */
export function classified(desk: BenchDesk, finding: Finding): BenchDesk {
  return standingOn(
    desk,
    foldOutcome(desk.confirmed, {
      marks: [],
      findings: [finding],
      removedMarkIds: [],
      removedFindingIds: [],
    }),
  );
}

function standingOn(desk: BenchDesk, confirmed: BenchState): BenchDesk {
  const shown = desk.pending.reduce((state, { patches }) => applyPatches(state, patches), confirmed);
  return { ...desk, confirmed, shown };
}
