/**
 * What is known of jobs when word of one comes in. Events come in the order in which things happened;
 * the answer to a call may come after the events that tell what followed, and then the events stand.
 */
import type { JobId } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

export type KnownJobs = ReadonlyMap<JobId, Job>;

export function jobIsUnderWay(job: Job): boolean {
  return job.state === 'waiting' || job.state === 'running';
}

/** An event tells of a job: the latest there is. */
export function afterEvent(known: KnownJobs, job: Job): KnownJobs {
  return new Map(known).set(job.id, job);
}

/** The call that began a job is answered: news only where no event told of the job before. */
export function afterBegun(known: KnownJobs, job: Job): KnownJobs {
  return known.has(job.id) ? known : afterEvent(known, job);
}

/**
 * The library's whole list: jobs of another library are gone with it. A job that an event ended while
 * the list was on its way stays ended.
 */
export function afterList(known: KnownJobs, list: readonly Job[]): KnownJobs {
  return new Map(
    list.map((job) => {
      const here = known.get(job.id);
      return [job.id, here !== undefined && !jobIsUnderWay(here) ? here : job];
    }),
  );
}
