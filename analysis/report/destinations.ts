/**
 * Names of places in the PDF: links and bookmarks lead to them, and the screen finds by them what a click on a page
 * meant. They are made of what does not change while the case is worked on.
 */
import type { PhotoId } from '#shared-types/ids.ts';

export const fixedPlaces = [
  'title',
  'claim',
  'instruction',
  'received',
  'findings',
  'plates',
  'chain',
  'answer',
  'limits',
  'record',
  'signature',
  'register',
  'sheet',
] as const;
export type FixedPlace = (typeof fixedPlaces)[number];

export const destinations = {
  /** `place` counts a plan's sections from 0. */
  ownSection: (place: number) => `own-${place}`,
  finding: (number: number) => `finding-${number}`,
  plate: (photoId: PhotoId) => `plate-${photoId}`,
  table: (name: string) => `table-${name}`,
} as const;

export type DestinationMeaning =
  | { readonly what: FixedPlace }
  | { readonly what: 'own-section'; readonly place: number }
  | { readonly what: 'finding'; readonly number: number }
  | { readonly what: 'plate'; readonly photoId: PhotoId };

/** What stands at a named place; null for a name that is none of these. */
export function meaningOf(destination: string): DestinationMeaning | null {
  const fixed = fixedPlaces.find((place) => place === destination);
  if (fixed !== undefined) return { what: fixed };
  const [kind = '', rest = ''] = splitOnce(destination);
  if (kind === 'own') return { what: 'own-section', place: Number(rest) };
  if (kind === 'finding') return { what: 'finding', number: Number(rest) };
  if (kind === 'plate') return { what: 'plate', photoId: rest as PhotoId };
  if (kind !== 'table') return null;
  return rest === 'custody' ? { what: 'received' } : { what: rest === 'findings' ? 'findings' : 'register' };
}

function splitOnce(text: string): readonly string[] {
  const at = text.indexOf('-');
  return at < 0 ? [text] : [text.slice(0, at), text.slice(at + 1)];
}
