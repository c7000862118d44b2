/** The order of a case's photos. One taken out keeps its place among them and comes back to it. */
import { AppError } from '#shared-types/errors.ts';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, rowOf } from './written-row.ts';

type Placed = { row: number; id: PhotoId; place: number };

/**
 * Moves photos, in the order given, before another one, or to the end where `before` is null; where `before` is among
 * those moved, before the first one after it that is not. All others keep their order.
 * @throws AppError not-found for a photo that is not in this case
 */
export function movePhotos(
  db: Db,
  input: { caseId: CaseId; photoIds: readonly PhotoId[]; before: PhotoId | null },
): void {
  const caseRow = rowOf(db, 'case', input.caseId);
  const all = db
    .prepare<[number], Placed>(
      'SELECT id AS row, uuid AS id, place FROM photo WHERE case_row = ? ORDER BY place, id',
    )
    .all(caseRow);
  const known = new Map(all.map((photo) => [photo.id, photo]));
  const named = (id: PhotoId): Placed => {
    const photo = known.get(id);
    if (!photo) throw new AppError('not-found', { thing: 'photo' });
    return photo;
  };
  const moved = new Set(input.photoIds.map(named));
  const from = input.before === null ? all.length : all.indexOf(named(input.before));
  const next = all.slice(from).find((photo) => !moved.has(photo)) ?? null;
  const others = all.filter((photo) => !moved.has(photo));
  const at = next === null ? others.length : others.indexOf(next);
  writePlaces(db, all, [...others.slice(0, at), ...moved, ...others.slice(at)]);
}

/** Hands the places there are out anew: an import under way has the ones after them. */
function writePlaces(db: Db, before: readonly Placed[], after: readonly Placed[]): void {
  const write = db.prepare('UPDATE photo SET place = ? WHERE id = ?');
  let last = -1;
  before.forEach(({ place }, index) => {
    last = Math.max(place, last + 1);
    const photo = after[index];
    if (photo && photo.place !== last) assertOneRow(write.run(last, photo.row), 'photo placed');
  });
}
