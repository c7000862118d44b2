import type {
  CaseCounts,
  CaseDraft,
  CaseFields,
  CaseStatus,
  CaseSummary,
  DurationUnit,
  Interest,
  Outcome,
  Service,
  TeardownCase,
  ThreadHand,
  Unit,
  UnitNames,
} from '#shared-types/case.ts';
import { AppError } from '#shared-types/errors.ts';
import type { BlobId, CaseId, PhotoId } from '#shared-types/ids.ts';
import type { TurningSense } from '#shared-types/rotation.ts';
import { wallTimeSchema, type Instant, type WallTime } from '#shared-types/times.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, rowAtRevision, rowOf } from './written-row.ts';

type SummaryRow = {
  uuid: string;
  number: string;
  status: CaseStatus;
  outcome: Outcome;
  unit_maker: string;
  unit_model: string;
  unit_serial: string;
  unit_part_number: string;
  customer: string;
  claim: string;
  opened_at: string;
  photos: number;
  marks: number;
  findings: number;
  journal_entries: number;
  cover: string | null;
};

type CaseRow = SummaryRow & {
  rotation_sense: TurningSense | null;
  rotation_seen_from: string | null;
  rotation_photo: PhotoId | null;
  thread_hand: ThreadHand | null;
  thread_photo: PhotoId | null;
  fitted_on: string | null;
  failed_on: string | null;
  time_in_service: number | null;
  time_in_service_unit: DurationUnit | null;
  running_hours: number | null;
  state_received: string;
  interest: Interest['standing'];
  interest_words: string;
  conclusion: string;
  opened_by: string;
  revision: number;
  pack_id: string;
  version: string;
  sha256: string;
};

const summaryColumns = `
  c.uuid, c.number, c.status, c.outcome, c.unit_maker, c.unit_model, c.unit_serial, c.unit_part_number,
  c.customer, c.claim, c.opened_at,
  (SELECT count(*) FROM photo p WHERE p.case_row = c.id AND p.removed_at IS NULL) AS photos,
  (SELECT count(*) FROM mark m JOIN photo p ON p.id = m.photo_row
    WHERE p.case_row = c.id AND p.removed_at IS NULL) AS marks,
  (SELECT count(*) FROM finding f WHERE f.case_row = c.id) AS findings,
  (SELECT count(*) FROM journal j WHERE j.case_uuid = c.uuid) AS journal_entries,
  (SELECT b.uuid FROM photo p JOIN blob b ON b.id = p.blob_row
    WHERE p.case_row = c.id AND p.removed_at IS NULL ORDER BY p.place LIMIT 1) AS cover`;

const unitNamesOf = (row: SummaryRow): UnitNames => ({
  maker: row.unit_maker,
  model: row.unit_model,
  serial: row.unit_serial,
  partNumber: row.unit_part_number,
});

const countsOf = (row: SummaryRow): CaseCounts => ({
  photos: row.photos,
  marks: row.marks,
  findings: row.findings,
  journalEntries: row.journal_entries,
});

const toSummary = (row: SummaryRow): CaseSummary => ({
  id: row.uuid as CaseId,
  number: row.number,
  status: row.status,
  outcome: row.outcome,
  unit: unitNamesOf(row),
  customer: row.customer,
  claim: row.claim,
  openedAt: row.opened_at as Instant,
  counts: countsOf(row),
  coverBlobId: row.cover as BlobId | null,
});

const unitOf = (row: CaseRow): Unit => ({
  ...unitNamesOf(row),
  rotation:
    row.rotation_sense === null || row.rotation_seen_from === null
      ? null
      : { sense: row.rotation_sense, seenFrom: row.rotation_seen_from, photoId: row.rotation_photo },
  thread: row.thread_hand === null ? null : { hand: row.thread_hand, photoId: row.thread_photo },
});

