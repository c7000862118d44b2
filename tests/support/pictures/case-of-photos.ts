/**
 * A library with one case of many photos, made in a few seconds: every original is a real JPEG with bytes of its own,
 * thumbnails and display copies lie ready as an import would have left them, the rows come through the repositories.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

import type { BlobId, CaseId, PhotoId } from '#shared-types/ids.ts';

import { inTransaction, openLibrary } from '../../../electron/database/open-library.ts';
import { addBlob } from '../../../electron/database/repositories/blobs.ts';
import { addPhoto, writePhoto } from '../../../electron/database/repositories/photos.ts';
import { createDurableFiles } from '../../../electron/files/durable-files.ts';
import { createPhotoStore } from '../../../electron/files/photo-store.ts';
import { migrationsFolder, testInstant } from '../open-test-library.ts';
import { chanceFrom } from '../world-chance.ts';
import { pourWorld } from '../world-through-repositories.ts';
import { makeWorld } from '../world.ts';
import { noisyJpeg } from './marked-picture.ts';
import { withComment } from './with-comment.ts';

const landscape = { width: 400, height: 300 };
const upright = { width: 300, height: 400 };

/** @returns the case; every tenth photo has neither stage nor time, every fifth stands upright */
export async function furnishCaseOfPhotos(libraryFolder: string, count: number): Promise<CaseId> {
  const pictures = await Promise.all([noisyJpeg(7, landscape), noisyJpeg(8, upright)]);
  const world = makeWorld(71, { cases: 1, findings: [3, 3], photos: [0, 0], marks: [0, 0] });
  const caseId = world.cases[0]!.id;
  mkdirSync(libraryFolder, { recursive: true });
  const { db } = openLibrary({ folder: libraryFolder, migrationsFolder, now: () => testInstant });
  try {
    pourWorld(db, world);
    const store = createPhotoStore(libraryFolder, createDurableFiles());
    const folders = new Set<string>();
    const write = (path: string, content: Buffer) => {
      const folder = dirname(path);
      if (!folders.has(folder)) mkdirSync(folder, { recursive: true });
      folders.add(folder);
      writeFileSync(path, content);
    };
    const chance = chanceFrom(72);
    inTransaction(db, () => {
      for (let place = 0; place < count; place += 1) {
        const isUpright = place % 5 === 4;
        const { width, height } = isUpright ? upright : landscape;
        const picture = pictures[isUpright ? 1 : 0];
        const original = withComment(picture, `photo ${String(place)}`);
        const sha256 = createHash('sha256').update(original).digest('hex');
        write(store.originalPath(sha256), original);
        write(store.derivativePath(sha256, 'thumbnail'), picture);
        write(store.derivativePath(sha256, 'display'), picture);
        const blobId = chance.uuid() as BlobId;
        const bare = place % 10 === 9;
        // Photo 1 was taken last.
        const minutes = count - place;
        const local = new Date(Date.UTC(2026, 1, 3, 7, minutes)).toISOString().slice(0, 19);
        addBlob(db, {
          id: blobId,
          sha256,
          bytes: original.length,
          mediaType: 'image/jpeg',
          width,
          height,
          orientation: 1,
          displayWidth: width,
          displayHeight: height,
          takenAt: bare ? null : { local, offsetMinutes: null, precision: 'second' },
          camera: bare ? '' : 'Orrery Bench 5',
          declaredSynthetic: null,
          gps: null,
          storedAt: testInstant,
        });
        const id = chance.uuid() as PhotoId;
        const sourceName = `IMG_${String(place + 1).padStart(4, '0')}.jpg`;
        addPhoto(db, { id, caseId, blobId, place, sourceName, at: testInstant, by: world.analyst.name });
        const caption = place % 3 === 0 ? `What lay at ${String(place)} degrees` : '';
        const parts = place % 2 === 0 ? [{ component: 'shaft', position: null }] : [];
        const stage = bare ? null : 'stripped';
        writePhoto(db, { id, revision: 1, fields: { caption, stage, seenFrom: null, parts } });
      }
    });
  } finally {
    db.close();
  }
  return caseId;
}
