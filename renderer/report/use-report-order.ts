/** Everything of a case that stands in its report, as it is now: whatever of it changes, the pages are made again. */
import { useMemo } from 'react';
import type { TeardownCase } from '#shared-types/case.ts';
import { useAnswer } from '../api/queries.ts';
import { benchOfCase, useBench } from '../marks/bench-store.ts';
import type { ReportOrder } from './use-report.ts';

export function useReportOrder(teardownCase: TeardownCase): {
  /** Null until all of it is read. */
  readonly order: ReportOrder | null;
  readonly error: unknown;
  readonly retry: () => void;
} {
  const { id: caseId, revision: caseRevision } = teardownCase;
  const photos = useAnswer('photos.list', { caseId });
  const register = useAnswer('photos.register', { caseId });
  const parties = useAnswer('parties.list', { caseId });
  const custody = useAnswer('custody.list', { caseId });
  const chain = useAnswer('chain.read', { caseId });
  const plan = useAnswer('report-plan.read', { caseId });
  const settings = useAnswer('settings.read', {});
  const { desk, error: benchError } = useBench(caseId);

  const bench = desk?.confirmed ?? null;
  const paper = settings.data?.paper ?? null;
  const read = [photos, register, parties, custody, chain, plan, settings];
  const { data: photoList } = photos;
  const { data: entries } = register;
  const { data: partyList } = parties;
  const { data: custodyList } = custody;
  const { data: drawn } = chain;
  const { data: planned } = plan;
  const order = useMemo((): ReportOrder | null => {
    if (photoList === undefined || entries === undefined || partyList === undefined) return null;
    if (custodyList === undefined || drawn === undefined || planned === undefined) return null;
    if (bench === null || paper === null) return null;
    return {
      caseRevision,
      photos: photoList,
      register: entries,
      parties: partyList,
      custody: custodyList,
      chain: drawn,
      plan: planned,
      bench,
      paper,
    };
  }, [caseRevision, photoList, entries, partyList, custodyList, drawn, planned, bench, paper]);

  return {
    order,
    error: read.map(({ error }) => error).find((error) => error !== null) ?? benchError,
    retry: () => {
      for (const answer of read) void answer.refetch();
      if (benchError !== null) benchOfCase(caseId).retry();
    },
  };
}
