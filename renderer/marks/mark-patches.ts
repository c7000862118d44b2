/** What each deed at the bench changes. */
import {
  findingFieldsOf,
  markFieldsOf,
  type BenchPatch,
  type BenchState,
} from '#analysis/marks/bench-state.ts';
import type { FindingFields } from '#shared-types/finding.ts';
import type { FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';

export function newMark(
  state: BenchState,
  photoId: PhotoId,
  geometry: MarkGeometry,
): { readonly id: MarkId; readonly patches: readonly BenchPatch[] } {
  const id = crypto.randomUUID() as MarkId;
  let order = 0;
  for (const mark of state.marks.values())
    if (mark.photoId === photoId) order = Math.max(order, mark.order + 1);
  return { id, patches: [{ patch: 'put-mark', mark: { id, photoId, findingId: null, geometry, order } }] };
}

export function reshaped(state: BenchState, id: MarkId, geometry: MarkGeometry): readonly BenchPatch[] {
  const mark = state.marks.get(id);
  return mark === undefined ? [] : [{ patch: 'put-mark', mark: { ...markFieldsOf(mark), geometry } }];
}

/** Gives a mark to a finding that is there. */
export function given(state: BenchState, id: MarkId, findingId: FindingId): readonly BenchPatch[] {
  const mark = state.marks.get(id);
  if (mark === undefined || mark.findingId === findingId) return [];
  return [{ patch: 'put-mark', mark: { ...markFieldsOf(mark), findingId } }];
}

export function newFinding(fields: FindingFields): {
  readonly id: FindingId;
  readonly patches: readonly BenchPatch[];
} {
  const id = crypto.randomUUID() as FindingId;
  return { id, patches: [{ patch: 'put-finding', findingId: id, fields }] };
}

export function changedFinding(
  state: BenchState,
  id: FindingId,
  change: Partial<FindingFields>,
): readonly BenchPatch[] {
  const finding = state.findings.get(id);
  if (finding === undefined) return [];
  const before = findingFieldsOf(finding);
  const fields = { ...before, ...change };
  if (JSON.stringify(fields) === JSON.stringify(before)) return [];
  return [{ patch: 'put-finding', findingId: id, fields }];
}

/** A finding goes with the marks that show it. */
export function removedFinding(state: BenchState, id: FindingId): readonly BenchPatch[] {
  const marks = [...state.marks.values()].filter((mark) => mark.findingId === id);
  return [
    ...marks.map((mark): BenchPatch => ({ patch: 'remove-mark', markId: mark.id })),
    { patch: 'remove-finding', findingId: id },
  ];
}

/** The photo on which patches can be seen, null where they touch none. */
export function photoTouched(patches: readonly BenchPatch[], before: BenchState): PhotoId | null {
  for (const patch of patches) {
    if (patch.patch === 'put-mark') return patch.mark.photoId;
    if (patch.patch === 'remove-mark') return before.marks.get(patch.markId)?.photoId ?? null;
  }
  return null;
}
