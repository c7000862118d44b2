/** The direction that a matrix all but annuls. */
import fc from 'fast-check';
import { expect, test } from 'vitest';

import { leastDirection } from '#analysis/measure/least-direction.ts';

test('lies along the axis that is shortened most', () => {
  const { direction, singularValues } = leastDirection([
    [3, 0, 0],
    [0, 0.5, 0],
    [0, 0, 2],
  ]);
  expect(direction.map(Math.abs)).toEqual([0, 1, 0]);
  expect(singularValues).toEqual([3, 2, 0.5]);
});

test('is of length 1, and the matrix makes of it no more than its least singular value', () => {
  const number = fc.double({ min: -10, max: 10, noNaN: true });
  const rows = fc.array(fc.tuple(number, number, number, number), { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(rows, (matrix) => {
      const { direction, singularValues } = leastDirection(matrix);
      expect(Math.hypot(...direction)).toBeCloseTo(1, 12);
      const image = matrix.map((row) => row.reduce((sum, one, at) => sum + one * direction[at]!, 0));
      expect(Math.hypot(...image)).toBeCloseTo(singularValues[3]!, 10);
      // The sum of their squares is that of the matrix's own numbers (the Frobenius norm).
      const squares = matrix.flat().reduce((sum, one) => sum + one * one, 0);
      expect(singularValues.reduce((sum, one) => sum + one * one, 0)).toBeCloseTo(squares, 8);
    }),
  );
});
