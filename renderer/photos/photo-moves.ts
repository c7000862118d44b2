/** Moving photos within the case's order. Pure. */
import type { PhotoId } from '#shared-types/ids.ts';

export type PhotoMove = {
  /** In the order they shall have. */
  readonly photoIds: readonly PhotoId[];
  /** Before this one; to the end where it is null. */
  readonly before: PhotoId | null;
};

/** The order after the move, as the program carries it out. */
export function afterMove(order: readonly PhotoId[], { photoIds, before }: PhotoMove): readonly PhotoId[] {
  const moved = new Set(photoIds);
  const from = before === null ? order.length : order.indexOf(before);
  const next = order.slice(from < 0 ? order.length : from).find((id) => !moved.has(id));
  const others = order.filter((id) => !moved.has(id));
  const at = next === undefined ? others.length : others.indexOf(next);
  const there = photoIds.filter((id) => order.includes(id));
  return [...others.slice(0, at), ...there, ...others.slice(at)];
}

/** Photos dropped between two others: before the one now at `place`; null where that changes nothing. */
export function moveToPlace(
  order: readonly PhotoId[],
  chosen: ReadonlySet<PhotoId>,
  place: number,
): PhotoMove | null {
  const before = order.slice(place).find((id) => !chosen.has(id)) ?? null;
  return unlessIdle(order, { photoIds: order.filter((id) => chosen.has(id)), before });
}

/** A step by an arrow key: one place, or one row of `columns`; null where there is no way to go. */
export function moveByKey(
  order: readonly PhotoId[],
  chosen: ReadonlySet<PhotoId>,
  key: string,
  columns: number,
): PhotoMove | null {
  const others = order.filter((id) => !chosen.has(id));
  const othersBefore = (place: number) => order.slice(0, place).filter((id) => !chosen.has(id)).length;
  const first = othersBefore(order.findIndex((id) => chosen.has(id)));
  const last = othersBefore(order.findLastIndex((id) => chosen.has(id)));
  const to = {
    ArrowLeft: first - 1,
    ArrowRight: last + 1,
    ArrowUp: first - columns,
    ArrowDown: last + columns,
    Home: 0,
    End: others.length,
  }[key];
  if (to === undefined || chosen.size === 0) return null;
  const before = others[Math.max(0, to)] ?? null;
  return unlessIdle(order, { photoIds: order.filter((id) => chosen.has(id)), before });
}

function unlessIdle(order: readonly PhotoId[], move: PhotoMove): PhotoMove | null {
  const after = afterMove(order, move);
  return after.every((id, place) => id === order[place]) ? null : move;
}
