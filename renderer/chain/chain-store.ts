/** The chain of each case while its screen is open. */
import { useSyncExternalStore } from 'react';
import { chainClerk } from '#analysis/chain/chain-desk.ts';
import { chainStateOf, type ChainPatch, type ChainState } from '#analysis/chain/chain-state.ts';
import type { CaseId } from '#shared-types/ids.ts';
import { call } from '../api/client.ts';
import { openDeskStore, type DeskReading, type DeskStore } from '../api/desk-store.ts';

export type ChainStore = DeskStore<ChainState, ChainPatch>;

const stores = new Map<CaseId, ChainStore>();

export function chainOfCase(caseId: CaseId): ChainStore {
  const known = stores.get(caseId);
  if (known !== undefined) return known;
  const opened = openDeskStore({
    clerk: chainClerk,
    queryKey: ['chain.read', { caseId }],
    readLibrary: () => call('chain.read', { caseId }),
    stateOf: chainStateOf,
    commit: (changes) => call('chain.commit', { caseId, changes }),
  });
  stores.set(caseId, opened);
  return opened;
}

export function useChain(caseId: CaseId): DeskReading<ChainState, ChainPatch> {
  const store = chainOfCase(caseId);
  return useSyncExternalStore(store.subscribe, store.read);
}
