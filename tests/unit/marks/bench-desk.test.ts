import { describe, expect, it } from 'vitest';
import {
  accepted,
  benchClerk,
  classified,
  deskOf,
  nextChanges,
  perform,
  readAnew,
  redoAt,
  refused,
  undoAt,
  type BenchDesk,
} from '#analysis/marks/bench-desk.ts';
import { benchOf, emptyBench, type BenchPatch } from '#analysis/marks/bench-state.ts';
import type { Finding } from '#shared-types/finding.ts';
import type { Mark } from '#shared-types/mark.ts';
import { findingFields, findingId, markFields, markId } from './bench-gestures.ts';

const finding: Finding = { ...findingFields(), id: findingId(1), number: 7, revision: 1 };
const marked = (tipX: number, revision: number): Mark => ({
  ...markFields(markId(1), tipX, null),
  revision,
});
const put = (tipX: number): BenchPatch[] => [{ patch: 'put-mark', mark: markFields(markId(1), tipX, null) }];
const putOutcome = (mark: Mark) => ({
  marks: [mark],
  findings: [],
  removedMarkIds: [],
  removedFindingIds: [],
});
const tipOf = (desk: BenchDesk) => {
  const geometry = desk.shown.marks.get(markId(1))?.geometry;
  return geometry?.kind === 'arrow' ? geometry.tip.x : undefined;
};

function must(desk: BenchDesk | null): BenchDesk {
  if (desk === null) throw new Error('there was nothing to undo or redo');
  return desk;
}

describe('the desk', () => {
  it('shows what was done before the library has answered, and saves it in the order it was done', () => {
    let desk = perform(perform(deskOf(emptyBench), put(10)), put(20));
    expect(tipOf(desk)).toBe(20);
    expect(nextChanges(desk)).toEqual([
      { change: 'put-mark', mark: markFields(markId(1), 10, null), revision: null },
    ]);
    desk = accepted(desk, putOutcome(marked(10, 1)));
    expect(tipOf(desk)).toBe(20);
    expect(nextChanges(desk)).toEqual([
      { change: 'put-mark', mark: markFields(markId(1), 20, null), revision: 1 },
    ]);
    desk = accepted(desk, putOutcome(marked(20, 2)));
    expect(nextChanges(desk)).toBeNull();
    expect(desk.shown.marks.get(markId(1))?.revision).toBe(2);
  });

  it('saves an undo like any other change, with the revision of then', () => {
    let desk = accepted(perform(deskOf(emptyBench), put(10)), putOutcome(marked(10, 1)));
    desk = must(undoAt(desk));
    expect(desk.shown.marks.size).toBe(0);
    expect(nextChanges(desk)).toEqual([{ change: 'remove-mark', markId: markId(1), revision: 1 }]);
    desk = accepted(desk, { marks: [], findings: [], removedMarkIds: [markId(1)], removedFindingIds: [] });
    desk = must(redoAt(desk));
    expect(nextChanges(desk)).toEqual([
      { change: 'put-mark', mark: markFields(markId(1), 10, null), revision: null },
    ]);
  });

  it('undoes a gesture whose saving has not been answered yet', () => {
    let desk = must(undoAt(perform(deskOf(emptyBench), put(10))));
    expect(desk.shown.marks.size).toBe(0);
    desk = accepted(desk, putOutcome(marked(10, 1)));
    expect(desk.shown.marks.size).toBe(0);
    expect(nextChanges(desk)).toEqual([{ change: 'remove-mark', markId: markId(1), revision: 1 }]);
  });

  it('rolls everything unsaved back when the library refuses, and can still undo what was saved', () => {
    const library = benchOf({ marks: [marked(10, 1)], findings: [] });
    let desk = accepted(perform(deskOf(emptyBench), put(10)), putOutcome(marked(10, 1)));
    desk = perform(perform(desk, put(20)), put(30));
    desk = refused(desk, library);
    expect(tipOf(desk)).toBe(10);
    expect(nextChanges(desk)).toBeNull();
    expect(must(undoAt(desk)).shown.marks.size).toBe(0);
    expect(redoAt(desk)).toBeNull();
  });

  it('rolls a refused undo back into something that can be undone', () => {
    const library = benchOf({ marks: [marked(10, 1)], findings: [] });
    let desk = accepted(perform(deskOf(emptyBench), put(10)), putOutcome(marked(10, 1)));
    desk = refused(must(undoAt(desk)), library);
    expect(tipOf(desk)).toBe(10);
    expect(must(undoAt(desk)).shown.marks.size).toBe(0);
  });

  it('forgets its history when the library was changed by someone else', () => {
    const desk = accepted(perform(deskOf(emptyBench), put(10)), putOutcome(marked(10, 1)));
    const theirs = benchOf({ marks: [marked(99, 2)], findings: [] });
    expect(undoAt(refused(perform(desk, put(20)), theirs))).toBeNull();
    expect(undoAt(readAnew(desk, theirs))).toBeNull();
    expect(tipOf(readAnew(desk, theirs))).toBe(99);
  });

  it('keeps its history when it reads back nothing but its own writing', () => {
    const desk = accepted(perform(deskOf(emptyBench), put(10)), putOutcome(marked(10, 1)));
    expect(readAnew(desk, benchOf({ marks: [marked(10, 1)], findings: [] }))).toBe(desk);
  });

  it('after a class given with a reason keeps what is pending, and undoes nothing across it', () => {
    const start = deskOf(benchOf({ marks: [], findings: [finding] }));
    const noted = perform(start, [
      { patch: 'put-finding', findingId: finding.id, fields: findingFields({ note: 'burr' }) },
    ]);
    const desk = classified(noted, { ...finding, class: 'secondary', revision: 2 });
    expect(desk.shown.findings.get(finding.id)).toMatchObject({ class: 'secondary', note: 'burr' });
    expect(nextChanges(desk)).toMatchObject([
      { change: 'put-finding', revision: 2, fields: { class: 'secondary', note: 'burr' } },
    ]);
    expect(undoAt(desk)).toBeNull();
  });

  it('sends what waits behind the gesture under way in one go when the page goes, on what that will have made', () => {
    const line: BenchPatch[] = [{ patch: 'put-mark', mark: markFields(markId(2), 5, null) }];
    const known = deskOf(benchOf({ marks: [marked(10, 4)], findings: [] }));
    const desk = perform(perform(perform(known, put(20)), put(30)), line);
    // The library gives a mark that is changed its next revision, and a new one the first.
    expect(benchClerk.lastChanges(desk, true)).toEqual([
      { change: 'put-mark', mark: markFields(markId(1), 30, null), revision: 5 },
      { change: 'put-mark', mark: markFields(markId(2), 5, null), revision: null },
    ]);
    expect(benchClerk.lastChanges(desk, false)).toMatchObject([{ revision: 4 }, { revision: null }]);
    const fresh = perform(perform(deskOf(emptyBench), put(10)), put(20));
    expect(benchClerk.lastChanges(fresh, true)).toMatchObject([{ revision: 1 }]);
    expect(benchClerk.lastChanges(perform(deskOf(emptyBench), put(10)), true)).toBeNull();
    expect(benchClerk.lastChanges(known, false)).toBeNull();
  });

  it('leaves everything as it is when there is nothing to do', () => {
    const desk = deskOf(emptyBench);
    expect(perform(desk, [])).toBe(desk);
    expect(undoAt(desk)).toBeNull();
    expect(redoAt(desk)).toBeNull();
    expect(nextChanges(desk)).toBeNull();
  });
});
