/**
 * Marks and findings of a case while its screens are open: shows what was done at once and saves it in the order it
 * was done. One store a case, kept while the window is; the history outlives a change of photo or station.
 */
import { QueryObserver } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import {
  accepted,
  classified,
  deskOf,
  nextChanges,
  perform,
  readAnew,
  redoAt,
  refused,
  undoAt,
  type BenchDesk,
} from '#analysis/marks/bench-desk.ts';
import { benchOf, type BenchPatch } from '#analysis/marks/bench-state.ts';
import type { ResponseOf } from '#shared-types/api-contract.ts';
import { AppError } from '#shared-types/errors.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { CaseId, FindingId } from '#shared-types/ids.ts';
import { call } from '../api/client.ts';
import { readAgain } from '../api/queries.ts';
import { queryClient } from '../api/query-client.ts';
import { toastError } from '../ui/toaster.tsx';

export type BenchReading = {
  /** Null until the case has been read, or when it could not be. */
  readonly desk: BenchDesk | null;
  readonly error: unknown;
};

export type Bench = {
  readonly read: () => BenchReading;
  readonly subscribe: (changed: () => void) => () => void;
  /** Carries out a gesture and saves it; `writing` as in analysis/marks/history.ts. */
  readonly perform: (patches: readonly BenchPatch[], writing?: string) => void;
  /** Answers what was put back, null when there was nothing to take back. */
  readonly undo: () => readonly BenchPatch[] | null;
  readonly redo: () => readonly BenchPatch[] | null;
  /** Gives a finding another class; rejects with AppError when the library refuses. */
  readonly classify: (findingId: FindingId, to: DamageClass, reason: string) => Promise<void>;
  /** Reads everything again after it could not be read. */
  readonly retry: () => void;
};

const benches = new Map<CaseId, Bench>();

export function benchOfCase(caseId: CaseId): Bench {
  const known = benches.get(caseId);
  if (known !== undefined) return known;
  const bench = openBench(caseId);
  benches.set(caseId, bench);
  return bench;
}

export function useBench(caseId: CaseId): BenchReading {
  const bench = benchOfCase(caseId);
  return useSyncExternalStore(bench.subscribe, bench.read);
}

function openBench(caseId: CaseId): Bench {
  let reading: BenchReading = { desk: null, error: null };
  const listeners = new Set<() => void>();
  /** What the library is asked, one after the other: two answers can never cross. */
  let turn: Promise<unknown> = Promise.resolve();
  let writes = 0;
  let writing = false;
  let readingMissed = false;

  const set = (next: BenchReading) => {
    if (next.desk === reading.desk && next.error === reading.error) return;
    reading = next;
    for (const changed of listeners) changed();
  };

  const inTurn = <Answer>(ask: () => Promise<Answer>): Promise<Answer> => {
    const asked = turn.then(async () => {
      writing = true;
      try {
        return await ask();
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
    void readAgain('bench.read', { caseId });
  };

  const saveNext = async () => {
    const { desk } = reading;
    const changes = desk === null ? null : nextChanges(desk);
    if (changes === null) return;
    let outcome = null;
    if (changes.length > 0) {
      writes += 1;
      try {
        outcome = await call('bench.commit', { caseId, changes });
      } catch (error) {
        toastError(error);
        await rollBack();
        return;
      }
    }
    if (reading.desk !== null) set({ desk: accepted(reading.desk, outcome), error: null });
  };

  const rollBack = async () => {
    try {
      const library = benchOf(await call('bench.read', { caseId }));
      const { desk } = reading;
      set({ desk: desk === null ? deskOf(library) : refused(desk, library), error: null });
    } catch (error) {
      set({ desk: null, error });
    }
  };

  const step = (next: BenchDesk | null): readonly BenchPatch[] | null => {
    if (next === null || next === reading.desk) return null;
    set({ desk: next, error: null });
    void inTurn(saveNext);
    return next.pending.at(-1)?.patches ?? null;
  };

  const listenToLibrary = () => {
    let taken: ResponseOf<'bench.read'> | undefined;
    let writesAtFetch = writes;
    let calmAtFetch = !writing;
    const observer = new QueryObserver<ResponseOf<'bench.read'>, AppError>(queryClient, {
      queryKey: ['bench.read', { caseId }],
      queryFn: () => call('bench.read', { caseId }),
    });
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
      const library = benchOf(result.data);
      set({ desk: desk === null ? deskOf(library) : readAnew(desk, library), error: null });
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
      if (reading.desk !== null) step(perform(reading.desk, patches, writing));
    },
    undo: () => (reading.desk === null ? null : step(undoAt(reading.desk))),
    redo: () => (reading.desk === null ? null : step(redoAt(reading.desk))),
    classify: (findingId, to, reason) =>
      inTurn(async () => {
        const revision = reading.desk?.confirmed.findings.get(findingId)?.revision ?? null;
        if (revision === null) throw new AppError('not-found', { thing: 'finding' });
        writes += 1;
        // Whatever comes of it: a refusal means that somebody else changed the finding.
        readingMissed = true;
        const finding = await call('findings.classify', { findingId, revision, class: to, reason });
        if (reading.desk !== null) set({ desk: classified(reading.desk, finding), error: null });
      }),
    retry: () => {
      set({ desk: null, error: null });
      void inTurn(rollBack);
    },
  };
}
