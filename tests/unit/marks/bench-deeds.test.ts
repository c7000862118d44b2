import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  drawnMark,
  duplicatedMarks,
  givenMarks,
  givenToNewFinding,
  movedMarks,
  removedMarks,
  reshapedMarks,
} from '#analysis/marks/bench-deeds.ts';
import {
  accepted,
  deskOf,
  nextChanges,
  perform,
  redoAt,
  undoAt,
  type BenchDesk,
} from '#analysis/marks/bench-desk.ts';
import { applyPatches, emptyBench, toChanges, type BenchState } from '#analysis/marks/bench-state.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { toBack, toFront } from '#analysis/marks/stacking.ts';
import { marksOnPhoto } from '#analysis/report/mark-labels.ts';
import { benchChangeSchema } from '#shared-types/bench-change.ts';
import type { MarkId, PhotoId } from '#shared-types/ids.ts';
import { markFieldsSchema, type MarkGeometry } from '#shared-types/mark.ts';
import { chanceFrom } from '../../support/world-chance.ts';
import { drawDeed, type DeedGround } from '../../support/world-deeds.ts';
import { turbochargerPack } from '../../support/world.ts';
import { image } from './any-mark.ts';
import { contentOf, findingFields, findingId, markId, photoId } from './bench-gestures.ts';

const ground: DeedGround = {
  pack: turbochargerPack(),
  photos: [
    { id: photoId, width: 120, height: 90 },
    { id: '00000000-0000-4000-8000-000000000002' as PhotoId, width: 64, height: 96 },
  ],
};

const arrowAt = (x: number): MarkGeometry => ({
  kind: 'arrow',
  v: 1,
  tail: imagePoint(x, 100),
  tip: imagePoint(x + 50, 200),
});

function drawnOnes(count: number): BenchState {
  return Array.from({ length: count }, (_, n) => n).reduce(
    (state, n) => applyPatches(state, drawnMark(state, markId(n), photoId, arrowAt(100 * n))),
    emptyBench,
  );
}

const stackOf = (state: BenchState) =>
  marksOnPhoto([...state.marks.values()], photoId).map(({ id }) => Number(id.slice(-3)));
const ids = (...numbers: number[]) => new Set<MarkId>(numbers.map(markId));

/** A walk of deeds, undos, redos and the library's answers. */
const walk = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: fc.nat().map((seed) => ({ do: 'deed' as const, seed })) },
    { weight: 2, arbitrary: fc.constant({ do: 'undo' as const }) },
    { weight: 1, arbitrary: fc.constant({ do: 'redo' as const }) },
    { weight: 2, arbitrary: fc.constant({ do: 'answer' as const }) },
  ),
  { maxLength: 40 },
);

/** The library as it answers: everything asked for is carried out, revisions count up. */
function answered(desk: BenchDesk): BenchDesk {
  const changes = nextChanges(desk);
  if (changes === null) return desk;
  if (changes.length === 0) return accepted(desk, null);
  return accepted(desk, {
    marks: changes.flatMap((each) =>
      each.change === 'put-mark' ? [{ ...each.mark, revision: (each.revision ?? 0) + 1 }] : [],
    ),
    findings: changes.flatMap((each) =>
      each.change === 'put-finding'
        ? [
            {
              ...each.fields,
              id: each.findingId,
              number: desk.shown.findings.get(each.findingId)?.number ?? 999,
              revision: (each.revision ?? 0) + 1,
            },
          ]
        : [],
    ),
    removedMarkIds: changes.flatMap((each) => (each.change === 'remove-mark' ? [each.markId] : [])),
    removedFindingIds: changes.flatMap((each) => (each.change === 'remove-finding' ? [each.findingId] : [])),
  });
}

describe('deeds of every kind', () => {
  it('undo is the identity after each, and redo after each undo, through any interleaving with the library', () => {
    fc.assert(
      fc.property(walk, (moves) => {
        let desk = deskOf(emptyBench);
        /** What was shown before each deed that is done, and after each that was taken back. */
        let before: unknown[] = [];
        let after: unknown[] = [];
        for (const move of moves) {
          const shown = contentOf(desk.shown);
          if (move.do === 'answer') {
            desk = answered(desk);
            expect(contentOf(desk.shown)).toEqual(shown);
          } else if (move.do === 'deed') {
            const patches = drawDeed(chanceFrom(move.seed), desk.shown, ground);
            if (patches.length === 0) continue;
            desk = perform(desk, patches);
            before = [...before, shown];
            after = [];
          } else if (move.do === 'undo') {
            const next = undoAt(desk);
            expect(next === null).toBe(before.length === 0);
            if (next === null) continue;
            desk = next;
            expect(contentOf(desk.shown)).toEqual(before.at(-1));
            before = before.slice(0, -1);
            after = [...after, shown];
          } else {
            const next = redoAt(desk);
            expect(next === null).toBe(after.length === 0);
            if (next === null) continue;
            desk = next;
            expect(contentOf(desk.shown)).toEqual(after.at(-1));
            after = after.slice(0, -1);
            before = [...before, shown];
          }
        }
        while (before.length > 0) {
          desk = undoAt(desk)!;
          expect(contentOf(desk.shown)).toEqual(before.pop());
        }
        expect(desk.shown.marks.size + desk.shown.findings.size).toBe(0);
      }),
    );
  });

  it('ask the library only for what it may be asked', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { maxLength: 30 }), (seeds) => {
        let state = emptyBench;
        for (const seed of seeds) {
          const patches = drawDeed(chanceFrom(seed), state, ground);
          for (const change of toChanges(state, patches)) {
            expect(benchChangeSchema.safeParse(change).error).toBeUndefined();
          }
          state = applyPatches(state, patches);
        }
      }),
    );
  });
});

