import { AppError, type ErrorShape } from '#shared-types/errors.ts';
import type { CaseId, JobId, PhotoId } from '#shared-types/ids.ts';
import type { FinishedDocument, Job, JobItem, JobItemOutcome, JobKind, JobState } from '#shared-types/job.ts';
import type { Instant } from '#shared-types/times.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow } from './written-row.ts';

type Row = {
  id: number;
  uuid: string;
  kind: JobKind;
  case_uuid: string | null;
  state: JobState;
  phase: string;
  done: number;
  total: number;
  started_at: string;
  ended_at: string | null;
  document: string | null;
  error: string | null;
};

type ItemRow = {
  source_name: string;
  outcome: JobItemOutcome;
  photo_uuid: string | null;
  also_in: string;
  put_back: 0 | 1;
  error: string | null;
};

const select = `
  SELECT j.id, j.uuid, j.kind, c.uuid AS case_uuid, j.state, j.phase, j.done, j.total, j.started_at, j.ended_at,
    j.document, j.error
  FROM job j LEFT JOIN teardown_case c ON c.id = j.case_row`;

function toJob(db: Db, row: Row): Job {
  return {
    id: row.uuid as JobId,
    kind: row.kind,
    caseId: row.case_uuid as CaseId | null,
    state: row.state,
    phase: row.phase,
    done: row.done,
    total: row.total,
    rate: null,
    startedAt: row.started_at as Instant,
    endedAt: row.ended_at as Instant | null,
    items: listItems(db, row.id),
    document: row.document === null ? null : (JSON.parse(row.document) as FinishedDocument),
    error: row.error === null ? null : (JSON.parse(row.error) as ErrorShape),
  };
}

function listItems(db: Db, jobRow: number): JobItem[] {
  return db
    .prepare<[number], ItemRow>(
      'SELECT source_name, outcome, photo_uuid, also_in, put_back, error FROM job_item WHERE job_row = ? ORDER BY place',
    )
    .all(jobRow)
    .map((row) => ({
      sourceName: row.source_name,
      outcome: row.outcome,
      photoId: row.photo_uuid as PhotoId | null,
      alsoIn: JSON.parse(row.also_in) as string[],
      putBack: row.put_back === 1,
      error: row.error === null ? null : (JSON.parse(row.error) as ErrorShape),
    }));
}

/** The newest jobs first. */
export function listJobs(db: Db, most: number): Job[] {
  return db
    .prepare<[number], Row>(`${select} ORDER BY j.id DESC LIMIT ?`)
    .all(most)
    .map((row) => toJob(db, row));
}

/** @throws AppError not-found */
export function readJob(db: Db, id: JobId): Job {
  const row = db.prepare<[string], Row>(`${select} WHERE j.uuid = ?`).get(id);
  if (!row) throw new AppError('not-found', { thing: 'job' });
  return toJob(db, row);
}

export function addJob(
  db: Db,
  input: { id: JobId; kind: JobKind; caseId: CaseId | null; phase: string; total: number; at: Instant },
): void {
  const result = db
    .prepare(
      `INSERT INTO job (uuid, kind, case_row, state, phase, done, total, started_at)
       VALUES (@id, @kind, (SELECT id FROM teardown_case WHERE uuid = @caseId), 'running', @phase, 0, @total, @at)`,
    )
    .run(input);
  assertOneRow(result, 'job added');
}

export function addJobItem(db: Db, input: { jobId: JobId; place: number; item: JobItem }): void {
  const { item } = input;
  const result = db
    .prepare(
      `INSERT INTO job_item (job_row, place, source_name, outcome, photo_uuid, also_in, put_back, error)
       SELECT id, ?, ?, ?, ?, ?, ?, ? FROM job WHERE uuid = ?`,
    )
    .run(
      input.place,
      item.sourceName,
      item.outcome,
      item.photoId,
      JSON.stringify(item.alsoIn),
      item.putBack ? 1 : 0,
      item.error === null ? null : JSON.stringify(item.error),
      input.jobId,
    );
  assertOneRow(result, 'job item');
}

/** What is done is what has its line: a count kept apart would go on when a transaction is rolled back. */
export function writeJobProgress(db: Db, input: { id: JobId; phase: string }): void {
  const result = db
    .prepare(
      'UPDATE job SET phase = ?, done = (SELECT count(*) FROM job_item WHERE job_row = job.id) WHERE uuid = ?',
    )
    .run(input.phase, input.id);
  assertOneRow(result, 'job progress');
}

export function endJob(
  db: Db,
  input: {
    id: JobId;
    state: Exclude<JobState, 'waiting' | 'running'>;
    at: Instant;
    document: FinishedDocument | null;
    error: ErrorShape | null;
  },
): void {
  const result = db
    .prepare(
      `UPDATE job SET state = @state, ended_at = @at, document = @document, error = @error,
         done = CASE @state WHEN 'done' THEN total ELSE done END WHERE uuid = @id`,
    )
    .run({
      ...input,
      document: input.document === null ? null : JSON.stringify(input.document),
      error: input.error === null ? null : JSON.stringify(input.error),
    });
  assertOneRow(result, 'job ended');
}

/** Jobs that the last process left running did not end by themselves: they are marked as interrupted. */
export function markInterruptedJobs(db: Db, at: Instant): JobId[] {
  return db
    .prepare<[string], JobId>(
      `UPDATE job SET state = 'interrupted', ended_at = ? WHERE state IN ('waiting', 'running') RETURNING uuid`,
    )
    .pluck()
    .all(at);
}
