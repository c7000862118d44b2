/**
 * The case's photos as they were put in order, shown at once and written a moment later: a photo carried along with a
 * key held down is one move, not thirty.
 */
import { useMemo } from 'react';
import { create } from 'zustand';
import type { CaseId } from '#shared-types/ids.ts';
import type { Photo } from '#shared-types/photo.ts';
import { afterMove, type PhotoMove } from './photo-moves.ts';
import { writeOrder } from './photo-writer.ts';

/** Within the 400 ms after which whatever was done has to be on its way. */
const settleMs = 350;

type Moves = { readonly ofCase: ReadonlyMap<CaseId, readonly PhotoMove[]> };
const useMoves = create<Moves>(() => ({ ofCase: new Map() }));
const none: readonly PhotoMove[] = [];

type Waiting = { readonly move: PhotoMove; readonly timer: number };
const waiting = new Map<CaseId, Waiting>();

function note(caseId: CaseId, change: (moves: readonly PhotoMove[]) => readonly PhotoMove[]): void {
  useMoves.setState(({ ofCase }) => ({
    ofCase: new Map(ofCase).set(caseId, change(ofCase.get(caseId) ?? none)),
  }));
}

/** The list as it will be once the moves under way are written. */
export function useShownOrder(caseId: CaseId, photos: readonly Photo[]): readonly Photo[] {
  const moves = useMoves(({ ofCase }) => ofCase.get(caseId) ?? none);
  return useMemo(() => moves.reduce(withMove, photos), [moves, photos]);
}

function withMove(photos: readonly Photo[], move: PhotoMove): readonly Photo[] {
  const byId = new Map(photos.map((photo) => [photo.id, photo]));
  return afterMove([...byId.keys()], move).flatMap((id) => byId.get(id) ?? []);
}

/** Shows the move at once. A further move of the same photos that comes soon takes its place. */
export function movePhotos(caseId: CaseId, move: PhotoMove): void {
  const earlier = waiting.get(caseId);
  if (earlier !== undefined && sameOnes(earlier.move, move)) {
    window.clearTimeout(earlier.timer);
    note(caseId, (moves) => [...moves.filter((known) => known !== earlier.move), move]);
  } else {
    sendWaiting(caseId);
    note(caseId, (moves) => [...moves, move]);
  }
  waiting.set(caseId, { move, timer: window.setTimeout(() => sendWaiting(caseId), settleMs) });
}

function sameOnes(one: PhotoMove, other: PhotoMove): boolean {
  return (
    one.photoIds.length === other.photoIds.length &&
    one.photoIds.every((id, place) => id === other.photoIds[place])
  );
}

/** Nothing that is still waiting may be lost, or overtaken by what is written next. */
export function sendWaiting(caseId: CaseId): void {
  const last = waiting.get(caseId);
  if (last === undefined) return;
  waiting.delete(caseId);
  window.clearTimeout(last.timer);
  void writeOrder(caseId, last.move, (photos) => withMove(photos, last.move)).then(() =>
    note(caseId, (moves) => moves.filter((known) => known !== last.move)),
  );
}

window.addEventListener('pagehide', () => {
  for (const caseId of [...waiting.keys()]) sendWaiting(caseId);
});
