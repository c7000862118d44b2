/** Long work as last heard of, by id. Filled by event-intake.ts. */
import { useMemo } from 'react';
import { create } from 'zustand';
import type { CaseId, JobId } from '#shared-types/ids.ts';
import type { Job, JobKind } from '#shared-types/job.ts';

type JobStore = { readonly jobs: ReadonlyMap<JobId, Job> };

export const useJobStore = create<JobStore>(() => ({ jobs: new Map() }));

/** Takes in a job's latest state, from an event or from the answer to the call that began it. */
export function noteJob(job: Job): void {
  useJobStore.setState(({ jobs }) => ({ jobs: new Map(jobs).set(job.id, job) }));
}

/** The whole list as the library has it: jobs of another library are gone with it. */
export function replaceJobs(list: readonly Job[]): void {
  useJobStore.setState({ jobs: new Map(list.map((job) => [job.id, job])) });
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

export function jobIsUnderWay(job: Job): boolean {
  return job.state === 'waiting' || job.state === 'running';
}
