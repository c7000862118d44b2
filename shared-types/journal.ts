import type { CaseId } from './ids.ts';
import type { Instant } from './times.ts';

/** One line of the append-only journal; `hash` covers everything else in the line and the hash before it. */
export type JournalEntry = {
  readonly number: number;
  readonly at: Instant;
  readonly who: string;
  readonly caseId: CaseId | null;
  readonly what: string;
  readonly details: Readonly<Record<string, unknown>>;
  readonly previousHash: string;
  readonly hash: string;
};

export type JournalCheck = {
  readonly entries: number;
  readonly head: string;
  /** Number of the first line that does not fit the one before it; null when the chain holds. */
  readonly brokenAt: number | null;
};
