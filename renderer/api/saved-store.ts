/** When this window last heard that something of a case was written, for "saved 11:14:07". */
import { create } from 'zustand';
import type { CaseId } from '#shared-types/ids.ts';

type SavedStore = { readonly savedAt: ReadonlyMap<CaseId, Date> };

const useSavedStore = create<SavedStore>(() => ({ savedAt: new Map() }));

export function noteSaved(caseId: CaseId, at: Date): void {
  useSavedStore.setState(({ savedAt }) => ({ savedAt: new Map(savedAt).set(caseId, at) }));
}

export function useSavedAt(caseId: CaseId): Date | null {
  return useSavedStore(({ savedAt }) => savedAt.get(caseId) ?? null);
}
