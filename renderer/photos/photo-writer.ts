/** Changes to what is said of a photo, one after the other, each with the revision of then. */
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import type { Photo, PhotoFields } from '#shared-types/photo.ts';
import { call } from '../api/client.ts';
import { putAnswer, readAgain } from '../api/queries.ts';
import { queryClient } from '../api/query-client.ts';
import { toastError } from '../ui/toaster.tsx';

let turn: Promise<unknown> = Promise.resolve();

/** Answers whether it was saved; says itself what went wrong. */
export function writePhoto(caseId: CaseId, photoId: PhotoId, fields: Partial<PhotoFields>): Promise<boolean> {
  const written = turn.then(() => write(caseId, photoId, fields));
  turn = written;
  return written;
}

async function write(caseId: CaseId, photoId: PhotoId, fields: Partial<PhotoFields>): Promise<boolean> {
  const photo = listed(caseId)?.find((known) => known.id === photoId);
  if (photo === undefined) return false;
  try {
    const now = await call('photos.change', { photoId, revision: photo.revision, fields });
    // An older list that is just being read must not come after this one.
    await queryClient.cancelQueries({ queryKey: ['photos.list', { caseId }] });
    const list = listed(caseId);
    if (list !== undefined) {
      putAnswer(
        'photos.list',
        { caseId },
        list.map((known) => (known.id === photoId ? now : known)),
      );
    }
    return true;
  } catch (error) {
    toastError(error);
    await readAgain('photos.list', { caseId });
    return false;
  }
}

function listed(caseId: CaseId): readonly Photo[] | undefined {
  return queryClient.getQueryData<Photo[]>(['photos.list', { caseId }]);
}
