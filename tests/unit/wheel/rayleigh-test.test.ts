/** Whether directions crowd to one side. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { rayleighTest } from '#analysis/wheel/rayleigh-test.ts';

const degrees = (angle: number) => (angle * Math.PI) / 180;
const each = (angles: readonly number[]) => angles.map((angle) => ({ angle: degrees(angle), count: 1 }));

describe('the Rayleigh test', () => {
  // The series of Fisher, Statistical Analysis of Circular Data (1993), p. 70, as a general reference library for
  // astronomy (astropy.stats.rayleightest) gives it for these four angles.
  test('gives the published chance', () => {
    expect(rayleighTest(each([130, 90, 0, 145]))?.p).toBeCloseTo(0.2563487733797317, 14);
  });

  test('takes a count as so many directions', () => {
    const counted = rayleighTest([
      { angle: degrees(20), count: 3 },
      { angle: degrees(250), count: 2 },
      { angle: degrees(70), count: 0 },
    ]);
    const told = rayleighTest(each([20, 20, 20, 250, 250]));
    expect(counted?.p).toBeCloseTo(told!.p, 14);
    expect(counted?.resultant).toBeCloseTo(told!.resultant, 14);
    expect(counted?.direction).toBeCloseTo(told!.direction, 14);
  });

  test('sees nothing where all cancel, and one direction where all are one', () => {
    const even = rayleighTest(each([0, 60, 120, 180, 240, 300]))!;
    expect(even.p).toBeCloseTo(1, 12);
    expect(even.resultant).toBeCloseTo(0, 12);
    const one = rayleighTest([{ angle: degrees(75), count: 12 }])!;
    expect(one.p).toBeLessThan(1e-4);
    expect(one.resultant).toBeCloseTo(1, 12);
    expect(one.direction).toBeCloseTo(degrees(75), 12);
    expect(rayleighTest([{ angle: 1, count: 0 }])).toBeNull();
    expect(rayleighTest([])).toBeNull();
  });

  test('is a chance, whatever was counted, and the same from whichever direction angles are told', () => {
    const directions = fc.array(
      fc.record({
        angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
        count: fc.integer({ min: 0, max: 20 }),
      }),
      { minLength: 1, maxLength: 16 },
    );
    fc.assert(
      fc.property(directions, fc.double({ min: -3, max: 3, noNaN: true }), (told, by) => {
        const first = rayleighTest(told);
        if (first === null) return;
        expect(first.p).toBeGreaterThanOrEqual(0);
        expect(first.p).toBeLessThanOrEqual(1);
        const turned = rayleighTest(told.map(({ angle, count }) => ({ angle: angle + by, count })));
        expect(turned?.p).toBeCloseTo(first.p, 9);
      }),
    );
  });
});