const serviceOf = (row: CaseRow): Service => ({
  fittedOn: wallTimeOf(row.fitted_on),
  failedOn: wallTimeOf(row.failed_on),
  timeInService:
    row.time_in_service === null || row.time_in_service_unit === null
      ? null
      : { value: row.time_in_service, unit: row.time_in_service_unit },
  runningHours: row.running_hours,
});

const wallTimeOf = (text: string | null) => (text === null ? null : wallTimeSchema.parse(JSON.parse(text)));

const toCase = (row: CaseRow): TeardownCase => ({
  id: row.uuid as CaseId,
  revision: row.revision,
  number: row.number,
  status: row.status,
  outcome: row.outcome,
  unit: unitOf(row),
  customer: row.customer,
  claim: row.claim,
  service: serviceOf(row),
  stateReceived: row.state_received,
  interest: { standing: row.interest, words: row.interest_words },
  conclusion: row.conclusion,
  pack: { id: row.pack_id, version: row.version, sha256: row.sha256 },
  openedAt: row.opened_at as Instant,
  openedBy: row.opened_by,
  counts: countsOf(row),
});

export function listCases(db: Db, latest?: number): CaseSummary[] {
  return db
    .prepare<[number], SummaryRow>(
      // Which ones comes first: what a summary counts is counted for those alone. Of LIMIT, -1 means all.
      `SELECT ${summaryColumns} FROM teardown_case c WHERE c.id IN (
         SELECT id FROM teardown_case ORDER BY opened_at DESC, id DESC LIMIT ?)
       ORDER BY c.opened_at DESC, c.id DESC`,
    )
    .all(latest ?? -1)
    .map(toSummary);
}

/** Summaries of the given cases, in the order given. */
export function summariseCases(db: Db, caseRows: readonly number[]): CaseSummary[] {
  const read = db.prepare<[number], SummaryRow>(
    `SELECT ${summaryColumns} FROM teardown_case c WHERE c.id = ?`,
  );
  return caseRows.flatMap((id) => {
    const row = read.get(id);
    return row ? [toSummary(row)] : [];
  });
}

/** @throws AppError not-found */
export function readCase(db: Db, id: CaseId): TeardownCase {
  const row = db
    .prepare<[string], CaseRow>(
      `SELECT ${summaryColumns}, c.conclusion, c.opened_by, c.revision, k.pack_id, k.version, k.sha256,
         c.rotation_sense, c.rotation_seen_from, c.thread_hand, c.fitted_on, c.failed_on, c.time_in_service,
         c.time_in_service_unit, c.running_hours, c.state_received, c.interest, c.interest_words,
         (SELECT p.uuid FROM photo p WHERE p.id = c.rotation_photo_row) AS rotation_photo,
         (SELECT p.uuid FROM photo p WHERE p.id = c.thread_photo_row) AS thread_photo
       FROM teardown_case c JOIN pack k ON k.id = c.pack_row WHERE c.uuid = ?`,
    )
    .get(id);
  if (!row) throw new AppError('not-found', { thing: 'case' });
  return toCase(row);
}

/** What every write to a case asks first: nothing that has to be counted. */
export type CaseStanding = Pick<TeardownCase, 'number' | 'status' | 'pack'>;

/** @throws AppError not-found */
export function readStanding(db: Db, id: CaseId): CaseStanding {
  const row = db
    .prepare<[string], Pick<CaseRow, 'number' | 'status' | 'pack_id' | 'version' | 'sha256'>>(
      `SELECT c.number, c.status, k.pack_id, k.version, k.sha256
       FROM teardown_case c JOIN pack k ON k.id = c.pack_row WHERE c.uuid = ?`,
    )
    .get(id);
  if (!row) throw new AppError('not-found', { thing: 'case' });
  const { number, status, pack_id, version, sha256 } = row;
  return { number, status, pack: { id: pack_id, version, sha256 } };
}

export function countCases(db: Db): number {
  return db.prepare<[], number>('SELECT count(*) FROM teardown_case').pluck().get() ?? 0;
}

