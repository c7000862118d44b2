/** Which mark of a photo is drawn over which. */
import type { MarkId, PhotoId } from '#shared-types/ids.ts';
import { marksOnPhoto } from '../report/mark-labels.ts';
import { markFieldsOf, type BenchPatch, type BenchState, type HeldMark } from './bench-state.ts';

/** As far as a stored drawing order goes. */
const highestOrder = 1_000_000;

/**
 * The first of `count` free places on top of a photo's marks, and what has to be put first so that it is free: nothing,
 * but where the numbers have run out.
 */
export function roomOnTop(
  state: BenchState,
  photoId: PhotoId,
  count: number,
): { readonly first: number; readonly patches: readonly BenchPatch[] } {
  const marks = marksOnPhoto([...state.marks.values()], photoId);
  const first = (marks.at(-1)?.order ?? -1) + 1;
  if (first + count - 1 <= highestOrder) return { first, patches: [] };
  return { first: marks.length, patches: numbered(marks) };
}

/** The marks over all others of their photo, among themselves as they were; nothing where they are there already. */
export function toFront(state: BenchState, ids: ReadonlySet<MarkId>): readonly BenchPatch[] {
  return onEachPhoto(state, ids, (chosen, others) => {
    const highest = others.at(-1)?.order ?? -1;
    if (chosen.every(({ order }) => order > highest)) return [];
    if (highest + chosen.length > highestOrder) return numbered([...others, ...chosen]);
    return chosen.flatMap((mark, index) => put(mark, highest + 1 + index));
  });
}

/** The marks under all others of their photo, among themselves as they were; nothing where they are there already. */
export function toBack(state: BenchState, ids: ReadonlySet<MarkId>): readonly BenchPatch[] {
  return onEachPhoto(state, ids, (chosen, others) => {
    const lowest = others[0]?.order ?? highestOrder + 1;
    if (chosen.every(({ order }) => order < lowest)) return [];
    if (lowest < chosen.length) return numbered([...chosen, ...others]);
    return chosen.flatMap((mark, index) => put(mark, lowest - chosen.length + index));
  });
}

function onEachPhoto(
  state: BenchState,
  ids: ReadonlySet<MarkId>,
  stack: (chosen: readonly HeldMark[], others: readonly HeldMark[]) => readonly BenchPatch[],
): readonly BenchPatch[] {
  const all = [...state.marks.values()];
  const photos = new Set(all.filter(({ id }) => ids.has(id)).map(({ photoId }) => photoId));
  return [...photos].flatMap((photoId) => {
    const marks = marksOnPhoto(all, photoId);
    return stack(
      marks.filter(({ id }) => ids.has(id)),
      marks.filter(({ id }) => !ids.has(id)),
    );
  });
}

/** Numbers from 0 in the order given: only marks whose number changes are put. */
function numbered(marks: readonly HeldMark[]): BenchPatch[] {
  return marks.flatMap((mark, order) => put(mark, order));
}

function put(mark: HeldMark, order: number): BenchPatch[] {
  return mark.order === order ? [] : [{ patch: 'put-mark', mark: { ...markFieldsOf(mark), order } }];
}
