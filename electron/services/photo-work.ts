import { AppError } from '#shared-types/errors.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo, PhotoChange, PhotoFields } from '#shared-types/photo.ts';

import { readStanding } from '../database/repositories/cases.ts';
import { caseOfPhoto, readPhoto, writePhoto } from '../database/repositories/photos.ts';
import { given } from './case-work.ts';
import { recordWrite } from './recorded-write.ts';
import type { Services } from './services.ts';

/** Caption, stage, side and parts of a photo. @throws AppError not-found, stale-revision, case-closed, term-unknown */
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
      const { caption, stage, seenFrom, parts } = readPhoto(db, photoId);
      const fields: PhotoFields = { caption, stage, seenFrom, parts, ...given(change.fields) };
      refuseUnknownTerms(pack, fields);
      writePhoto(db, { id: photoId, revision, fields });
    },
  });
  services.publish({ name: 'case-changed', payload: { caseId, what: 'photos' } });
  return readPhoto(db, photoId);
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
