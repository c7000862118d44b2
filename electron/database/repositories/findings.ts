import { AppError } from '#shared-types/errors.ts';
import type { ClassChange, DamageClass, Finding, FindingFields, Presence } from '#shared-types/finding.ts';
import type { CaseId, FindingId } from '#shared-types/ids.ts';
import type { TurningSense } from '#shared-types/rotation.ts';
import type { Instant } from '#shared-types/times.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, refuseRowThere, rowAtRevision, rowOf } from './written-row.ts';

type Row = {
  uuid: string;
  number: number;
  revision: number;
  component: string;
  position: string | null;
  zone: string | null;
  kind: string;
  class: DamageClass;
  presence: Presence;
  severity: Finding['severity'];
  extent_affected: number | null;
  extent_of: number | null;
  bend_sense: TurningSense | null;
  bend_seen_from: string | null;
  note: string;
};

const columns = `f.uuid, f.number, f.revision, f.component, f.position, f.zone, f.kind, f.class, f.presence,
  f.severity, f.extent_affected, f.extent_of, f.bend_sense, f.bend_seen_from, f.note`;

const toFinding = (row: Row): Finding => ({
  id: row.uuid as FindingId,
  number: row.number,
  revision: row.revision,
  component: row.component,
  position: row.position,
  zone: row.zone,
  kind: row.kind,
  class: row.class,
  presence: row.presence,
  severity: row.severity,
  extent:
    row.extent_affected === null || row.extent_of === null
      ? null
      : { affected: row.extent_affected, of: row.extent_of },
  bend:
    row.bend_sense === null || row.bend_seen_from === null
      ? null
      : { sense: row.bend_sense, seenFrom: row.bend_seen_from },
  note: row.note,
});

export function listFindings(db: Db, caseId: CaseId): Finding[] {
  const caseRow = rowOf(db, 'case', caseId);
  return db
    .prepare<[number], Row>(`SELECT ${columns} FROM finding f WHERE f.case_row = ? ORDER BY f.number`)
    .all(caseRow)
    .map(toFinding);
}

export function findFinding(db: Db, id: FindingId): Finding | null {
  const row = db.prepare<[string], Row>(`SELECT ${columns} FROM finding f WHERE f.uuid = ?`).get(id);
  return row ? toFinding(row) : null;
}

/** @throws AppError not-found */
export function caseOfFinding(db: Db, id: FindingId): CaseId {
  const found = db
    .prepare<[string], CaseId>(
      'SELECT c.uuid FROM finding f JOIN teardown_case c ON c.id = f.case_row WHERE f.uuid = ?',
    )
    .pluck()
    .get(id);
  if (found === undefined) throw new AppError('not-found', { thing: 'finding' });
  return found;
}

/**
 * Adds a finding under the next number of its case, or under its old one when its removal is undone.
 * @throws AppError stale-revision when it is there already, not-found for one of another case,
 *   class-change-needs-reason when it would come back as something else than it was
 */
export function addFinding(db: Db, input: { id: FindingId; caseId: CaseId; fields: FindingFields }): void {
  const caseRow = rowOf(db, 'case', input.caseId);
  refuseRowThere(db, 'finding', input.id);
  const number = numberFor(db, caseRow, input);
  const result = db
    .prepare(
      `INSERT INTO finding (uuid, case_row, number, component, position, zone, kind, class, presence, severity,
         extent_affected, extent_of, bend_sense, bend_seen_from, note, revision)
       VALUES (@id, @caseRow, @number, @component, @position, @zone, @kind, @class, @presence, @severity,
         @affected, @of, @bendSense, @bendSeenFrom, @note, 1)`,
    )
    .run({ id: input.id, caseRow, number, ...valuesOf(input.fields) });
  assertOneRow(result, 'finding added');
}

type GivenNumber = { case_row: number; number: number; class_at_removal: DamageClass | null };

function numberFor(
  db: Db,
  caseRow: number,
  { id, fields }: { id: FindingId; fields: FindingFields },
): number {
  const given = db
    .prepare<[string], GivenNumber>(
      'SELECT case_row, number, class_at_removal FROM finding_number WHERE finding_uuid = ?',
    )
    .get(id);
  if (given) {
    if (given.case_row !== caseRow) throw new AppError('not-found', { thing: 'finding' });
    if (given.class_at_removal !== fields.class) {
      throw new AppError('class-change-needs-reason', { number: given.number });
    }
    return given.number;
  }
  const next = db
    .prepare<[number], number>('SELECT coalesce(max(number), 0) + 1 FROM finding_number WHERE case_row = ?')
    .pluck()
    .get(caseRow);
  const number = next ?? 1;
  const result = db
    .prepare('INSERT INTO finding_number (case_row, number, finding_uuid) VALUES (?, ?, ?)')
    .run(caseRow, number, id);
  assertOneRow(result, 'finding number');
  return number;
}

