import { AppError } from '#shared-types/errors.ts';
import type { CaseId, FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import { markGeometrySchema, type Mark, type MarkFields } from '#shared-types/mark.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, refuseRowThere, rowAtRevision, rowOf } from './written-row.ts';

type Row = {
  uuid: string;
  photo: string;
  finding: string | null;
  geometry: string;
  drawing_order: number;
  revision: number;
};

const select = `
  SELECT m.uuid, p.uuid AS photo, f.uuid AS finding, m.geometry, m.drawing_order, m.revision
  FROM mark m JOIN photo p ON p.id = m.photo_row LEFT JOIN finding f ON f.id = m.finding_row`;

const toMark = (row: Row): Mark => ({
  id: row.uuid as MarkId,
  photoId: row.photo as PhotoId,
  findingId: row.finding as FindingId | null,
  geometry: markGeometrySchema.parse(JSON.parse(row.geometry)),
  order: row.drawing_order,
  revision: row.revision,
});

/** Every mark on the case's photos, by photo and drawing order. */
export function listMarks(db: Db, caseId: CaseId): Mark[] {
  const caseRow = rowOf(db, 'case', caseId);
  return db
    .prepare<[number], Row>(
      `${select} WHERE p.case_row = ? AND p.removed_at IS NULL ORDER BY p.place, m.drawing_order, m.id`,
    )
    .all(caseRow)
    .map(toMark);
}

/** @throws AppError not-found */
export function readMark(db: Db, id: MarkId): Mark {
  const row = db.prepare<[string], Row>(`${select} WHERE m.uuid = ?`).get(id);
  if (!row) throw new AppError('not-found', { thing: 'mark' });
  return toMark(row);
}

/** @throws AppError not-found */
export function photoOfMark(db: Db, id: MarkId): PhotoId {
  return readMark(db, id).photoId;
}

/** @throws AppError not-found for a mark that is not there, mark-photo-mismatch for one of another case */
export function refuseMarkOfOtherCase(db: Db, input: { caseId: CaseId; markId: MarkId }): void {
  const owner = db
    .prepare<[string], string>(
      `SELECT c.uuid FROM mark m JOIN photo p ON p.id = m.photo_row JOIN teardown_case c ON c.id = p.case_row
       WHERE m.uuid = ?`,
    )
    .pluck()
    .get(input.markId);
  if (owner === undefined) throw new AppError('not-found', { thing: 'mark' });
  if (owner !== input.caseId) throw new AppError('mark-photo-mismatch');
}

/** @throws AppError stale-revision when it is there already */
export function addMark(db: Db, mark: MarkFields): void {
  refuseRowThere(db, 'mark', mark.id);
  const result = db
    .prepare(
      `INSERT INTO mark (uuid, photo_row, finding_row, kind, geometry_version, geometry, drawing_order, revision)
       VALUES (?, ?, ?, ?, ?, ?, ?, 1)`,
    )
    .run(mark.id, ...valuesOf(db, mark));
  assertOneRow(result, 'mark added');
}

/** @throws AppError not-found, stale-revision */
export function writeMark(db: Db, input: { mark: MarkFields; revision: number }): void {
  const row = rowAtRevision(db, 'mark', input.mark.id, input.revision);
  const result = db
    .prepare(
      `UPDATE mark SET photo_row = ?, finding_row = ?, kind = ?, geometry_version = ?, geometry = ?,
         drawing_order = ?, revision = revision + 1 WHERE id = ?`,
    )
    .run(...valuesOf(db, input.mark), row);
  assertOneRow(result, 'mark changed');
}

/** @throws AppError not-found, stale-revision */
export function removeMark(db: Db, input: { id: MarkId; revision: number }): void {
  const row = rowAtRevision(db, 'mark', input.id, input.revision);
  assertOneRow(db.prepare('DELETE FROM mark WHERE id = ?').run(row), 'mark removed');
}

function valuesOf(db: Db, mark: MarkFields) {
  return [
    rowOf(db, 'photo', mark.photoId),
    mark.findingId === null ? null : rowOf(db, 'finding', mark.findingId),
    mark.geometry.kind,
    mark.geometry.v,
    JSON.stringify(mark.geometry),
    mark.order,
  ] as const;
}
