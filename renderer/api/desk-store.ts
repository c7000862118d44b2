/**
 * Work of a case while its screens are open: shows what was done at once and saves it in the order it was done. One
 * store a case, kept while the window is; the history outlives a change of station.
 */
import { QueryObserver } from '@tanstack/react-query';
import type { DeskClerk, WorkDesk } from '#analysis/history/work-desk.ts';
import type { AppError } from '#shared-types/errors.ts';
import { toastError } from '../ui/toaster.tsx';
import { queryClient } from './query-client.ts';

export type DeskReading<State, Patch> = {
  /** Null until the work has been read, or when it could not be. */
  readonly desk: WorkDesk<State, Patch> | null;
  readonly error: unknown;
};

export type DeskStore<State, Patch> = {
  readonly read: () => DeskReading<State, Patch>;
  readonly subscribe: (changed: () => void) => () => void;
  /** Carries out a gesture and saves it; `writing` as in analysis/history/step-history.ts. */
  readonly perform: (patches: readonly Patch[], writing?: string) => void;
  /** Answers what was put back, null when there was nothing to take back. */
  readonly undo: () => readonly Patch[] | null;
  readonly redo: () => readonly Patch[] | null;
  /** Asks the library for something outside the history, after what was done before; `ask` answers the desk then. */
  readonly outside: (
    ask: (desk: WorkDesk<State, Patch> | null) => Promise<WorkDesk<State, Patch> | null>,
  ) => Promise<void>;
  /** When everything done so far has been saved or refused. */
  readonly settled: () => Promise<unknown>;
  /** Reads everything again after it could not be read. */
  readonly retry: () => void;
};

export type DeskMeans<State, Patch, Change, Outcome, Answer> = {
  readonly clerk: DeskClerk<State, Patch, Change, Outcome>;
  /** As queries.ts has it, so that an event makes this reading stale too. */
  readonly queryKey: readonly [string, unknown];
  readonly readLibrary: () => Promise<Answer>;
  readonly stateOf: (answer: Answer) => State;
  readonly commit: (changes: Change[]) => Promise<Outcome>;
};

export function openDeskStore<State, Patch, Change, Outcome, Answer>(
  means: DeskMeans<State, Patch, Change, Outcome, Answer>,
): DeskStore<State, Patch> {
  const { clerk, queryKey, readLibrary, stateOf, commit } = means;
  let reading: DeskReading<State, Patch> = { desk: null, error: null };
  const listeners = new Set<() => void>();
  /** What the library is asked, one after the other: two answers can never cross. */
  let turn: Promise<unknown> = Promise.resolve();
  let writes = 0;
  let writing = false;
  let readingMissed = false;
  /** The first of what is pending has been sent, and its answer has not come. */
  let sent = false;
  /** The page went away with everything that was done: what comes after that is read anew first. */
  let gone = false;

  const set = (next: DeskReading<State, Patch>) => {
    if (next.desk === reading.desk && next.error === reading.error) return;
    reading = next;
    for (const changed of listeners) changed();
  };

  const inTurn = (ask: () => Promise<void>): Promise<void> => {
    const asked = turn.then(async () => {
      writing = true;
      try {
        await ask();
      } finally {
        writing = false;
      }
    });
    turn = asked.then(catchUp, catchUp);
    return asked;
  };

  /** Another window's change that came by while something was being saved is read now. */
  const catchUp = () => {
    if (!readingMissed || (reading.desk?.pending.length ?? 0) > 0) return;
    readingMissed = false;
    void queryClient.invalidateQueries({ queryKey });
  };

  const saveNext = async () => {
    const { desk } = reading;
    const changes = desk === null || gone ? null : clerk.nextChanges(desk);
    if (changes === null) return;
    let outcome = null;
    if (changes.length > 0) {
      writes += 1;
      sent = true;
      try {
        outcome = await commit(changes);
      } catch (error) {
        if (gone) return;
        toastError(error);
        await rollBack();
        return;
      } finally {
        sent = false;
      }
    }
    if (gone) return;
    if (reading.desk !== null) set({ desk: clerk.accepted(reading.desk, outcome), error: null });
  };

  const rollBack = async () => {
    try {
      const library = stateOf(await readLibrary());
      const { desk } = reading;
      set({ desk: desk === null ? clerk.deskOf(library) : clerk.refused(desk, library), error: null });
    } catch (error) {
      set({ desk: null, error });
    }
  };

  /** Work is saved a gesture after the other; a page that goes away would take those with it that wait their turn. */
  const sendTheRest = () => {
    const changes = reading.desk === null || gone ? null : clerk.lastChanges(reading.desk, sent);
    if (changes === null) return;
    gone = true;
    // The answer finds nobody here; should the page come back, it reads what came of it.
    commit(changes).catch(() => undefined);
  };

  /** Out of the browser's memory, as it was left. */
  const comeBack = () => {
    if (!gone) return;
    gone = false;
    set({ desk: null, error: null });
    void inTurn(rollBack);
  };

  window.addEventListener('pagehide', sendTheRest);
  window.addEventListener('pageshow', comeBack);

  const step = (next: WorkDesk<State, Patch> | null): readonly Patch[] | null => {
    if (next === null || next === reading.desk) return null;
    set({ desk: next, error: null });
    void inTurn(saveNext);
    return next.pending.at(-1)?.patches ?? null;
  };

  const listenToLibrary = () => {
    let taken: Answer | undefined;
    let writesAtFetch = writes;
    let calmAtFetch = !writing;
    const observer = new QueryObserver<Answer, AppError>(queryClient, { queryKey, queryFn: readLibrary });
    const receive = (result: ReturnType<typeof observer.getCurrentResult>) => {
      if (result.fetchStatus === 'fetching') {
        writesAtFetch = writes;
        calmAtFetch = !writing;
      }
      if (result.isError && reading.desk === null) set({ desk: null, error: result.error });
      const { desk } = reading;
      if (result.data === undefined || result.fetchStatus !== 'idle') return;
      if (result.data === taken && desk !== null) return;
      const current = calmAtFetch && !writing && writes === writesAtFetch && desk?.pending.length === 0;
      if (desk !== null && !current) {
        readingMissed = true;
        return;
      }
      taken = result.data;
      const library = stateOf(result.data);
      set({ desk: desk === null ? clerk.deskOf(library) : clerk.readAnew(desk, library), error: null });
    };
    const end = observer.subscribe(receive);
    receive(observer.getCurrentResult());
    return end;
  };

  let stopListening: (() => void) | null = null;

  return {
    read: () => reading,
    subscribe: (changed) => {
      listeners.add(changed);
      stopListening ??= listenToLibrary();
      return () => {
        listeners.delete(changed);
        if (listeners.size > 0) return;
        stopListening?.();
        stopListening = null;
      };
    },
    perform: (patches, writing) => {
      if (reading.desk !== null) step(clerk.perform(reading.desk, patches, writing));
    },
    undo: () => (reading.desk === null ? null : step(clerk.undoAt(reading.desk))),
    redo: () => (reading.desk === null ? null : step(clerk.redoAt(reading.desk))),
    outside: (ask) =>
      inTurn(async () => {
        writes += 1;
        // Whatever comes of it: a refusal means that somebody else changed the thing.
        readingMissed = true;
        const desk = await ask(reading.desk);
        if (desk !== null) set({ desk, error: null });
      }),
    settled: () => turn,
    retry: () => {
      set({ desk: null, error: null });
      void inTurn(rollBack);
    },
  };
}
