/** Changes to a case's photos, one after the other, each with the revision of then. */
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import type { PartShown, Photo, PhotoFields } from '#shared-types/photo.ts';
import { call } from '../api/client.ts';
import { putAnswer, readAgain } from '../api/queries.ts';
import { queryClient } from '../api/query-client.ts';
import { toastError } from '../ui/toaster.tsx';
import type { PhotoMove } from './photo-moves.ts';

let turn: Promise<unknown> = Promise.resolve();

/** The work begins when everything begun before has ended, well or not. */
function inTurn<Value>(work: () => Promise<Value>): Promise<Value> {
  const mine = turn.then(work, work);
  turn = mine.catch(() => undefined);
  return mine;
}

/** Answers whether it was saved; says itself what went wrong. */
export function writePhoto(caseId: CaseId, photoId: PhotoId, fields: Partial<PhotoFields>): Promise<boolean> {
  return told(caseId, async () => {
    const photo = listed(caseId)?.find((known) => known.id === photoId);
    if (photo === undefined) return false;
    await putIntoList(caseId, [await call('photos.change', { photoId, revision: photo.revision, fields })]);
    return true;
  });
}

export type Assignment = {
  readonly fields: Partial<Pick<PhotoFields, 'stage' | 'seenFrom'>>;
  readonly addParts: readonly PartShown[];
  readonly removeParts: readonly PartShown[];
};

/** Says the same of many photos, of all or of none. Answers whether it was saved; says itself what went wrong. */
export function assignToPhotos(
  caseId: CaseId,
  photoIds: readonly PhotoId[],
  { fields, addParts, removeParts }: Assignment,
): Promise<boolean> {
  return told(caseId, async () => {
    const request = { fields, addParts: [...addParts], removeParts: [...removeParts] };
    const photos = atRevision(caseId, photoIds);
    await putIntoList(caseId, await call('photos.assign', { caseId, photos, ...request }));
    return true;
  });
}

/** @param moved the list as it is after the move */
export function writeOrder(
  caseId: CaseId,
  move: PhotoMove,
  moved: (photos: readonly Photo[]) => readonly Photo[],
): Promise<boolean> {
  return told(caseId, async () => {
    await call('photos.reorder', { caseId, photoIds: [...move.photoIds], before: move.before });
    await changeList(caseId, moved);
    return true;
  });
}

/** @throws AppError where they could not be taken out: then all of them are still there */
export function takeOutPhotos(caseId: CaseId, photoIds: readonly PhotoId[], reason: string): Promise<void> {
  return inTurn(async () => {
    try {
      await call('photos.take-out', { caseId, photos: atRevision(caseId, photoIds), reason });
      const gone = new Set(photoIds);
      await changeList(caseId, (photos) => photos.filter(({ id }) => !gone.has(id)));
    } finally {
      await readAgain('photos.list', { caseId });
    }
  });
}

/** Answers whether it is back; says itself what went wrong. */
export function putPhotoBack(caseId: CaseId, photo: Pick<Photo, 'id' | 'revision'>): Promise<boolean> {
  return told(caseId, async () => {
    await call('photos.put-back', { photoId: photo.id, revision: photo.revision });
    await Promise.all([readAgain('photos.list', { caseId }), readAgain('photos.register', { caseId })]);
    return true;
  });
}

async function told(caseId: CaseId, work: () => Promise<boolean>): Promise<boolean> {
  try {
    return await inTurn(work);
  } catch (error) {
    toastError(error);
    await Promise.all([readAgain('photos.list', { caseId }), readAgain('photos.register', { caseId })]);
    return false;
  }
}

function listed(caseId: CaseId): readonly Photo[] | undefined {
  return queryClient.getQueryData<Photo[]>(['photos.list', { caseId }]);
}

function atRevision(caseId: CaseId, photoIds: readonly PhotoId[]) {
  const wanted = new Set(photoIds);
  return (listed(caseId) ?? [])
    .filter(({ id }) => wanted.has(id))
    .map(({ id, revision }) => ({ photoId: id, revision }));
}

function putIntoList(caseId: CaseId, written: readonly Photo[]): Promise<void> {
  const now = new Map(written.map((photo) => [photo.id, photo]));
  return changeList(caseId, (photos) => photos.map((known) => now.get(known.id) ?? known));
}

async function changeList(
  caseId: CaseId,
  change: (photos: readonly Photo[]) => readonly Photo[],
): Promise<void> {
  // An older list that is just being read must not come after this one.
  await queryClient.cancelQueries({ queryKey: ['photos.list', { caseId }] });
  const list = listed(caseId);
  if (list !== undefined) putAnswer('photos.list', { caseId }, [...change(list)]);
}
