/**
 * Which photo and mark of each case to come back to. The photo outlives a reload of the window: it stands in the page's
 * own storage, where there is one; it is a convenience, and nothing of the case.
 */
import type { CaseId, MarkId, PhotoId } from '#shared-types/ids.ts';

type LastPhotos = readonly (readonly [CaseId, PhotoId])[];

const storageKey = 'marks-last-photos';
/** Cases remembered, the one worked on last first. */
const mostCases = 100;

let lastPhotos: LastPhotos = stored();
const marksToShow = new Map<CaseId, MarkId>();

function stored(): LastPhotos {
  try {
    const known: unknown = JSON.parse(window.localStorage.getItem(storageKey) ?? '[]');
    return Array.isArray(known) ? known.filter(isPair) : [];
  } catch {
    // No storage, or none of ours in it: the first photo will do.
    return [];
  }
}

function isPair(value: unknown): value is readonly [CaseId, PhotoId] {
  return Array.isArray(value) && value.length === 2 && value.every((part) => typeof part === 'string');
}

export function noteLastPhoto(caseId: CaseId, photoId: PhotoId): void {
  const others = lastPhotos.filter(([known]) => known !== caseId);
  lastPhotos = [[caseId, photoId] as const, ...others].slice(0, mostCases);
  try {
    window.localStorage.setItem(storageKey, JSON.stringify(lastPhotos));
  } catch (refusal) {
    // No storage: remembered as long as the window is open.
    if (!(refusal instanceof DOMException)) throw refusal;
  }
}

export function lastPhotoOf(caseId: CaseId): PhotoId | null {
  return lastPhotos.find(([known]) => known === caseId)?.[1] ?? null;
}

/** The mark that the marks station shall choose when it is opened next. */
export function noteMarkToShow(caseId: CaseId, markId: MarkId): void {
  marksToShow.set(caseId, markId);
}

export function markToShow(caseId: CaseId): MarkId | null {
  return marksToShow.get(caseId) ?? null;
}
