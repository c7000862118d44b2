/** Every change to a case goes through here: one transaction that holds the change and its line in the journal. */
import { AppError } from '#shared-types/errors.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { Instant } from '#shared-types/times.ts';

import { inTransaction } from '../database/open-library.ts';
import { readStanding } from '../database/repositories/cases.ts';
import { appendToJournal } from '../database/repositories/journal.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import type { Services } from './services.ts';
import { whoWorksHere } from './who-works-here.ts';

export type Stamp = { readonly at: Instant; readonly by: string };

export type RecordedWrite<Result> = {
  readonly caseId: CaseId | null;
  /** The case is made by this very write: it is not there to be refused before. */
  readonly opensCase?: boolean;
  readonly what: string;
  /** Facts for the journal: ids, numbers, names of fields; never a case's own text. */
  readonly details: Readonly<Record<string, unknown>>;
  readonly write: (stamp: Stamp) => Result;
};

/**
 * @throws AppError analyst-needed; case-closed when the case is no longer open; whatever `write` throws, and then
 *   neither the change nor its line is there
 */
export function recordWrite<Result>(services: Services, change: RecordedWrite<Result>): Result {
  const result = inOneTransaction(services, change);
  reachWriteStep(change, 'kept');
  return result;
}

function inOneTransaction<Result>(services: Services, change: RecordedWrite<Result>): Result {
  const { db } = services;
  return inTransaction(db, () => {
    const stamp = { at: services.now(), by: whoWorksHere(db).name };
    if (change.caseId !== null && change.opensCase !== true) refuseClosedCase(services, change.caseId);
    reachWriteStep(change, 'begun');
    const result = change.write(stamp);
    reachWriteStep(change, 'changed');
    appendToJournal(db, {
      at: stamp.at,
      who: stamp.by,
      caseId: change.caseId,
      what: change.what,
      details: change.details,
    });
    reachWriteStep(change, 'journalled');
    return result;
  });
}

/** `bench.changed`, `class-changed.kept` and so on: the steps of every recorded write go by the journal's word for it. */
function reachWriteStep<Result>(
  { what }: RecordedWrite<Result>,
  step: 'begun' | 'changed' | 'journalled' | 'kept',
): void {
  reachFaultPoint(`${what.replaceAll(' ', '-')}.${step}`);
}

/** @throws AppError not-found, case-closed */
export function refuseClosedCase(services: Services, caseId: CaseId): void {
  const { number, status } = readStanding(services.db, caseId);
  if (status !== 'open') throw new AppError('case-closed', { number, status });
}
