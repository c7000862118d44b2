/** Every address within the page, made in one place. They stand behind the # of the window's address. */
import { useParams } from 'wouter';
import type { CaseId, FindingId, PhotoId } from '#shared-types/ids.ts';

/** The stations of a case in the order of the work. */
export const stations = ['claim', 'photos', 'marks', 'findings', 'chain', 'report'] as const;
export type Station = (typeof stations)[number];

export const shelfAddress = '/';
export const searchAddress = '/search';
export const galleryAddress = '/gallery';

export function stationAddress(caseId: CaseId, station: Station): string {
  return `/case/${caseId}/${station}`;
}

/** The marks station at one photo. */
export function photoAddress(caseId: CaseId, photoId: PhotoId): string {
  return `/case/${caseId}/marks/${photoId}`;
}

/** The findings station with one finding chosen. */
export function findingAddress(caseId: CaseId, findingId: FindingId): string {
  return `/case/${caseId}/findings/${findingId}`;
}

/** The finding that the address names, within the findings station; null when it names none. */
export function useAddressedFinding(): FindingId | null {
  const { station, inside } = useParams<{ station?: string; inside?: string }>();
  return (station === 'findings' && inside !== undefined ? inside : null) as FindingId | null;
}

/** Which place an address belongs to: focus moves to the heading when it changes, not within it. */
export function placeOf(location: string): string {
  const [, first = '', id = '', station = ''] = location.split('/');
  return first === 'case' ? `case/${id}/${station}` : first;
}
