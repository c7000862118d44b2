import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MarkGeometryError, runSteps, upgradeMark } from '#analysis/marks/upgrade-mark.ts';
import { anyOfKind, kinds } from './any-mark.ts';

function reasonOf(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    if (error instanceof MarkGeometryError) return error.reason;
    throw error;
  }
  return 'none';
}

const arrow = { kind: 'arrow', v: 1, tail: { x: 1, y: 2 }, tip: { x: 3, y: 4 } };

describe('stored geometry', () => {
  it('of the newest version is read as it is', () => {
    expect(upgradeMark(arrow)).toEqual(arrow);
  });

  it.each(kinds)('of every kind there is is read: %s', (kind) => {
    fc.assert(
      fc.property(anyOfKind[kind], (mark) => {
        expect(upgradeMark(structuredClone(mark))).toEqual(mark);
      }),
    );
  });

  it('without width or with two corners is damaged, not guessed at', () => {
    const ring = { kind: 'ring', v: 1, centre: { x: 1, y: 2 }, radiusX: 0, radiusY: 3, rotation: 0 };
    expect(reasonOf(() => upgradeMark(ring))).toBe('damaged');
    const outline = { kind: 'outline', v: 1, corners: [arrow.tail, arrow.tip] };
    expect(reasonOf(() => upgradeMark(outline))).toBe('damaged');
    expect(reasonOf(() => upgradeMark({ kind: 'text', v: 1, at: arrow.tip, words: ' ' }))).toBe('damaged');
  });

  it('of an older version goes through every step that is missing, in order', () => {
    const steps = {
      arrow: [
        (stored: object) => ({ ...stored, kind: 'arrow', v: 2, line: 'plain' }),
        (stored: object) => ({ ...stored, kind: 'arrow', v: 3, width: 'line' in stored ? 1 : 0 }),
      ],
    };
    expect(runSteps(arrow, steps)).toEqual({ ...arrow, v: 3, line: 'plain', width: 1 });
    expect(runSteps({ kind: 'arrow', v: 2 }, steps)).toEqual({ kind: 'arrow', v: 3, width: 0 });
  });

  it('of a newer program, of an unknown kind, or damaged is refused by name', () => {
    expect(reasonOf(() => upgradeMark({ ...arrow, v: 2 }))).toBe('newer');
    expect(reasonOf(() => upgradeMark({ ...arrow, kind: 'spiral' }))).toBe('unknown-kind');
    expect(reasonOf(() => upgradeMark({ ...arrow, tip: { x: '3', y: 4 } }))).toBe('damaged');
    expect(reasonOf(() => upgradeMark(null))).toBe('damaged');
    expect(reasonOf(() => upgradeMark({ kind: 'arrow', v: 0 }))).toBe('damaged');
  });
});
