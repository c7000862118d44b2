/** Long work. A job is a row: it outlives the page that began it, and says what became of every item. */
import { type CaseId, type DeliveryToken, type JobId, type PhotoId } from './ids.ts';
import type { ErrorShape } from './errors.ts';
import type { Instant } from './times.ts';

export const jobKinds = ['photo-import', 'report', 'sample-cases'] as const;
export type JobKind = (typeof jobKinds)[number];

export const jobStates = ['waiting', 'running', 'done', 'stopped', 'interrupted', 'failed'] as const;
export type JobState = (typeof jobStates)[number];

export const jobItemOutcomes = ['added', 'already-here', 'failed', 'not-begun'] as const;
export type JobItemOutcome = (typeof jobItemOutcomes)[number];

export type JobItem = {
  readonly sourceName: string;
  readonly outcome: JobItemOutcome;
  readonly photoId: PhotoId | null;
  /** Case numbers of other cases that already hold the same picture. */
  readonly alsoIn: readonly string[];
  /** The picture had been taken out of the case and is put back. */
  readonly putBack: boolean;
  readonly error: ErrorShape | null;
};

export type FinishedDocument = {
  readonly token: DeliveryToken;
  readonly fileName: string;
  readonly mediaType: string;
  readonly bytes: number;
  readonly pages: number;
};

export type Job = {
  readonly id: JobId;
  readonly kind: JobKind;
  readonly caseId: CaseId | null;
  readonly state: JobState;
  /** What it is doing now, in words of the text catalogue's jobs.phases. */
  readonly phase: string;
  readonly done: number;
  readonly total: number;
  /** Items a second over the last few seconds; null until it is known. */
  readonly rate: number | null;
  readonly startedAt: Instant;
  readonly endedAt: Instant | null;
  readonly items: readonly JobItem[];
  readonly document: FinishedDocument | null;
  readonly error: ErrorShape | null;
};
