/** Which photo and mark of each case to come back to, as long as the window is open. */
import type { CaseId, MarkId, PhotoId } from '#shared-types/ids.ts';

const lastPhotos = new Map<CaseId, PhotoId>();
const marksToShow = new Map<CaseId, MarkId>();

export function noteLastPhoto(caseId: CaseId, photoId: PhotoId): void {
  lastPhotos.set(caseId, photoId);
}

export function lastPhotoOf(caseId: CaseId): PhotoId | null {
  return lastPhotos.get(caseId) ?? null;
}

/** The mark that the marks station shall choose when it is opened next. */
export function noteMarkToShow(caseId: CaseId, markId: MarkId): void {
  marksToShow.set(caseId, markId);
}

export function markToShow(caseId: CaseId): MarkId | null {
  return marksToShow.get(caseId) ?? null;
}
