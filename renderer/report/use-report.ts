/** Keeps the pages of the report up to date: made when the screen opens, made again after the case changed. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { BenchState } from '#analysis/marks/bench-state.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { CaseId, JobId } from '#shared-types/ids.ts';
import type { FinishedDocument, Job } from '#shared-types/job.ts';
import type { Photo } from '#shared-types/photo.ts';
import type { PaperSize } from '#shared-types/settings.ts';
import { call } from '../api/client.ts';
import { jobIsUnderWay, noteJob, useJob, useJobsOf, useJobStore } from '../api/job-store.ts';
import { toastError } from '../ui/toaster.tsx';

/** What the pages are made of: the same objects mean the same pages. */
export type ReportOrder = {
  readonly caseRevision: number;
  readonly photos: readonly Photo[];
  readonly bench: BenchState;
  readonly paper: PaperSize;
};

export type ReportMaking = {
  readonly job: Job | null;
  /** The last pages that were finished, older than the case while new ones are made. */
  readonly document: FinishedDocument | null;
  /** Why the last making could not begin; null once one did. */
  readonly error: unknown;
  readonly make: () => void;
  readonly stop: () => void;
};

/** A case that is being worked on changes in bursts. */
const calmMs = 1_200;

const begun = new Map<CaseId, { readonly order: ReportOrder; readonly jobId: JobId }>();
/** A document is at hand only in the session that made it. */
const begunHere = new Set<JobId>();

export function useReport(teardownCase: TeardownCase, order: ReportOrder | null): ReportMaking {
  const caseId = teardownCase.id;
  const [jobId, setJobId] = useState<JobId | null>(() => begun.get(caseId)?.jobId ?? null);
  const [error, setError] = useState<unknown>(null);
  const job = useJob(jobId);
  const turn = useRef(0);

  const make = useCallback(
    async (what: ReportOrder) => {
      turn.current += 1;
      const mine = turn.current;
      try {
        await stopUnderWay(caseId);
        const made = await call('reports.make', { caseId, paper: what.paper });
        begunHere.add(made.id);
        noteJob(made);
        if (mine !== turn.current) return;
        begun.set(caseId, { order: what, jobId: made.id });
        setJobId(made.id);
        setError(null);
      } catch (refusal) {
        if (mine === turn.current) setError(refusal);
      }
    },
    [caseId],
  );

  const caseRevision = order?.caseRevision ?? null;
  const photos = order?.photos ?? null;
  const bench = order?.bench ?? null;
  const paper = order?.paper ?? null;
  useEffect(() => {
    if (caseRevision === null || photos === null || bench === null || paper === null) return;
    const what = { caseRevision, photos, bench, paper };
    const last = begun.get(caseId);
    if (last !== undefined && sameOrder(last.order, what)) return;
    const timer = window.setTimeout(() => void make(what), last === undefined ? 0 : calmMs);
    return () => window.clearTimeout(timer);
  }, [caseId, caseRevision, photos, bench, paper, make]);

  const finished = useJobsOf(caseId, 'report').find(
    (known) => begunHere.has(known.id) && known.state === 'done' && known.document !== null,
  );
  return {
    job,
    document: finished?.document ?? null,
    error,
    make: () => {
      if (order !== null) void make(order);
    },
    stop: () => void stopUnderWay(caseId).catch(toastError),
  };
}

function sameOrder(one: ReportOrder, other: ReportOrder): boolean {
  return (
    one.caseRevision === other.caseRevision &&
    one.photos === other.photos &&
    one.bench === other.bench &&
    one.paper === other.paper
  );
}

/** Pages that nobody will look at need not be finished. */
async function stopUnderWay(caseId: CaseId): Promise<void> {
  const jobId = begun.get(caseId)?.jobId;
  const job = jobId === undefined ? undefined : useJobStore.getState().jobs.get(jobId);
  if (job !== undefined && jobIsUnderWay(job)) noteJob(await call('jobs.stop', { jobId: job.id }));
}
