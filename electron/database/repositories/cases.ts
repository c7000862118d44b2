import type {
  CaseCounts,
  CaseDraft,
  CaseFields,
  CaseStatus,
  CaseSummary,
  Outcome,
  TeardownCase,
} from '#shared-types/case.ts';
import { AppError } from '#shared-types/errors.ts';
import type { BlobId, CaseId } from '#shared-types/ids.ts';
import type { Instant } from '#shared-types/times.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, rowAtRevision } from './written-row.ts';

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

const unitOf = (row: SummaryRow) => ({
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
  unit: unitOf(row),
  customer: row.customer,
  claim: row.claim,
  openedAt: row.opened_at as Instant,
  counts: countsOf(row),
  coverBlobId: row.cover as BlobId | null,
});

const toCase = (row: CaseRow): TeardownCase => ({
  id: row.uuid as CaseId,
  revision: row.revision,
  number: row.number,
  status: row.status,
  outcome: row.outcome,
  unit: unitOf(row),
  customer: row.customer,
  claim: row.claim,
  conclusion: row.conclusion,
  pack: { id: row.pack_id, version: row.version, sha256: row.sha256 },
  openedAt: row.opened_at as Instant,
  openedBy: row.opened_by,
  counts: countsOf(row),
});

export function listCases(db: Db): CaseSummary[] {
  return db
    .prepare<[], SummaryRow>(
      `SELECT ${summaryColumns} FROM teardown_case c ORDER BY c.opened_at DESC, c.id DESC`,
    )
    .all()
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
      `SELECT ${summaryColumns}, c.conclusion, c.opened_by, c.revision, k.pack_id, k.version, k.sha256
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

/** @throws AppError not-found, stale-revision */
export function writeCase(db: Db, input: { id: CaseId; revision: number; fields: CaseFields }): void {
  const row = rowAtRevision(db, 'case', input.id, input.revision);
  const { fields } = input;
  const result = db
    .prepare(
      `UPDATE teardown_case SET number = ?, unit_maker = ?, unit_model = ?, unit_serial = ?,
         unit_part_number = ?, customer = ?, claim = ?, outcome = ?, conclusion = ?, revision = revision + 1
       WHERE id = ?`,
    )
    .run(
      fields.number,
      fields.unit.maker,
      fields.unit.model,
      fields.unit.serial,
      fields.unit.partNumber,
      fields.customer,
      fields.claim,
      fields.outcome,
      fields.conclusion,
      row,
    );
  assertOneRow(result, 'case changed');
}

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
