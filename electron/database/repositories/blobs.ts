import type { BlobId } from '#shared-types/ids.ts';
import type { Instant, WallTime } from '#shared-types/times.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow } from './written-row.ts';

/** A picture by its content, apart from the cases that show it. */
export type Blob = {
  readonly id: BlobId;
  readonly sha256: string;
  readonly bytes: number;
  readonly mediaType: string;
  /** Upright size in pixels. */
  readonly width: number;
  readonly height: number;
  readonly orientation: number;
  readonly displayWidth: number;
  readonly displayHeight: number;
  readonly takenAt: WallTime | null;
  readonly camera: string;
  /** The code or the words by which the file says that no camera took it. */
  readonly declaredSynthetic: string | null;
  /** As read from the file, JSON; never shown outside the register. */
  readonly gps: string | null;
  readonly storedAt: Instant;
};

export function addBlob(db: Db, blob: Blob): void {
  const result = db
    .prepare(
      `INSERT INTO blob (uuid, sha256, bytes, media_type, width, height, orientation, display_width, display_height,
         taken_local, taken_offset_minutes, taken_precision, camera, declared_synthetic, gps, stored_at)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    )
    .run(
      blob.id,
      blob.sha256,
      blob.bytes,
      blob.mediaType,
      blob.width,
      blob.height,
      blob.orientation,
      blob.displayWidth,
      blob.displayHeight,
      blob.takenAt?.local ?? null,
      blob.takenAt?.offsetMinutes ?? null,
      blob.takenAt?.precision ?? null,
      blob.camera,
      blob.declaredSynthetic,
      blob.gps,
      blob.storedAt,
    );
  assertOneRow(result, 'blob');
}

export function findBlobByHash(db: Db, sha256: string): { id: BlobId } | null {
  const row = db
    .prepare<[string], { id: BlobId }>('SELECT uuid AS id FROM blob WHERE sha256 = ?')
    .get(sha256);
  return row ?? null;
}

/** A picture the library names, with a source name to speak of it by. */
export type StoredPicture = { readonly sha256: string; readonly sourceName: string };

const storedPicture = `SELECT b.sha256,
    coalesce((SELECT p.source_name FROM photo p WHERE p.blob_row = b.id ORDER BY p.id LIMIT 1), '') AS sourceName
  FROM blob b`;

/** @returns the picture behind a public id, or null */
export function findStoredPicture(db: Db, id: BlobId): StoredPicture | null {
  return db.prepare<[string], StoredPicture>(`${storedPicture} WHERE b.uuid = ?`).get(id) ?? null;
}

/** SHA-256 of every picture the library names that begins with the two hex digits. */
export function listPictureHashes(db: Db, beginning: string): string[] {
  return (
    db
      // Hex digits end with f: g comes after all that begins so.
      .prepare<[string, string], string>(
        'SELECT sha256 FROM blob WHERE sha256 >= ? AND sha256 < ? ORDER BY sha256',
      )
      .pluck()
      .all(beginning, `${beginning}g`)
  );
}

/** @returns the picture of this content, or null */
export function findPictureOfHash(db: Db, sha256: string): StoredPicture | null {
  return db.prepare<[string], StoredPicture>(`${storedPicture} WHERE b.sha256 = ?`).get(sha256) ?? null;
}
