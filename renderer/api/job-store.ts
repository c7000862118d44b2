/** Long work as last heard of, by id. Filled by event-intake.ts. */
import { useMemo } from 'react';
import { create } from 'zustand';
import type { CaseId, JobId } from '#shared-types/ids.ts';
import type { Job, JobKind } from '#shared-types/job.ts';
import { afterBegun, afterEvent, afterList, type KnownJobs } from './job-news.ts';

type JobStore = { readonly jobs: KnownJobs };

export const useJobStore = create<JobStore>(() => ({ jobs: new Map() }));

/** Takes in an event's job. */
export function noteJob(job: Job): void {
  useJobStore.setState(({ jobs }) => ({ jobs: afterEvent(jobs, job) }));
}

/** Takes in the job that a call has begun. */
export function noteBegun(job: Job): void {
  useJobStore.setState(({ jobs }) => ({ jobs: afterBegun(jobs, job) }));
}

/** Takes in the library's whole list. */
export function replaceJobs(list: readonly Job[]): void {
  useJobStore.setState(({ jobs }) => ({ jobs: afterList(jobs, list) }));
}

export function useJob(id: JobId | null): Job | null {
  return useJobStore(({ jobs }) => (id === null ? null : (jobs.get(id) ?? null)));
}

/** Jobs of one kind in a case, the latest first. */
export function useJobsOf(caseId: CaseId | null, kind: JobKind): readonly Job[] {
  const jobs = useJobStore((store) => store.jobs);
  return useMemo(
    () =>
      [...jobs.values()]
        .filter((job) => job.kind === kind && job.caseId === caseId)
        .sort((a, b) => b.startedAt.localeCompare(a.startedAt)),
    [jobs, caseId, kind],
  );
}
