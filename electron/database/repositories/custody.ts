/** Who had which item when: added, struck once with a reason, never rewritten or deleted (triggers hold that too). */
import type { CustodyEntry, CustodyEvent, CustodyFields } from '#shared-types/custody.ts';
import { AppError } from '#shared-types/errors.ts';
import type { CaseId, CustodyEntryId } from '#shared-types/ids.ts';
import type { Instant, WallTime } from '#shared-types/times.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, refuseRowThere, rowAtRevision, rowOf } from './written-row.ts';

type Row = {
  uuid: string;
  item: string;
  event: CustodyEvent;
  handed_by: string;
  handed_to: string;
  at_local: string;
  at_offset_minutes: number | null;
  at_precision: WallTime['precision'];
  why: string;
  entered_at: string;
  entered_by: string;
  struck_at: string | null;
  struck_by: string | null;
  struck_reason: string | null;
  revision: number;
};

const columns = `e.uuid, e.item, e.event, e.handed_by, e.handed_to, e.at_local, e.at_offset_minutes, e.at_precision,
  e.why, e.entered_at, e.entered_by, e.struck_at, e.struck_by, e.struck_reason, e.revision`;

const toEntry = (row: Row): CustodyEntry => ({
  id: row.uuid as CustodyEntryId,
  revision: row.revision,
  item: row.item,
  event: row.event,
  from: row.handed_by,
  to: row.handed_to,
  at: { local: row.at_local, offsetMinutes: row.at_offset_minutes, precision: row.at_precision },
  why: row.why,
  enteredAt: row.entered_at as Instant,
  enteredBy: row.entered_by,
  struck: struckOf(row),
});

function struckOf({ struck_at: at, struck_by: by, struck_reason: reason }: Row): CustodyEntry['struck'] {
  return at === null || by === null || reason === null ? null : { at: at as Instant, by, reason };
}

/** By the time told, then as entered; struck ones stay in their place. @throws AppError not-found */
export function listCustody(db: Db, caseId: CaseId): CustodyEntry[] {
  const caseRow = rowOf(db, 'case', caseId);
  return db
    .prepare<[number], Row>(
      `SELECT ${columns} FROM custody_entry e WHERE e.case_row = ? ORDER BY e.at_local, e.id`,
    )
    .all(caseRow)
    .map(toEntry);
}

/** @throws AppError not-found */
export function readCustodyEntry(db: Db, id: CustodyEntryId): CustodyEntry {
  const row = db.prepare<[string], Row>(`SELECT ${columns} FROM custody_entry e WHERE e.uuid = ?`).get(id);
  if (!row) throw new AppError('not-found', { thing: 'custody entry' });
  return toEntry(row);
}

/** @throws AppError not-found */
export function caseOfCustodyEntry(db: Db, id: CustodyEntryId): CaseId {
  const found = db
    .prepare<[string], CaseId>(
      'SELECT c.uuid FROM custody_entry e JOIN teardown_case c ON c.id = e.case_row WHERE e.uuid = ?',
    )
    .pluck()
    .get(id);
  if (found === undefined) throw new AppError('not-found', { thing: 'custody entry' });
  return found;
}

/** @throws AppError not-found, stale-revision when it is there already */
export function addCustodyEntry(
  db: Db,
  input: { id: CustodyEntryId; caseId: CaseId; fields: CustodyFields; at: Instant; by: string },
): void {
  const caseRow = rowOf(db, 'case', input.caseId);
  refuseRowThere(db, 'custody entry', input.id);
  const { at: told, ...fields } = input.fields;
  const result = db
    .prepare(
      `INSERT INTO custody_entry (uuid, case_row, item, event, handed_by, handed_to, at_local, at_offset_minutes,
         at_precision, why, entered_at, entered_by, revision)
       VALUES (@id, @caseRow, @item, @event, @from, @to, @local, @offsetMinutes, @precision, @why, @at, @by, 1)`,
    )
    .run({ ...fields, ...told, id: input.id, caseRow, at: input.at, by: input.by });
  assertOneRow(result, 'custody entered');
}

/** @throws AppError not-found, stale-revision, request-invalid when it was struck before */
export function strikeCustodyEntry(
  db: Db,
  input: { id: CustodyEntryId; revision: number; reason: string; at: Instant; by: string },
): void {
  const row = rowAtRevision(db, 'custody entry', input.id, input.revision);
  if (readCustodyEntry(db, input.id).struck !== null) {
    throw new AppError('request-invalid', { field: 'entryId', reason: 'the entry is struck already' });
  }
  const result = db
    .prepare(
      `UPDATE custody_entry SET struck_at = ?, struck_by = ?, struck_reason = ?, revision = revision + 1 WHERE id = ?`,
    )
    .run(input.at, input.by, input.reason, row);
  assertOneRow(result, 'custody entry struck');
}
