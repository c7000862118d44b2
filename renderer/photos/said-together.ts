/** What several photos share, and what shall be said of all of them. Pure. */
import type { PhotoId } from '#shared-types/ids.ts';
import type { PartShown, Photo, PhotoFields, Stage } from '#shared-types/photo.ts';
import { partKey } from '../findings/finding-draft.ts';
import type { Assignment } from './photo-writer.ts';

/** Several, where not all say the same. */
export type Shared<Value> = { readonly one: Value } | 'several';

export type SharedOfPhotos = {
  readonly stage: Shared<Stage | null>;
  readonly seenFrom: Shared<string | null>;
  /** Every part that any of them shows, with the number of those that do. */
  readonly parts: readonly { readonly part: PartShown; readonly on: number }[];
};

export function sharedOf(photos: readonly Photo[]): SharedOfPhotos {
  const parts = new Map<string, { part: PartShown; on: number }>();
  for (const part of photos.flatMap((photo) => photo.parts)) {
    const known = parts.get(partKey(part));
    if (known === undefined) parts.set(partKey(part), { part, on: 1 });
    else known.on += 1;
  }
  return {
    stage: same(photos.map(({ stage }) => stage)),
    seenFrom: same(photos.map(({ seenFrom }) => seenFrom)),
    parts: [...parts.values()],
  };
}

function same<Value>(values: readonly Value[]): Shared<Value> {
  const [first] = values;
  return first !== undefined && values.every((value) => value === first) ? { one: first } : 'several';
}

/** Undefined where it stays as it is. */
export type TogetherDraft = {
  readonly stage: Stage | null | undefined;
  readonly seenFrom: string | null | undefined;
  readonly add: readonly PartShown[];
  readonly remove: readonly PartShown[];
};

export const nothingTogether: TogetherDraft = { stage: undefined, seenFrom: undefined, add: [], remove: [] };

export function saysNothing({ stage, seenFrom, add, remove }: TogetherDraft): boolean {
  return stage === undefined && seenFrom === undefined && add.length === 0 && remove.length === 0;
}

/** What is to be said of these photos and has not been applied; null where there is nothing. */
export type Unapplied = { readonly photoIds: readonly PhotoId[]; readonly draft: TogetherDraft } | null;

/**
 * Whether the draft goes with a choice that is changed: a photo more or fewer of the same several is the same work, and
 * the panel goes on showing it. With any other choice it stays with its photos, and waits.
 */
export function goesAlong(unapplied: Unapplied, chosen: readonly PhotoId[]): boolean {
  if (unapplied === null || chosen.length < 2) return false;
  const [fewer, more] =
    chosen.length < unapplied.photoIds.length
      ? [chosen, new Set(unapplied.photoIds)]
      : [unapplied.photoIds, new Set(chosen)];
  return fewer.every((id) => more.has(id));
}

/** Without the photos that are no longer in the case; null where nothing is left to apply. */
export function stillApplicable(unapplied: Unapplied, order: readonly PhotoId[]): Unapplied {
  if (unapplied === null || saysNothing(unapplied.draft)) return null;
  const there = new Set(order);
  const photoIds = unapplied.photoIds.filter((id) => there.has(id));
  return photoIds.length === 0 ? null : { ...unapplied, photoIds };
}

export function assignmentOf({ stage, seenFrom, add, remove }: TogetherDraft): Assignment {
  const fields: Partial<Pick<PhotoFields, 'stage' | 'seenFrom'>> = {
    ...(stage === undefined ? {} : { stage }),
    ...(seenFrom === undefined ? {} : { seenFrom }),
  };
  return { fields, addParts: add, removeParts: remove };
}

const without = (parts: readonly PartShown[], part: PartShown) =>
  parts.filter((known) => partKey(known) !== partKey(part));

/** The draft with this part to be added or taken off, or left as it is where that was asked for already. */
export function withPartAsked(draft: TogetherDraft, part: PartShown, what: 'add' | 'remove'): TogetherDraft {
  const asked = draft[what].some((known) => partKey(known) === partKey(part));
  const bare = { ...draft, add: without(draft.add, part), remove: without(draft.remove, part) };
  return asked ? bare : { ...bare, [what]: [...bare[what], part] };
}

/** The photos in order of the time they were taken; those without a time stay, in their order, at the end. */
export function byTimeTaken(photos: readonly Photo[]): readonly Photo[] {
  return photos.toSorted((a, b) => {
    if (a.takenAt === null || b.takenAt === null)
      return Number(a.takenAt === null) - Number(b.takenAt === null);
    // Wall times as the cameras wrote them: text of one form, which sorts as the times do.
    return a.takenAt.local < b.takenAt.local ? -1 : Number(a.takenAt.local > b.takenAt.local);
  });
}
