import { describe, expect, it } from 'vitest';
import {
  changedFinding,
  drawnMark,
  givenMarks,
  givenToNewFinding,
  movedMarks,
  removedFinding,
  removedMarks,
  type Patches,
} from '#analysis/marks/bench-deeds.ts';
import { deskOf, perform, redoAt, undoAt, type BenchDesk } from '#analysis/marks/bench-desk.ts';
import { emptyBench } from '#analysis/marks/bench-state.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { toBack } from '#analysis/marks/stacking.ts';
import { photo } from '../../pdf/report-case.ts';
import { stepWords } from '../../../renderer/marks/step-words.ts';
import { findingFields, findingId, markId, photoId } from './bench-gestures.ts';

const photos = [photo(1), photo(2), photo(3, { id: photoId })];
const arrow = { kind: 'arrow', v: 1, tail: imagePoint(0, 0), tip: imagePoint(10, 10) } as const;
const line = { kind: 'line', v: 1, from: imagePoint(0, 0), to: imagePoint(10, 10) } as const;

const after = (desk: BenchDesk, deed: (state: BenchDesk['shown']) => Patches) =>
  perform(desk, deed(desk.shown));
const empty = deskOf(emptyBench);
const drawn = after(empty, (state) => drawnMark(state, markId(1), photoId, arrow));
const two = after(drawn, (state) => drawnMark(state, markId(2), photoId, line));
const found = after(two, (state) => givenToNewFinding(state, [markId(1)], findingId(1), findingFields()));

/** What is said when the last deed at the desk is taken back, and when it is done again. */
function said(desk: BenchDesk): readonly string[] {
  const undone = undoAt(desk)!;
  const redone = redoAt(undone)!;
  return [
    stepWords(photos, undone.shown, desk.shown, undone.pending.at(-1)!.patches),
    stepWords(photos, undone.shown, redone.shown, redone.pending.at(-1)!.patches),
  ];
}

describe('a step of the history, taken back and done again, is said as what it was', () => {
  const ids = [markId(1), markId(2)];
  it.each([
    ['a mark drawn', drawn, 'arrow drawn on photo 3'],
    ['a finding for it', found, 'finding 1 entered for the arrow on photo 3'],
    [
      'given to it',
      after(found, (s) => givenMarks(s, [markId(2)], findingId(1))),
      'line on photo 3 given to finding 1',
    ],
    [
      'taken from it',
      after(found, (s) => givenMarks(s, ids, null)),
      'arrow on photo 3 taken from the finding',
    ],
    [
      'moved',
      after(two, (s) => movedMarks(s, ids, 5, 5, { width: 900, height: 900 })),
      '2 marks changed on photo 3',
    ],
    ['stacked', after(two, (s) => toBack(s, new Set([markId(2)]))), 'marks put in another order on photo 3'],
    ['deleted', after(two, (s) => removedMarks(s, ids)), '2 marks deleted on photo 3'],
    [
      'a finding changed',
      after(found, (s) => changedFinding(s, findingId(1), { note: 'x' })),
      'finding 1 changed',
    ],
    [
      'a finding deleted',
      after(found, (s) => removedFinding(s, findingId(1))),
      'finding 1 deleted with the arrow on photo 3',
    ],
  ])('%s', (_, desk, words) => {
    expect(said(desk)).toEqual([words, words]);
  });
});
