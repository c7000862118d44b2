/** Which photos are chosen, and where the keyboard stands among them. Pure: the order comes with every question. */
import type { PhotoId } from '#shared-types/ids.ts';

export type PhotoChoice = {
  readonly chosen: ReadonlySet<PhotoId>;
  /** Where the keyboard stands, chosen or not. */
  readonly active: PhotoId | null;
  /** Where a stretch begins that Shift draws on. */
  readonly anchor: PhotoId | null;
};

export const nothingChosen: PhotoChoice = { chosen: new Set(), active: null, anchor: null };

export function onlyOne(id: PhotoId): PhotoChoice {
  return { chosen: new Set([id]), active: id, anchor: id };
}

export function toggled({ chosen }: PhotoChoice, id: PhotoId): PhotoChoice {
  const next = new Set(chosen);
  if (!next.delete(id)) next.add(id);
  return { chosen: next, active: id, anchor: id };
}

/** Everything from the anchor to here, and nothing else. */
export function extendedTo(choice: PhotoChoice, id: PhotoId, order: readonly PhotoId[]): PhotoChoice {
  const anchor = choice.anchor ?? choice.active ?? id;
  const [from, to] = [order.indexOf(anchor), order.indexOf(id)].sort((a, b) => a - b);
  if (from === undefined || to === undefined || from < 0) return onlyOne(id);
  return { chosen: new Set(order.slice(from, to + 1)), active: id, anchor };
}

/** The keyboard goes on; what is chosen stays. */
export function walkedTo(choice: PhotoChoice, id: PhotoId): PhotoChoice {
  return { ...choice, active: id };
}

export function these(ids: readonly PhotoId[], active: PhotoId | null = null): PhotoChoice {
  return { chosen: new Set(ids), active: active ?? ids[0] ?? null, anchor: active ?? ids[0] ?? null };
}

/** Back to one: where the keyboard stands. */
export function reduced(choice: PhotoChoice): PhotoChoice {
  const id = choice.active ?? [...choice.chosen][0];
  return id === undefined ? nothingChosen : onlyOne(id);
}

/** Without what is no longer there; the same object where nothing went. */
export function within(choice: PhotoChoice, order: readonly PhotoId[]): PhotoChoice {
  const there = new Set(order);
  const kept = (id: PhotoId | null) => (id !== null && there.has(id) ? id : null);
  const chosen = [...choice.chosen].filter((id) => there.has(id));
  const [active, anchor] = [kept(choice.active), kept(choice.anchor)];
  if (chosen.length === choice.chosen.size && active === choice.active && anchor === choice.anchor)
    return choice;
  return { chosen: new Set(chosen), active, anchor };
}

/** Who stands where these go: the next one that stays, else the last before them; null where none stays. */
export function neighbourOf(gone: ReadonlySet<PhotoId>, order: readonly PhotoId[]): PhotoId | null {
  const first = order.findIndex((id) => gone.has(id));
  const after = order.slice(first).find((id) => !gone.has(id));
  return after ?? order.slice(0, Math.max(0, first)).findLast((id) => !gone.has(id)) ?? null;
}

export type GridShape = { readonly columns: number; readonly rowsInSight: number };

/** Where a key leads from place `at`; null for a key that leads nowhere. */
export function steppedTo(key: string, at: number, count: number, shape: GridShape): number | null {
  const { columns, rowsInSight } = shape;
  const page = columns * Math.max(1, rowsInSight);
  const last = count - 1;
  const inColumn = (to: number) => (to < 0 || to > last ? at : to);
  switch (key) {
    case 'ArrowLeft':
      return Math.max(0, at - 1);
    case 'ArrowRight':
      return Math.min(last, at + 1);
    case 'ArrowUp':
      return inColumn(at - columns);
    case 'ArrowDown':
      return inColumn(at + columns);
    case 'PageUp':
      return at - page < 0 ? at % columns : at - page;
    case 'PageDown':
      return at + page > last ? last : at + page;
    case 'Home':
      return 0;
    case 'End':
      return last;
    default:
      return null;
  }
}
