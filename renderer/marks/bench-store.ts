/** Marks and findings of each case while its screens are open. */
import { useSyncExternalStore } from 'react';
import { benchClerk, classified } from '#analysis/marks/bench-desk.ts';
import { benchOf, type BenchPatch, type BenchState } from '#analysis/marks/bench-state.ts';
import { AppError } from '#shared-types/errors.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import type { CaseId, FindingId } from '#shared-types/ids.ts';
import { call } from '../api/client.ts';
import { openDeskStore, type DeskReading, type DeskStore } from '../api/desk-store.ts';

export type Bench = DeskStore<BenchState, BenchPatch> & {
  /** Gives a finding another class; rejects with AppError when the library refuses. */
  readonly classify: (findingId: FindingId, to: DamageClass, reason: string) => Promise<void>;
};

const benches = new Map<CaseId, Bench>();

export function benchOfCase(caseId: CaseId): Bench {
  const known = benches.get(caseId);
  if (known !== undefined) return known;
  const bench = openBench(caseId);
  benches.set(caseId, bench);
  return bench;
}

export function useBench(caseId: CaseId): DeskReading<BenchState, BenchPatch> {
  const bench = benchOfCase(caseId);
  return useSyncExternalStore(bench.subscribe, bench.read);
}

function openBench(caseId: CaseId): Bench {
  const store = openDeskStore({
    clerk: benchClerk,
    queryKey: ['bench.read', { caseId }],
    readLibrary: () => call('bench.read', { caseId }),
    stateOf: benchOf,
    commit: (changes) => call('bench.commit', { caseId, changes }),
  });
  /** The desk as it is when the answer comes: work went on meanwhile. */
  const deskNow = () => store.read().desk;
  return {
    ...store,
    classify: (findingId, to, reason) =>
      store.outside(async (desk) => {
        const revision = desk?.confirmed.findings.get(findingId)?.revision ?? null;
        if (revision === null) throw new AppError('not-found', { thing: 'finding' });
        const finding = await call('findings.classify', { findingId, revision, class: to, reason });
        const now = deskNow();
        return now === null ? null : classified(now, finding);
      }),
  };
}
