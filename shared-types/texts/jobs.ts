/** Words of long work. A job's `phase` is one of `jobTexts.phases`, as it stands here. */
import type { JobItemOutcome, JobKind, JobState } from '../job.ts';

const kinds = {
  'photo-import': 'Photos coming in',
  report: 'Report being made',
  'sample-cases': 'Sample cases being set up',
} as const satisfies Record<JobKind, string>;

const states = {
  waiting: 'waiting its turn',
  running: 'running',
  done: 'done',
  stopped: 'stopped',
  interrupted: 'interrupted',
  failed: 'failed',
} as const satisfies Record<JobState, string>;

const itemOutcomes = {
  added: 'added',
  'already-here': 'already in this case',
  failed: 'not taken in',
  'not-begun': 'not begun',
} as const satisfies Record<JobItemOutcome, string>;

export const jobTexts = {
  kinds,
  states,
  itemOutcomes,
  phases: {
    waiting: 'Waiting its turn',
    reading: 'Reading and checking files',
    storing: 'Putting originals into the photo store',
    decoding: 'Making display copies',
    gathering: 'Gathering the case',
    drawing: 'Drawing the plates',
    layingOut: 'Laying out the pages',
    finishing: 'Finishing the document',
    settingUp: 'Setting up the sample cases',
  },
  countOf: (done: string, total: string) => `${done} of ${total}`,
  rate: (perSecond: string) => `${perSecond} a second`,
  timeLeft: (time: string) => `about ${time} left`,
  seconds: (n: number) => `${n} s`,
  minutes: (n: number) => `${n} min`,
  hours: (n: number) => `${n} h`,
  stop: 'Stop',
  stopping: 'Stopping…',
} as const;