/** Everything but the class, which has a way of its own. @throws AppError not-found, stale-revision */
export function writeFinding(
  db: Db,
  input: { id: FindingId; revision: number; fields: FindingFields },
): void {
  const row = rowAtRevision(db, 'finding', input.id, input.revision);
  const { class: _unchanged, ...values } = valuesOf(input.fields);
  const result = db
    .prepare(
      `UPDATE finding SET component = @component, position = @position, zone = @zone, kind = @kind,
         presence = @presence, severity = @severity, extent_affected = @affected, extent_of = @of,
         bend_sense = @bendSense, bend_seen_from = @bendSeenFrom, note = @note,
         revision = revision + 1 WHERE id = @row`,
    )
    .run({ row, ...values });
  assertOneRow(result, 'finding changed');
}

/** @throws AppError not-found, stale-revision, request-invalid when `to` is what it was */
export function classifyFinding(
  db: Db,
  input: {
    id: FindingId;
    revision: number;
    from: DamageClass;
    to: DamageClass;
    reason: string;
    at: Instant;
    by: string;
  },
): void {
  const row = rowAtRevision(db, 'finding', input.id, input.revision);
  if (input.from === input.to) {
    throw new AppError('request-invalid', { field: 'class', reason: 'the finding is of that class already' });
  }
  const result = db
    .prepare('UPDATE finding SET class = ?, revision = revision + 1 WHERE id = ?')
    .run(input.to, row);
  assertOneRow(result, 'finding classified');
  const kept = db
    .prepare(
      `INSERT INTO finding_class_change (finding_uuid, at, who, from_class, to_class, reason)
       VALUES (?, ?, ?, ?, ?, ?)`,
    )
    .run(input.id, input.at, input.by, input.from, input.to, input.reason);
  assertOneRow(kept, 'class history');
}

type ClassChangeRow = {
  finding_uuid: string;
  at: string;
  who: string;
  from_class: DamageClass;
  to_class: DamageClass;
  reason: string;
};

/**
 * Every change of class in the case, oldest first, those of findings that are gone with them.
 * @throws AppError not-found
 */
export function listClassChanges(db: Db, caseId: CaseId): ClassChange[] {
  const caseRow = rowOf(db, 'case', caseId);
  return db
    .prepare<[number], ClassChangeRow>(
      `SELECT h.finding_uuid, h.at, h.who, h.from_class, h.to_class, h.reason
       FROM finding_number n JOIN finding_class_change h ON h.finding_uuid = n.finding_uuid
       WHERE n.case_row = ? ORDER BY h.id`,
    )
    .all(caseRow)
    .map((row) => ({
      findingId: row.finding_uuid as FindingId,
      at: row.at as Instant,
      who: row.who,
      from: row.from_class,
      to: row.to_class,
      reason: row.reason,
    }));
}

/**
 * Marks out of sight, on photos taken out of the case, do not hold a finding: they lose it.
 * @throws AppError not-found, stale-revision, finding-in-use (it still has marks), finding-in-chain
 */
export function removeFinding(db: Db, input: { id: FindingId; revision: number; number: number }): void {
  const row = rowAtRevision(db, 'finding', input.id, input.revision);
  const marks =
    db
      .prepare<[number], number>(
        `SELECT count(*) FROM mark m JOIN photo p ON p.id = m.photo_row
         WHERE m.finding_row = ? AND p.removed_at IS NULL`,
      )
      .pluck()
      .get(row) ?? 0;
  if (marks > 0) throw new AppError('finding-in-use', { number: input.number });
  const boxes =
    db.prepare<[number], number>('SELECT count(*) FROM chain_node WHERE finding_row = ?').pluck().get(row) ??
    0;
  if (boxes > 0) throw new AppError('finding-in-chain', { number: input.number });
  db.prepare('UPDATE mark SET finding_row = NULL, revision = revision + 1 WHERE finding_row = ?').run(row);
  const kept = db
    .prepare(
      `UPDATE finding_number SET class_at_removal = f.class FROM finding f
       WHERE f.id = ? AND finding_number.finding_uuid = f.uuid`,
    )
    .run(row);
  assertOneRow(kept, 'class kept');
  assertOneRow(db.prepare('DELETE FROM finding WHERE id = ?').run(row), 'finding removed');
}

function valuesOf(fields: FindingFields) {
  const { extent, bend, ...rest } = fields;
  return {
    ...rest,
    affected: extent?.affected ?? null,
    of: extent?.of ?? null,
    bendSense: bend?.sense ?? null,
    bendSeenFrom: bend?.seenFrom ?? null,
  };
}
