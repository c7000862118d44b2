/** What marks counted on each blade say together. Common practice, no source, beside the statistics that are named. */
import { describe, expect, test } from 'vitest';

import {
  bladesWithEdge,
  marksRoundWheel,
  type CountedMarks,
  type MarksRoundWheel,
} from '#analysis/wheel/marks-per-blade.ts';

function counted(perBlade: readonly number[], changes: Partial<CountedMarks> = {}): MarksRoundWheel {
  const blades = { full: perBlade.length, splitter: 0 };
  const result = marksRoundWheel({ blades, edge: 'full-blades', perBlade, ...changes });
  if (result.kind === 'refused') throw new Error(result.because);
  return result;
}

const refusal = (marks: CountedMarks) => {
  const result = marksRoundWheel(marks);
  return result.kind === 'refused' ? result.because : null;
};

describe('marks on nearly all blades', () => {
  test('are alike: it happened while turning', () => {
    const all = counted([2, 1, 2, 2, 1, 2, 1, 2, 2, 1, 2]);
    expect(all).toMatchObject({ hit: 11, of: 11, marks: 18, verdict: 'alike' });
    expect(all.rayleigh!.p).toBeGreaterThan(0.5);
    expect(all.share.high).toBe(1);
    expect(all.caveats).toEqual(['repeated-hits']);
  });

  test('are alike up to the share of which half is left in doubt', () => {
    // Wilson 95 %: 10 of 12 leaves 0.552 at the least, 9 of 12 leaves 0.468.
    expect(counted([1, 1, 1, 1, 1, 0, 1, 1, 1, 1, 1, 0]).verdict).toBe('alike');
    expect(counted([1, 1, 1, 0, 1, 1, 1, 0, 1, 1, 1, 0]).verdict).toBe('not-decided');
  });

  test('are grouped where they crowd to one side all the same', () => {
    const crowded = counted([9, 8, 6, 2, 1, 1, 1, 1, 1, 2, 6, 8]);
    expect(crowded).toMatchObject({ hit: 12, of: 12, verdict: 'grouped' });
    expect(crowded.rayleigh!.p).toBeLessThan(0.05);
  });
});

describe('marks on some blades', () => {
  test('are grouped where neighbours carry them, and point to their middle', () => {
    const some = counted([0, 0, 1, 2, 1, 0, 0, 0, 0, 0, 0]);
    expect(some).toMatchObject({ hit: 3, of: 11, verdict: 'grouped' });
    // The fourth of eleven blades.
    expect(some.rayleigh!.direction).toBeCloseTo((3 * 2 * Math.PI) / 11, 10);
    expect(some.caveats).toEqual(['repeated-hits', 'opposite-groups-unseen']);
  });

  test('across from each other are not decided: the test does not see two groups', () => {
    const opposite = counted([1, 1, 0, 0, 0, 0, 1, 1, 0, 0, 0, 0]);
    expect(opposite.rayleigh!.p).toBeGreaterThan(0.9);
    expect(opposite.verdict).toBe('not-decided');
    expect(opposite.caveats).toContain('opposite-groups-unseen');
  });

  test('on one or two of many are at rest or a single strike, however often one was hit', () => {
    expect(counted([0, 7, 0, 0, 0, 0, 0, 0, 0]).verdict).toBe('one-or-two');
    expect(counted([0, 1, 0, 0, 0, 1, 0, 0, 0]).verdict).toBe('one-or-two');
    expect(counted([1, 0, 0, 0, 1]).verdict).toBe('one-or-two');
    // Two of four are not one or two of many.
    expect(counted([1, 0, 1, 0]).verdict).toBe('not-decided');
  });

  test('that are none decide nothing', () => {
    expect(counted([0, 0, 0, 0, 0, 0, 0, 0])).toMatchObject({
      hit: 0,
      rayleigh: null,
      verdict: 'not-decided',
    });
  });
});

describe('few blades', () => {
  test('are only counted: k of n, and no test of angles', () => {
    const seven = counted([1, 1, 1, 0, 0, 0, 0]);
    expect(seven).toMatchObject({ hit: 3, of: 7, rayleigh: null, verdict: 'not-decided' });
    expect(seven.caveats).toEqual(['few-blades']);
    expect(seven.share.low).toBeGreaterThan(0);
    expect(counted([1, 1, 1, 1, 1, 1, 1]).verdict).toBe('alike');
    expect(counted([1, 1, 1, 0, 0, 0, 0, 0]).rayleigh).not.toBeNull();
  });
});

describe('splitter blades', () => {
  const blades = { full: 6, splitter: 6 };

  // Common practice, no source: a splitter begins further in and has no edge where the flow comes to the wheel.
  test('do not count where they have no edge', () => {
    expect(bladesWithEdge(blades, 'full-blades')).toBe(6);
    const edge = counted([1, 1, 1, 1, 1, 1], { blades });
    expect(edge).toMatchObject({ hit: 6, of: 6, rayleigh: null, verdict: 'alike' });
    expect(edge.caveats).toEqual(['few-blades', 'full-blades-only']);
    expect(refusal({ blades, edge: 'full-blades', perBlade: Array.from({ length: 12 }, () => 1) })).toBe(
      'blades-and-counts',
    );
  });

  test('weaken the independence of hits where they have one', () => {
    expect(bladesWithEdge(blades, 'all-blades')).toBe(12);
    const all = counted([1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], { blades, edge: 'all-blades' });
    expect(all.caveats).toEqual(['splitters-counted']);
    expect(all.rayleigh).not.toBeNull();
  });
});

describe('counts that cannot be', () => {
  test('are refused by name', () => {
    const blades = { full: 3, splitter: 0 };
    expect(refusal({ blades: { full: 0, splitter: 0 }, edge: 'full-blades', perBlade: [] })).toBe('blades');
    expect(refusal({ blades: { full: 2.5, splitter: 0 }, edge: 'full-blades', perBlade: [1, 1] })).toBe(
      'blades',
    );
    expect(refusal({ blades, edge: 'full-blades', perBlade: [1, 1] })).toBe('blades-and-counts');
    expect(refusal({ blades, edge: 'full-blades', perBlade: [1, -1, 0] })).toBe('count');
    expect(refusal({ blades, edge: 'full-blades', perBlade: [1, 0.5, 0] })).toBe('count');
  });
});
