/** The register of a case's photos: every one there ever was, those taken out with who, when and why. */
import { AppError } from '#shared-types/errors.ts';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import type { RegisterEntry, Removal } from '#shared-types/photo.ts';
import type { Instant } from '#shared-types/times.ts';

import { cameraPlaceOf } from '../../images/camera-place.ts';
import type { Db } from '../open-library.ts';
import { partsOfPhotos, photoColumns, toPhoto, type PhotoRow } from './photos.ts';
import { assertOneRow, rowAtRevision, rowOf } from './written-row.ts';

type RemovalColumns = {
  removed_at: string | null;
  removed_by: string | null;
  removed_reason: string | null;
};

function toRemoval(row: RemovalColumns): Removal | null {
  if (row.removed_at === null) return null;
  return { at: row.removed_at as Instant, by: row.removed_by ?? '', reason: row.removed_reason ?? '' };
}

/** Every photo there ever was in the case, in the order in which they came in. */
export function listRegister(db: Db, caseId: CaseId): RegisterEntry[] {
  const caseRow = rowOf(db, 'case', caseId);
  const partsOf = partsOfPhotos(db, caseRow);
  const absencesOf = readAbsences(db, caseRow);
  return db
    .prepare<[number], PhotoRow & RemovalColumns & { gps: string | null }>(
      `SELECT ${photoColumns}, b.gps, p.removed_at, p.removed_by, p.removed_reason
       FROM photo p JOIN blob b ON b.id = p.blob_row WHERE p.case_row = ? ORDER BY p.id`,
    )
    .all(caseRow)
    .map((row) => ({
      photo: toPhoto(row, partsOf(row.row)),
      cameraPlace: cameraPlaceOf(row.gps),
      takenOut: toRemoval(row),
      absences: (absencesOf.get(row.row) ?? []).map(({ photo: _owner, ...absence }) => absence),
    }));
}

type AbsenceRow = RegisterEntry['absences'][number] & { readonly photo: number };

function readAbsences(db: Db, caseRow: number): Map<number, AbsenceRow[]> {
  const rows = db
    .prepare<[number], AbsenceRow>(
      `SELECT a.photo_row AS photo, a.out_at AS at, a.out_by AS "by", a.reason, a.back_at AS backAt,
         a.back_by AS backBy
       FROM photo p JOIN photo_absence a ON a.photo_row = p.id WHERE p.case_row = ? ORDER BY a.id`,
    )
    .all(caseRow);
  return Map.groupBy(rows, (row) => row.photo);
}

/** When, by whom and why a photo was taken out; null for one that is in the case. @throws AppError not-found */
export function readRemoval(db: Db, id: PhotoId): Removal | null {
  const row = db
    .prepare<[string], RemovalColumns>(
      'SELECT removed_at, removed_by, removed_reason FROM photo WHERE uuid = ?',
    )
    .get(id);
  if (!row) throw new AppError('not-found', { thing: 'photo' });
  return toRemoval(row);
}

/** @throws AppError not-found, photo-taken-out */
export function refuseTakenOut(db: Db, id: PhotoId): void {
  if (readRemoval(db, id) === null) return;
  const name = db.prepare<[string], string>('SELECT source_name FROM photo WHERE uuid = ?').pluck().get(id);
  throw new AppError('photo-taken-out', { name: name ?? '' });
}

/** Its line, its place and its marks stay. @throws AppError not-found, stale-revision, photo-taken-out */
export function takePhotoOut(
  db: Db,
  input: { id: PhotoId; revision: number; at: Instant; by: string; reason: string },
): void {
  const row = rowAtRevision(db, 'photo', input.id, input.revision);
  refuseTakenOut(db, input.id);
  const result = db
    .prepare(
      `UPDATE photo SET removed_at = ?, removed_by = ?, removed_reason = ?, revision = revision + 1 WHERE id = ?`,
    )
    .run(input.at, input.by, input.reason, row);
  assertOneRow(result, 'photo taken out');
}

/**
 * To the place where it was; that it was out stays on record.
 * @throws AppError not-found, stale-revision (also for one that is in the case)
 */
export function restorePhoto(
  db: Db,
  input: { id: PhotoId; revision: number; at: Instant; by: string },
): void {
  const row = rowAtRevision(db, 'photo', input.id, input.revision);
  const removal = readRemoval(db, input.id);
  if (removal === null) throw new AppError('stale-revision', { thing: 'photo' });
  const kept = db
    .prepare(
      `INSERT INTO photo_absence (photo_row, out_at, out_by, reason, back_at, back_by) VALUES (?, ?, ?, ?, ?, ?)`,
    )
    .run(row, removal.at, removal.by, removal.reason, input.at, input.by);
  assertOneRow(kept, 'photo absence');
  const result = db
    .prepare(
      `UPDATE photo SET removed_at = NULL, removed_by = NULL, removed_reason = NULL, revision = revision + 1
       WHERE id = ?`,
    )
    .run(row);
  assertOneRow(result, 'photo put back');
}

/** How many marks lie on a photo, in sight or not. */
export function countMarksOn(db: Db, id: PhotoId): number {
  const count = db
    .prepare<[string], number>(
      'SELECT count(*) FROM mark m JOIN photo p ON p.id = m.photo_row WHERE p.uuid = ?',
    )
    .pluck()
    .get(id);
  return count ?? 0;
}