describe('a duplicate', () => {
  it('lies beside what it copies, above all, given to the same finding', () => {
    const start = applyPatches(
      drawnOnes(3),
      givenToNewFinding(drawnOnes(3), ids(1), findingId(1), findingFields()),
    );
    const copies = duplicatedMarks(start, ids(1, 0), [markId(10), markId(11)], 40, image);
    const state = applyPatches(start, copies.patches);
    expect(copies.ids).toEqual([markId(10), markId(11)]);
    expect(stackOf(state)).toEqual([0, 1, 2, 10, 11]);
    expect(state.marks.get(markId(11))).toMatchObject({
      findingId: findingId(1),
      geometry: { tail: { x: 140, y: 140 } },
    });
    expect(state.marks.get(markId(10))).toMatchObject({ findingId: null });
  });

  it('lies to the other side where the picture ends', () => {
    const geometry = {
      kind: 'line',
      v: 1,
      from: imagePoint(3000, 2900),
      to: imagePoint(4000, 3000),
    } as const;
    const start = applyPatches(emptyBench, drawnMark(emptyBench, markId(0), photoId, geometry));
    const copies = duplicatedMarks(start, ids(0), [markId(1)], 40, image);
    expect(applyPatches(start, copies.patches).marks.get(markId(1))).toMatchObject({
      geometry: { to: { x: 3960, y: 2960 } },
    });
  });
});

describe('stacking', () => {
  it('brings marks to the front or to the back and keeps them among themselves', () => {
    const start = drawnOnes(5);
    expect(stackOf(applyPatches(start, toFront(start, ids(1, 3))))).toEqual([0, 2, 4, 1, 3]);
    expect(stackOf(applyPatches(start, toBack(start, ids(1, 3))))).toEqual([1, 3, 0, 2, 4]);
  });

  it('is nothing where they are there already', () => {
    const start = drawnOnes(5);
    expect(toFront(start, ids(3, 4))).toEqual([]);
    expect(toBack(start, ids(0, 1))).toEqual([]);
    expect(toBack(start, ids(0, 1, 2, 3, 4))).toEqual([]);
  });

  it('keeps any order that can be stored, also when the numbers run out', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.oneof(fc.nat(12), fc.integer({ min: 999_990, max: 1_000_000 })), {
          minLength: 1,
          maxLength: 9,
        }),
        fc.array(fc.tuple(fc.boolean(), fc.array(fc.nat(8), { maxLength: 4 })), { maxLength: 6 }),
        (orders, moves) => {
          let state = applyPatches(
            emptyBench,
            orders.map((order, n) => ({
              patch: 'put-mark' as const,
              mark: { id: markId(n), photoId, findingId: null, geometry: arrowAt(n), order },
            })),
          );
          for (const [front, picks] of moves) {
            const chosen = ids(...picks.filter((pick) => pick < orders.length));
            const stack = stackOf(state);
            const moved = stack.filter((n) => chosen.has(markId(n)));
            const others = stack.filter((n) => !chosen.has(markId(n)));
            state = applyPatches(state, front ? toFront(state, chosen) : toBack(state, chosen));
            expect(stackOf(state)).toEqual(front ? [...others, ...moved] : [...moved, ...others]);
            state = applyPatches(state, drawnMark(state, markId(50), photoId, arrowAt(1)));
            expect(stackOf(state).at(-1)).toBe(50);
            for (const { revision: _revision, ...mark } of state.marks.values()) {
              expect(markFieldsSchema.safeParse(mark).error).toBeUndefined();
            }
            state = applyPatches(state, [{ patch: 'remove-mark', markId: markId(50) }]);
          }
        },
      ),
    );
  });
});

describe('what changes nothing', () => {
  it('is no deed', () => {
    const start = drawnOnes(2);
    expect(reshapedMarks(start, [{ id: markId(0), geometry: arrowAt(0) }])).toEqual([]);
    expect(movedMarks(start, ids(0, 1), -500, -500, image)).toHaveLength(2);
    expect(movedMarks(start, ids(0), -500, 0, image)).toEqual([]);
    expect(givenMarks(start, ids(0), null)).toEqual([]);
    expect(removedMarks(start, ids(7))).toEqual([]);
    expect(duplicatedMarks(start, ids(), [], 10, image).patches).toEqual([]);
  });
});
