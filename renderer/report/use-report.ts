/** Keeps the pages of the report up to date: made when the screen opens, made again after the case changed. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { BenchState } from '#analysis/marks/bench-state.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { Chain } from '#shared-types/chain.ts';
import type { CustodyEntry } from '#shared-types/custody.ts';
import type { CaseId, JobId } from '#shared-types/ids.ts';
import type { FinishedDocument, Job } from '#shared-types/job.ts';
import type { Party } from '#shared-types/party.ts';
import type { Photo, RegisterEntry } from '#shared-types/photo.ts';
import type { ReportPlan } from '#shared-types/report-plan.ts';
import type { PaperSize } from '#shared-types/settings.ts';
import { call } from '../api/client.ts';
import { jobIsUnderWay } from '../api/job-news.ts';
import { noteBegun, useJob, useJobsOf, useJobStore } from '../api/job-store.ts';
import { toastError } from '../ui/toaster.tsx';

/** What the pages are made of: the same objects mean the same pages. */
export type ReportOrder = {
  readonly caseRevision: number;
  readonly photos: readonly Photo[];
  readonly bench: BenchState;
  readonly plan: ReportPlan;
  readonly register: readonly RegisterEntry[];
  readonly parties: readonly Party[];
  readonly custody: readonly CustodyEntry[];
  readonly chain: Chain;
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

/** Changes come in bursts: one to several lists at once, say. */
const calmMs = 20;
/**
 * Pages that are being made are left to be finished, since a new beginning costs more than what is left of them; but
 * not when they take longer than this.
 */
const patienceMs = 2_500;

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
        noteBegun(made);
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

  const underWaySince = job !== null && jobIsUnderWay(job) ? job.startedAt : null;
  useEffect(() => {
    if (order === null) return;
    const last = begun.get(caseId);
    if (last !== undefined && sameOrder(last.order, order)) return;
    const left = underWaySince === null ? 0 : patienceMs - (Date.now() - Date.parse(underWaySince));
    const pause = last === undefined ? 0 : Math.max(calmMs, left);
    const timer = window.setTimeout(() => void make(order), pause);
    return () => window.clearTimeout(timer);
  }, [caseId, order, underWaySince, make]);

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
  return (Object.keys(one) as (keyof ReportOrder)[]).every((key) => one[key] === other[key]);
}

/** Pages that nobody will look at need not be finished. */
async function stopUnderWay(caseId: CaseId): Promise<void> {
  const jobId = begun.get(caseId)?.jobId;
  const job = jobId === undefined ? undefined : useJobStore.getState().jobs.get(jobId);
  if (job !== undefined && jobIsUnderWay(job)) await call('jobs.stop', { jobId: job.id });
}
