/** What is said of the photos of a case, their order, and which of them it still shows. */
import { AppError } from '#shared-types/errors.ts';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type {
  PartShown,
  Photo,
  PhotoChange,
  PhotoFields,
  PhotosAssign,
  PhotosReorder,
  PhotosTakeOut,
} from '#shared-types/photo.ts';

import { readStanding } from '../database/repositories/cases.ts';
import { movePhotos } from '../database/repositories/photo-order.ts';
import {
  countMarksOn,
  refuseTakenOut,
  restorePhoto,
  takePhotoOut,
} from '../database/repositories/photo-register.ts';
import { caseOfPhoto, readPhoto, writePhoto } from '../database/repositories/photos.ts';
import { given } from './case-work.ts';
import { recordWrite } from './recorded-write.ts';
import type { Services } from './services.ts';

/** As the contract has it for one photo. */
const mostParts = 20;

/**
 * Caption, stage, side and parts of a photo.
 * @throws AppError not-found, stale-revision, case-closed, photo-taken-out, term-unknown
 */
export function changePhoto(services: Services, change: PhotoChange): Photo {
  const { db } = services;
  const { photoId, revision } = change;
  const caseId = caseOfPhoto(db, photoId);
  const pack = services.packs.ofCase(readStanding(db, caseId).pack);
  recordWrite(services, {
    caseId,
    what: 'photo described',
    details: { photo: photoId, fields: Object.keys(change.fields).sort() },
    write: () => {
      refuseTakenOut(db, photoId);
      const fields: PhotoFields = { ...fieldsOf(readPhoto(db, photoId)), ...given(change.fields) };
      refuseUnknownTerms(pack, fields);
      writePhoto(db, { id: photoId, revision, fields });
    },
  });
  tellPhotos(services, caseId, []);
  return readPhoto(db, photoId);
}

/**
 * The same said of many photos, of all or of none.
 * @throws AppError not-found, stale-revision, case-closed, photo-taken-out, term-unknown, parts-too-many
 */
export function assignPhotos(services: Services, request: PhotosAssign): Photo[] {
  const { db } = services;
  const { caseId, photos, addParts, removeParts } = request;
  const pack = services.packs.ofCase(readStanding(db, caseId).pack);
  recordWrite(services, {
    caseId,
    what: 'photos described',
    details: {
      photos: photos.map(({ photoId }) => photoId),
      fields: Object.keys(request.fields).sort(),
      addParts,
      removeParts,
    },
    write: () => {
      for (const { photoId, revision } of photos) {
        refuseOtherCase(services, caseId, photoId);
        refuseTakenOut(db, photoId);
        const photo = readPhoto(db, photoId);
        const parts = withParts(photo.parts, addParts, removeParts);
        if (parts.length > mostParts) {
          throw new AppError('parts-too-many', { name: photo.sourceName, limit: mostParts });
        }
        const fields: PhotoFields = { ...fieldsOf(photo), ...given(request.fields), parts };
        refuseUnknownTerms(pack, fields);
        writePhoto(db, { id: photoId, revision, fields });
      }
    },
  });
  tellPhotos(services, caseId, []);
  return photos.map(({ photoId }) => readPhoto(db, photoId));
}

/** @throws AppError not-found (a photo of another case too), case-closed, photo-taken-out */
export function reorderPhotos(services: Services, request: PhotosReorder): null {
  const { db } = services;
  const { caseId, photoIds, before } = request;
  recordWrite(services, {
    caseId,
    what: 'photos put in order',
    details: { photos: photoIds, before },
    write: () => {
      for (const photoId of before === null ? photoIds : [...photoIds, before]) {
        refuseOtherCase(services, caseId, photoId);
        refuseTakenOut(db, photoId);
      }
      movePhotos(db, { caseId, photoIds, before });
    },
  });
  tellPhotos(services, caseId, []);
  return null;
}

/**
 * Takes photos out of the case with their marks; their lines in the register stay, with the reason.
 * @throws AppError not-found, stale-revision, case-closed, photo-taken-out: none of them is taken out then
 */
export function takePhotosOut(services: Services, request: PhotosTakeOut): null {
  const { db } = services;
  const { caseId, photos, reason } = request;
  const photoIds = photos.map(({ photoId }) => photoId);
  recordWrite(services, {
    caseId,
    what: 'photos taken out',
    details: { photos: photoIds },
    write: ({ at, by }) => {
      for (const { photoId, revision } of photos) {
        refuseOtherCase(services, caseId, photoId);
        takePhotoOut(db, { id: photoId, revision, at, by, reason });
      }
    },
  });
  tellPhotos(services, caseId, photoIds);
  return null;
}

/** Back to its place, with its marks. @throws AppError not-found, stale-revision, case-closed */
export function putPhotoBack(services: Services, request: { photoId: PhotoId; revision: number }): Photo {
  const { photoId } = request;
  recordPutBack(services, request, () => undefined);
  return readPhoto(services.db, photoId);
}

/**
 * @param also written in the same transaction
 * @throws AppError not-found, stale-revision, case-closed
 */
export function recordPutBack(
  services: Services,
  photo: { photoId: PhotoId; revision: number },
  also: () => void,
): void {
  const { db } = services;
  const { photoId, revision } = photo;
  const caseId = caseOfPhoto(db, photoId);
  recordWrite(services, {
    caseId,
    what: 'photo put back',
    details: { photo: photoId },
    write: ({ at, by }) => {
      restorePhoto(db, { id: photoId, revision, at, by });
      also();
    },
  });
  tellPhotos(services, caseId, [photoId]);
}

/** @param cameOrWent photos whose marks, if they have any, came into sight or went out of it */
function tellPhotos(services: Services, caseId: CaseId, cameOrWent: readonly PhotoId[]): void {
  services.publish({ name: 'case-changed', payload: { caseId, what: 'photos' } });
  if (cameOrWent.some((photoId) => countMarksOn(services.db, photoId) > 0)) {
    services.publish({ name: 'case-changed', payload: { caseId, what: 'bench' } });
  }
}

function fieldsOf({ caption, stage, seenFrom, parts }: Photo): PhotoFields {
  return { caption, stage, seenFrom, parts };
}

function withParts(
  parts: readonly PartShown[],
  added: readonly PartShown[],
  removed: readonly PartShown[],
): PartShown[] {
  const among = (list: readonly PartShown[], part: PartShown) =>
    list.some((known) => known.component === part.component && known.position === part.position);
  const kept = parts.filter((part) => !among(removed, part));
  return [...kept, ...added.filter((part, index) => !among([...kept, ...added.slice(0, index)], part))];
}

function refuseOtherCase(services: Services, caseId: CaseId, photoId: PhotoId): void {
  if (caseOfPhoto(services.db, photoId) !== caseId) throw new AppError('not-found', { thing: 'photo' });
}

function refuseUnknownTerms(pack: KnowledgePack, fields: PhotoFields): void {
  const { seenFrom, parts } = fields;
  if (seenFrom !== null && !pack.sides.some((side) => side.id === seenFrom)) {
    throw new AppError('term-unknown', { list: 'side', id: seenFrom });
  }
  for (const part of parts) {
    const component = pack.components.find(({ id }) => id === part.component);
    if (!component) throw new AppError('term-unknown', { list: 'part', id: part.component });
    if (part.position !== null && !component.positions.includes(part.position)) {
      throw new AppError('term-unknown', { list: 'position', id: part.position });
    }
  }
}
