/** The deeds at the bench, with ids for what is new. */
import { drawnMark, duplicatedMarks, type Patches } from '#analysis/marks/bench-deeds.ts';
import type { BenchState } from '#analysis/marks/bench-state.ts';
import type { Size } from '#analysis/marks/planes.ts';
import type { FindingFields } from '#shared-types/finding.ts';
import type { FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';

export { changedFinding, removedFinding } from '#analysis/marks/bench-deeds.ts';

export function newMark(
  state: BenchState,
  photoId: PhotoId,
  geometry: MarkGeometry,
): { readonly id: MarkId; readonly patches: Patches } {
  const id = crypto.randomUUID() as MarkId;
  return { id, patches: drawnMark(state, id, photoId, geometry) };
}

export function duplicates(
  state: BenchState,
  ids: ReadonlySet<MarkId>,
  offset: number,
  image: Size,
): { readonly ids: readonly MarkId[]; readonly patches: Patches } {
  const newIds = Array.from(ids, () => crypto.randomUUID() as MarkId);
  return duplicatedMarks(state, ids, newIds, offset, image);
}

export function newFindingId(): FindingId {
  return crypto.randomUUID() as FindingId;
}

export function newFinding(fields: FindingFields): { readonly id: FindingId; readonly patches: Patches } {
  const id = newFindingId();
  return { id, patches: [{ patch: 'put-finding', findingId: id, fields }] };
}
