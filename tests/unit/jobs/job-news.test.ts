import { describe, expect, it } from 'vitest';

import type { JobId } from '#shared-types/ids.ts';
import type { Job, JobState } from '#shared-types/job.ts';
import type { Instant } from '#shared-types/times.ts';

import { afterBegun, afterEvent, afterList, type KnownJobs } from '../../../renderer/api/job-news.ts';

const job = (state: JobState, done = 0, id = 'import' as JobId): Job => ({
  id,
  kind: 'photo-import',
  caseId: null,
  state,
  phase: 'storing',
  done,
  total: 3,
  rate: null,
  startedAt: '2026-03-02T08:00:00.000Z' as Instant,
  endedAt: null,
  items: [],
  document: null,
  error: null,
});
const none: KnownJobs = new Map();
const stateOf = (known: KnownJobs, id = 'import') => known.get(id as JobId)?.state;

describe('word of a job', () => {
  it('by the answer to the call that began it is news where no event came before', () => {
    expect(stateOf(afterBegun(none, job('running')))).toBe('running');
  });

  it('by an event stands when the answer to the call comes after it', () => {
    const ended = afterEvent(none, job('done', 3));
    expect(stateOf(afterBegun(ended, job('running')))).toBe('done');
  });

  it('by an event takes the place of the one before', () => {
    const known = afterEvent(afterEvent(none, job('running', 1)), job('running', 2));
    expect(known.get('import' as JobId)?.done).toBe(2);
  });

  it('by a list that was on its way when an event ended it does not begin it again', () => {
    const known = afterList(afterEvent(none, job('done', 3)), [job('running', 2)]);
    expect(stateOf(known)).toBe('done');
  });

  it('by a list ends one that the page took to be under way', () => {
    expect(stateOf(afterList(afterEvent(none, job('running')), [job('interrupted')]))).toBe('interrupted');
  });

  it('of another library is forgotten with it', () => {
    const known = afterList(afterEvent(none, job('done', 3)), [job('done', 1, 'other' as JobId)]);
    expect([...known.keys()]).toEqual(['other']);
  });
});
