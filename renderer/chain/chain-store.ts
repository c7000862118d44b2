/**
 * The chain of a case while its screen is open: shows what was done at once and saves it in the order it was done. One
 * store a case, kept while the window is; the history outlives a change of station.
 */
import { QueryObserver } from '@tanstack/react-query';
import { useSyncExternalStore } from 'react';
import {
  accepted,
  deskOf,
  nextChanges,
  perform,
  readAnew,
  redoAt,
  refused,
  undoAt,
  type ChainDesk,
} from '#analysis/chain/chain-desk.ts';
import { chainStateOf, type ChainPatch } from '#analysis/chain/chain-state.ts';
import type { Chain } from '#shared-types/chain.ts';
import type { AppError } from '#shared-types/errors.ts';
import type { CaseId } from '#shared-types/ids.ts';
import { call } from '../api/client.ts';
import { readAgain } from '../api/queries.ts';
import { queryClient } from '../api/query-client.ts';
import { toastError } from '../ui/toaster.tsx';

export type ChainReading = {
  /** Null until the chain has been read, or when it could not be. */
  readonly desk: ChainDesk | null;
  readonly error: unknown;
};

export type ChainStore = {
  readonly read: () => ChainReading;
  readonly subscribe: (changed: () => void) => () => void;
  readonly perform: (patches: readonly ChainPatch[]) => void;
  /** Whether there was something to take back. */
  readonly undo: () => boolean;
  readonly redo: () => boolean;
  /** When everything done so far has been saved or refused. */
  readonly settled: () => Promise<unknown>;
  /** Reads everything again after it could not be read. */
  readonly retry: () => void;
};

const stores = new Map<CaseId, ChainStore>();

export function chainOfCase(caseId: CaseId): ChainStore {
  const known = stores.get(caseId);
  if (known !== undefined) return known;
  const opened = openStore(caseId);
  stores.set(caseId, opened);
  return opened;
}

export function useChain(caseId: CaseId): ChainReading {
  const store = chainOfCase(caseId);
  return useSyncExternalStore(store.subscribe, store.read);
}

function openStore(caseId: CaseId): ChainStore {
  let reading: ChainReading = { desk: null, error: null };
  const listeners = new Set<() => void>();
  /** What the library is asked, one after the other: two answers can never cross. */
  let turn: Promise<unknown> = Promise.resolve();
  let writes = 0;
  let writing = false;
  let readingMissed = false;

  const set = (next: ChainReading) => {
    if (next.desk === reading.desk && next.error === reading.error) return;
    reading = next;
    for (const changed of listeners) changed();
  };

  const inTurn = (ask: () => Promise<void>) => {
    const asked = turn.then(async () => {
      writing = true;
      try {
        await ask();
      } finally {
        writing = false;
      }
    });
    turn = asked.then(catchUp, catchUp);
  };

  /** Another window's change that came by while something was being saved is read now. */
  const catchUp = () => {
    if (!readingMissed || (reading.desk?.pending.length ?? 0) > 0) return;
    readingMissed = false;
    void readAgain('chain.read', { caseId });
  };

  const saveNext = async () => {
    const { desk } = reading;
    const changes = desk === null ? null : nextChanges(desk);
    if (changes === null) return;
    let outcome = null;
    if (changes.length > 0) {
      writes += 1;
      try {
        outcome = await call('chain.commit', { caseId, changes });
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
      const library = chainStateOf(await call('chain.read', { caseId }));
      const { desk } = reading;
      set({ desk: desk === null ? deskOf(library) : refused(desk, library), error: null });
    } catch (error) {
      set({ desk: null, error });
    }
  };

  const step = (next: ChainDesk | null): boolean => {
    if (next === null || next === reading.desk) return false;
    set({ desk: next, error: null });
    inTurn(saveNext);
    return true;
  };

  const listenToLibrary = () => {
    let taken: Chain | undefined;
    let writesAtFetch = writes;
    let calmAtFetch = !writing;
    const observer = new QueryObserver<Chain, AppError>(queryClient, {
      queryKey: ['chain.read', { caseId }],
      queryFn: () => call('chain.read', { caseId }),
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
      const library = chainStateOf(result.data);
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
    perform: (patches) => {
      if (reading.desk !== null) step(perform(reading.desk, patches));
    },
    undo: () => reading.desk !== null && step(undoAt(reading.desk)),
    redo: () => reading.desk !== null && step(redoAt(reading.desk)),
    settled: () => turn,
    retry: () => {
      set({ desk: null, error: null });
      inTurn(rollBack);
    },
  };
}
