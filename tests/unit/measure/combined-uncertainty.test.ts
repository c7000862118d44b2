/** Uncertainties put together. */
import { describe, expect, test } from 'vitest';

import {
  contributionOf,
  inQuadrature,
  ofExpanded,
  ofRectangle,
} from '#analysis/measure/combined-uncertainty.ts';
import { foreshortening } from '#analysis/measure/tilt-bound.ts';

describe('contributions', () => {
  // JCGM 100:2008, example H.1 (end gauge calibration), from memory: 25, 9.7, 2.9, 16.6 nm make 32 nm; unrounded 31.67.
  test('are combined in quadrature', () => {
    expect(inQuadrature([25, 9.7, 2.9, 16.6])).toBeCloseTo(31.67, 2);
    expect(inQuadrature([])).toBe(0);
  });

  // JCGM 100:2008, 4.3.7: a rectangle of half width a has the standard uncertainty a/√3.
  test('of bounds and of expanded uncertainties are brought to standard ones', () => {
    expect(ofRectangle(3)).toBeCloseTo(1.7320508, 7);
    expect(ofExpanded(0.05)).toBe(0.025);
  });

  test('are a standard uncertainty times how the result moves with its input', () => {
    expect(contributionOf(0.5, (by) => 3 * by)).toBeCloseTo(1.5, 12);
    expect(contributionOf(0.1, (by) => (2 + by) ** 2 - 4)).toBeCloseTo(0.4, 12);
    expect(contributionOf(0, () => null)).toBe(0);
    expect(contributionOf(0.5, (by) => (by > 0 ? null : by))).toBeNull();
  });

  // Plain geometry, 1 - cos: 5 degrees 0.38 %, 10 degrees 1.52 %.
  test('of a tilt are its foreshortening', () => {
    expect(foreshortening(5) * 100).toBeCloseTo(0.38, 2);
    expect(foreshortening(10) * 100).toBeCloseTo(1.52, 2);
    expect(foreshortening(0)).toBe(0);
  });
});
