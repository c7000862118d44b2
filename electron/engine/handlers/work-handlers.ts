import type { Handlers } from './handler-types.ts';

export const workHandlers = {
  'jobs.list': ({ jobs }) => jobs.list(),
  'jobs.read': ({ jobs }, { jobId }) => jobs.read(jobId),
  'jobs.stop': ({ jobs }, { jobId }) => jobs.stop(jobId),
} satisfies Partial<Handlers>;