/** @throws AppError case-number-taken; upper and lower case count as the same number */
export function refuseTakenNumber(db: Db, input: { number: string; except: CaseId | null }): void {
  const owner = db
    .prepare<[string], string>('SELECT uuid FROM teardown_case WHERE number = ?')
    .pluck()
    .get(input.number);
  if (owner !== undefined && owner !== input.except) {
    throw new AppError('case-number-taken', { number: input.number });
  }
}

export function addCase(
  db: Db,
  input: { id: CaseId; draft: CaseDraft; packRow: number; at: Instant; by: string },
): void {
  const { draft } = input;
  const result = db
    .prepare(
      `INSERT INTO teardown_case (uuid, number, status, pack_row, unit_maker, unit_model, unit_serial,
         unit_part_number, customer, claim, outcome, conclusion, opened_at, opened_by, revision)
       VALUES (?, ?, 'open', ?, ?, ?, ?, ?, ?, ?, 'not-answered', '', ?, ?, 1)`,
    )
    .run(
      input.id,
      draft.number,
      input.packRow,
      draft.unit.maker,
      draft.unit.model,
      draft.unit.serial,
      draft.unit.partNumber,
      draft.customer,
      draft.claim,
      input.at,
      input.by,
    );
  assertOneRow(result, 'case opened');
}

/** @throws AppError not-found (also for a photo that an observation names), stale-revision */
export function writeCase(db: Db, input: { id: CaseId; revision: number; fields: CaseFields }): void {
  const row = rowAtRevision(db, 'case', input.id, input.revision);
  const { unit, service, interest, ...fields } = input.fields;
  const { rotation, thread } = unit;
  const result = db
    .prepare(
      `UPDATE teardown_case SET number = @number, unit_maker = @maker, unit_model = @model, unit_serial = @serial,
         unit_part_number = @partNumber, rotation_sense = @rotationSense, rotation_seen_from = @rotationSeenFrom,
         rotation_photo_row = @rotationPhoto, thread_hand = @threadHand, thread_photo_row = @threadPhoto,
         customer = @customer, claim = @claim, fitted_on = @fittedOn, failed_on = @failedOn,
         time_in_service = @timeInService, time_in_service_unit = @timeInServiceUnit, running_hours = @runningHours,
         state_received = @stateReceived, interest = @standing, interest_words = @words, outcome = @outcome,
         conclusion = @conclusion, revision = revision + 1
       WHERE id = @row`,
    )
    .run({
      row,
      ...fields,
      maker: unit.maker,
      model: unit.model,
      serial: unit.serial,
      partNumber: unit.partNumber,
      rotationSense: rotation?.sense ?? null,
      rotationSeenFrom: rotation?.seenFrom ?? null,
      rotationPhoto: photoRow(db, rotation?.photoId),
      threadHand: thread?.hand ?? null,
      threadPhoto: photoRow(db, thread?.photoId),
      fittedOn: textOf(service.fittedOn),
      failedOn: textOf(service.failedOn),
      timeInService: service.timeInService?.value ?? null,
      timeInServiceUnit: service.timeInService?.unit ?? null,
      runningHours: service.runningHours,
      ...interest,
    });
  assertOneRow(result, 'case changed');
}

const photoRow = (db: Db, id: PhotoId | null | undefined) => (id ? rowOf(db, 'photo', id) : null);
const textOf = (time: WallTime | null) => (time === null ? null : JSON.stringify(time));

/** @throws AppError not-found, stale-revision */
export function writeCaseStatus(
  db: Db,
  input: { id: CaseId; revision: number; status: CaseStatus; reason: string },
): void {
  const row = rowAtRevision(db, 'case', input.id, input.revision);
  const result = db
    .prepare('UPDATE teardown_case SET status = ?, status_reason = ?, revision = revision + 1 WHERE id = ?')
    .run(input.status, input.reason, row);
  assertOneRow(result, 'case status');
}
