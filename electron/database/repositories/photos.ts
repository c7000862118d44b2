import { AppError } from '#shared-types/errors.ts';
import type { BlobId, CaseId, PhotoId } from '#shared-types/ids.ts';
import type { PartShown, Photo, PhotoFields, Stage } from '#shared-types/photo.ts';
import type { Instant, WallTime } from '#shared-types/times.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, rowAtRevision, rowOf } from './written-row.ts';

export type PhotoRow = {
  row: number;
  uuid: string;
  revision: number;
  caption: string;
  stage: Stage | null;
  seen_from: string | null;
  source_name: string;
  added_at: string;
  added_by: string;
  blob: string;
  sha256: string;
  bytes: number;
  media_type: string;
  width: number;
  height: number;
  display_width: number;
  display_height: number;
  taken_local: string | null;
  taken_offset_minutes: number | null;
  taken_precision: WallTime['precision'] | null;
  camera: string;
  declared_synthetic: string | null;
};

/** Columns of a photo p and its picture b. */
export const photoColumns = `p.id AS row, p.uuid, p.revision, p.caption, p.stage, p.seen_from, p.source_name,
  p.added_at, p.added_by, b.uuid AS blob, b.sha256, b.bytes, b.media_type, b.width, b.height, b.display_width,
  b.display_height, b.taken_local, b.taken_offset_minutes, b.taken_precision, b.camera,
  b.declared_synthetic`;

const select = `SELECT ${photoColumns} FROM photo p JOIN blob b ON b.id = p.blob_row`;

export function toPhoto(row: PhotoRow, parts: PartShown[]): Photo {
  return {
    id: row.uuid as PhotoId,
    revision: row.revision,
    caption: row.caption,
    stage: row.stage,
    seenFrom: row.seen_from,
    parts,
    blobId: row.blob as BlobId,
    sha256: row.sha256,
    bytes: row.bytes,
    mediaType: row.media_type,
    width: row.width,
    height: row.height,
    sourceName: row.source_name,
    takenAt: takenAt(row),
    camera: row.camera,
    declaredSynthetic: row.declared_synthetic,
    addedAt: row.added_at as Instant,
    addedBy: row.added_by,
    derivatives: { thumbnail: `thumbnail/${row.blob}`, display: `display/${row.blob}` },
    displayWidth: row.display_width,
    displayHeight: row.display_height,
  };
}

function takenAt(row: PhotoRow): WallTime | null {
  if (row.taken_local === null || row.taken_precision === null) return null;
  return {
    local: row.taken_local,
    offsetMinutes: row.taken_offset_minutes,
    precision: row.taken_precision,
  };
}

/** The parts shown by each photo of a case, those taken out too, by the photo's row. */
export function partsOfPhotos(db: Db, caseRow: number): (photoRow: number) => PartShown[] {
  const parts = db
    .prepare<[number], PartShown & { photo: number }>(
      `SELECT pp.photo_row AS photo, pp.component, pp.position FROM photo_part pp JOIN photo p ON p.id = pp.photo_row
       WHERE p.case_row = ? ORDER BY pp.photo_row, pp.place`,
    )
    .all(caseRow);
  const partsOf = Map.groupBy(parts, (part) => part.photo);
  return (photoRow) =>
    (partsOf.get(photoRow) ?? []).map(({ component, position }) => ({ component, position }));
}

/** The case's photos in their order, without those taken out. */
export function listPhotos(db: Db, caseId: CaseId): Photo[] {
  const caseRow = rowOf(db, 'case', caseId);
  const partsOf = partsOfPhotos(db, caseRow);
  return db
    .prepare<[number], PhotoRow>(
      `${select} WHERE p.case_row = ? AND p.removed_at IS NULL ORDER BY p.place, p.id`,
    )
    .all(caseRow)
    .map((row) => toPhoto(row, partsOf(row.row)));
}

