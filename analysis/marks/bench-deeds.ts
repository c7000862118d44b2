/** What each deed at the bench changes. Ids of new things are handed in. */
import type { FindingFields } from '#shared-types/finding.ts';
import type { FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import { marksOnPhoto } from '../report/mark-labels.ts';
import {
  findingFieldsOf,
  markFieldsOf,
  type BenchPatch,
  type BenchState,
  type HeldMark,
} from './bench-state.ts';
import { moveMarks, sameGeometry } from './mark-handles.ts';
import type { Size } from './planes.ts';
import { roomOnTop } from './stacking.ts';

export type Patches = readonly BenchPatch[];
export type Reshape = { readonly id: MarkId; readonly geometry: MarkGeometry };

/** The marks of the ids that are there, in drawing order photo by photo as the state holds them. */
export function heldMarks(state: BenchState, ids: Iterable<MarkId>): HeldMark[] {
  const held = [...ids].map((id) => state.marks.get(id)).filter((mark) => mark !== undefined);
  return [...new Set(held.map(({ photoId }) => photoId))].flatMap((photoId) => marksOnPhoto(held, photoId));
}

/** A mark that is given to no finding yet, on top of those of its photo. */
export function drawnMark(state: BenchState, id: MarkId, photoId: PhotoId, geometry: MarkGeometry): Patches {
  const { first, patches } = roomOnTop(state, photoId, 1);
  return [...patches, { patch: 'put-mark', mark: { id, photoId, findingId: null, geometry, order: first } }];
}

export function reshapedMarks(state: BenchState, changes: readonly Reshape[]): Patches {
  return changes.flatMap(({ id, geometry }): BenchPatch[] => {
    const mark = state.marks.get(id);
    if (mark === undefined || sameGeometry(mark.geometry, geometry)) return [];
    return [{ patch: 'put-mark', mark: { ...markFieldsOf(mark), geometry } }];
  });
}

/** Moves several as one; `image` is the size of the photo they all lie on. */
export function movedMarks(
  state: BenchState,
  ids: Iterable<MarkId>,
  byX: number,
  byY: number,
  image: Size,
): Patches {
  const marks = heldMarks(state, ids);
  const moved = moveMarks(
    marks.map(({ geometry }) => geometry),
    byX,
    byY,
    image,
  );
  return reshapedMarks(
    state,
    marks.map(({ id, geometry }, index) => ({ id, geometry: moved[index] ?? geometry })),
  );
}

/**
 * Copies that lie `offset` image pixels to the right and below, or to the left and above where there is no room, given
 * to the findings of what they copy. `newIds` names at least as many as there are marks; the answer has those used.
 */
export function duplicatedMarks(
  state: BenchState,
  ids: Iterable<MarkId>,
  newIds: readonly MarkId[],
  offset: number,
  image: Size,
): { readonly ids: readonly MarkId[]; readonly patches: Patches } {
  const marks = heldMarks(state, ids);
  const [one] = marks;
  if (one === undefined) return { ids: [], patches: [] };
  const geometries = marks.map(({ geometry }) => geometry);
  const right = moveMarks(geometries, offset, offset, image);
  const moved = right.every((geometry, index) => geometry === geometries[index])
    ? moveMarks(geometries, -offset, -offset, image)
    : right;
  const { first, patches } = roomOnTop(state, one.photoId, marks.length);
  const copies = marks.flatMap((mark, index): BenchPatch[] => {
    const id = newIds[index];
    const geometry = moved[index];
    if (id === undefined || geometry === undefined) return [];
    return [{ patch: 'put-mark', mark: { ...markFieldsOf(mark), id, geometry, order: first + index } }];
  });
  return { ids: newIds.slice(0, copies.length), patches: [...patches, ...copies] };
}

export function removedMarks(state: BenchState, ids: Iterable<MarkId>): Patches {
  return heldMarks(state, ids).map(({ id }) => ({ patch: 'remove-mark', markId: id }));
}

/** Gives marks to a finding that is there, or takes them from any with null. */
export function givenMarks(state: BenchState, ids: Iterable<MarkId>, findingId: FindingId | null): Patches {
  return heldMarks(state, ids)
    .filter((mark) => mark.findingId !== findingId)
    .map((mark) => ({ patch: 'put-mark', mark: { ...markFieldsOf(mark), findingId } }));
}

/** A new finding and the marks that show it, as one deed. */
export function givenToNewFinding(
  state: BenchState,
  ids: Iterable<MarkId>,
  findingId: FindingId,
  fields: FindingFields,
): Patches {
  return [{ patch: 'put-finding', findingId, fields }, ...givenMarks(state, ids, findingId)];
}

export function changedFinding(state: BenchState, id: FindingId, change: Partial<FindingFields>): Patches {
  const finding = state.findings.get(id);
  if (finding === undefined) return [];
  const before = findingFieldsOf(finding);
  const fields = { ...before, ...change };
  if (JSON.stringify(fields) === JSON.stringify(before)) return [];
  return [{ patch: 'put-finding', findingId: id, fields }];
}

/** A finding goes with the marks that show it. */
export function removedFinding(state: BenchState, id: FindingId): Patches {
  if (!state.findings.has(id)) return [];
  const marks = [...state.marks.values()].filter((mark) => mark.findingId === id);
  return [
    ...marks.map((mark): BenchPatch => ({ patch: 'remove-mark', markId: mark.id })),
    { patch: 'remove-finding', findingId: id },
  ];
}

/** The photo on which patches can be seen, null where they touch none. */
export function photoTouched(patches: Patches, before: BenchState): PhotoId | null {
  for (const patch of patches) {
    if (patch.patch === 'put-mark') return patch.mark.photoId;
    if (patch.patch === 'remove-mark') return before.marks.get(patch.markId)?.photoId ?? null;
  }
  return null;
}
