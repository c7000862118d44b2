import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { historyOver, type Step } from '#analysis/history/step-history.ts';
import {
  applyPatches,
  emptyBench,
  inversePatches,
  type BenchPatch,
  type BenchState,
} from '#analysis/marks/bench-state.ts';
import {
  contentOf,
  findingFields,
  findingId,
  gestures,
  markFields,
  markId,
  patchesOf,
} from './bench-gestures.ts';

type HistoryStep = Step<BenchState, BenchPatch>;

const { record, undo, redo } = historyOver<BenchState, BenchPatch>({
  apply: applyPatches,
  inverse: inversePatches,
});

const start: HistoryStep = { history: { done: [], undone: [] }, state: emptyBench, patches: [] };

/** Each step after its gesture, the first being where it began. */
function carryOut(sequence: Parameters<typeof patchesOf>[0][]): HistoryStep[] {
  const steps = [start];
  for (const gesture of sequence) {
    const { history, state } = steps.at(-1) ?? start;
    steps.push(record(history, state, patchesOf(gesture, state)));
  }
  return steps;
}

function must(step: HistoryStep | null): HistoryStep {
  if (step === null) throw new Error('there was nothing to undo or redo');
  return step;
}

describe('history', () => {
  it('undo after do is as if nothing had been done, all the way back', () => {
    fc.assert(
      fc.property(gestures, (sequence) => {
        const steps = carryOut(sequence);
        let at = steps.at(-1) ?? start;
        for (const before of steps.slice(0, -1).reverse()) {
          at = must(undo(at.history, at.state));
          expect(contentOf(at.state)).toEqual(contentOf(before.state));
        }
        expect(undo(at.history, at.state)).toBeNull();
      }),
    );
  });

  it('redo after undo is as if nothing had been undone, all the way forth', () => {
    fc.assert(
      fc.property(gestures, (sequence) => {
        const steps = carryOut(sequence);
        let at = steps.at(-1) ?? start;
        for (const _gesture of sequence) at = must(undo(at.history, at.state));
        for (const after of steps.slice(1)) {
          at = must(redo(at.history, at.state));
          expect(contentOf(at.state)).toEqual(contentOf(after.state));
        }
        expect(redo(at.history, at.state)).toBeNull();
      }),
    );
  });

  it('walks back and forth in any order and ends where the count of steps says', () => {
    fc.assert(
      fc.property(gestures, fc.array(fc.boolean(), { maxLength: 40 }), (sequence, walk) => {
        const steps = carryOut(sequence);
        let at = steps.at(-1) ?? start;
        let position = sequence.length;
        for (const back of walk) {
          const next = back ? undo(at.history, at.state) : redo(at.history, at.state);
          expect(next === null).toBe(back ? position === 0 : position === sequence.length);
          if (next === null) continue;
          at = next;
          position += back ? -1 : 1;
          expect(contentOf(at.state)).toEqual(contentOf(steps[position]?.state ?? emptyBench));
        }
      }),
    );
  });

  it('asks to save exactly the patches that lead from one state to the other', () => {
    fc.assert(
      fc.property(gestures, (sequence) => {
        const at = carryOut(sequence).at(-1) ?? start;
        const back = must(undo(at.history, at.state));
        expect(contentOf(applyPatches(at.state, back.patches))).toEqual(contentOf(back.state));
      }),
    );
  });

  it('forgets what was undone once something new is done', () => {
    const put = (tipX: number) => [{ patch: 'put-mark' as const, mark: markFields(markId(1), tipX, null) }];
    const first = record(start.history, emptyBench, put(10));
    const back = must(undo(first.history, first.state));
    const second = record(back.history, back.state, put(20));
    expect(redo(second.history, second.state)).toBeNull();
    expect(second.history.done).toHaveLength(1);
  });

  it('keeps one entry for one gesture, however many things it touched', () => {
    const step = record(start.history, emptyBench, [
      { patch: 'put-finding', findingId: findingId(1), fields: findingFields() },
      { patch: 'put-mark', mark: markFields(markId(1), 5, findingId(1)) },
      { patch: 'put-mark', mark: markFields(markId(2), 6, findingId(1)) },
    ]);
    expect(step.history.done).toHaveLength(1);
    expect(must(undo(step.history, step.state)).state.marks.size).toBe(0);
  });

  it('takes a piece of writing back as one, however often it was saved, and nothing else with it', () => {
    const note = (text: string) => [
      { patch: 'put-finding' as const, findingId: findingId(1), fields: findingFields({ note: text }) },
    ];
    const noteOf = (step: HistoryStep) => step.state.findings.get(findingId(1))?.note;
    let at = record(start.history, emptyBench, note('before'));
    at = record(at.history, at.state, note('bu'), 'first');
    at = record(at.history, at.state, note('burr'), 'first');
    at = record(at.history, at.state, note('burr on'), 'second');
    at = record(at.history, at.state, note('burr on edge'), 'second');
    at = must(undo(at.history, at.state));
    expect(noteOf(at)).toBe('burr');
    at = must(undo(at.history, at.state));
    expect(noteOf(at)).toBe('before');
    at = must(redo(at.history, at.state));
    expect(noteOf(at)).toBe('burr');
    at = record(at.history, at.state, note('burr, later'), 'first');
    expect(noteOf(must(undo(at.history, at.state)))).toBe('burr');
  });

  it('brings a finding back in the class it was last given with a reason', () => {
    const put = record(start.history, emptyBench, [
      { patch: 'put-finding', findingId: findingId(1), fields: findingFields({ class: 'undecided' }) },
    ]);
    const held = put.state.findings.get(findingId(1));
    if (held === undefined) throw new Error('the finding was not put');
    const classified = {
      ...put.state,
      findings: new Map([[held.id, { ...held, class: 'secondary' as const }]]),
    };
    const back = must(undo(put.history, classified));
    expect(back.state.findings.size).toBe(0);
    const again = must(redo(back.history, back.state));
    expect(again.state.findings.get(findingId(1))?.class).toBe('secondary');
  });
});