/** @throws AppError not-found */
export function readPhoto(db: Db, id: PhotoId): Photo {
  const row = db.prepare<[string], PhotoRow>(`${select} WHERE p.uuid = ?`).get(id);
  if (!row) throw new AppError('not-found', { thing: 'photo' });
  const parts = db
    .prepare<[number], PartShown>(
      'SELECT component, position FROM photo_part WHERE photo_row = ? ORDER BY place',
    )
    .all(row.row);
  return toPhoto(row, parts);
}

/** @throws AppError not-found */
export function caseOfPhoto(db: Db, id: PhotoId): CaseId {
  const found = db
    .prepare<[string], CaseId>(
      'SELECT c.uuid FROM photo p JOIN teardown_case c ON c.id = p.case_row WHERE p.uuid = ?',
    )
    .pluck()
    .get(id);
  if (found === undefined) throw new AppError('not-found', { thing: 'photo' });
  return found;
}

/** The photo that shows this picture in this case, or null; one taken out of the case counts too. */
export function findPhotoOfBlob(
  db: Db,
  input: { caseId: CaseId; blobId: BlobId },
): { id: PhotoId; revision: number } | null {
  const found = db
    .prepare<[string, string], { id: PhotoId; revision: number }>(
      `SELECT p.uuid AS id, p.revision FROM photo p JOIN blob b ON b.id = p.blob_row
         JOIN teardown_case c ON c.id = p.case_row
       WHERE c.uuid = ? AND b.uuid = ?`,
    )
    .get(input.caseId, input.blobId);
  return found ?? null;
}

/** Numbers of the other cases that show the same picture. */
export function otherCasesWithBlob(db: Db, input: { caseId: CaseId; blobId: BlobId }): string[] {
  return db
    .prepare<[string, string], string>(
      `SELECT c.number FROM photo p JOIN blob b ON b.id = p.blob_row JOIN teardown_case c ON c.id = p.case_row
       WHERE b.uuid = ? AND c.uuid <> ? ORDER BY c.number`,
    )
    .pluck()
    .all(input.blobId, input.caseId);
}

/** The first free place after the case's photos. */
export function nextPhotoPlace(db: Db, caseId: CaseId): number {
  const place = db
    .prepare<[string], number>(
      `SELECT coalesce(max(p.place) + 1, 0) FROM photo p JOIN teardown_case c ON c.id = p.case_row WHERE c.uuid = ?`,
    )
    .pluck()
    .get(caseId);
  return place ?? 0;
}

/** Puts a picture into a case at a place in its order. */
export function addPhoto(
  db: Db,
  input: {
    id: PhotoId;
    caseId: CaseId;
    blobId: BlobId;
    place: number;
    sourceName: string;
    at: Instant;
    by: string;
  },
): void {
  const result = db
    .prepare(
      `INSERT INTO photo (uuid, case_row, blob_row, place, source_name, caption, added_at, added_by, revision)
       SELECT @id, c.id, b.id, @place, @sourceName, '', @at, @by, 1
       FROM teardown_case c, blob b WHERE c.uuid = @caseId AND b.uuid = @blobId`,
    )
    .run(input);
  assertOneRow(result, 'photo added');
}

/** @throws AppError not-found, stale-revision */
export function writePhoto(db: Db, input: { id: PhotoId; revision: number; fields: PhotoFields }): void {
  const row = rowAtRevision(db, 'photo', input.id, input.revision);
  const { fields } = input;
  const result = db
    .prepare('UPDATE photo SET caption = ?, stage = ?, seen_from = ?, revision = revision + 1 WHERE id = ?')
    .run(fields.caption, fields.stage, fields.seenFrom, row);
  assertOneRow(result, 'photo changed');
  db.prepare('DELETE FROM photo_part WHERE photo_row = ?').run(row);
  const insert = db.prepare(
    'INSERT INTO photo_part (photo_row, place, component, position) VALUES (?, ?, ?, ?)',
  );
  fields.parts.forEach((part, place) => insert.run(row, place, part.component, part.position));
}

export function countPhotos(db: Db): number {
  return db.prepare<[], number>('SELECT count(*) FROM photo WHERE removed_at IS NULL').pluck().get() ?? 0;
}
