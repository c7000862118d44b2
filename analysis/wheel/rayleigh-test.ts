/** Whether directions crowd to one side, or may as well lie all round: the Rayleigh test of uniformity on a circle. */

/** A direction, and how often it was met. */
export type CountedDirection = {
  /** Radians. */
  readonly angle: number;
  readonly count: number;
};

export type RayleighTest = {
  /** Chance of directions so crowded, or more, if each had fallen anywhere by itself; 0 to 1. */
  readonly p: number;
  /** Length of the mean direction: 0 where all cancel, 1 where all are one. */
  readonly resultant: number;
  /** Mean direction, radians from -π to π; says nothing where the resultant is near 0. */
  readonly direction: number;
};

/**
 * The p value by its series in 1/n: Fisher, Statistical Analysis of Circular Data (1993), p. 70. The test takes every
 * count as a direction by itself, and sees only crowding to one side: two crowds across from each other cancel.
 * Null where nothing was counted.
 */
export function rayleighTest(directions: readonly CountedDirection[]): RayleighTest | null {
  const n = sumOf(directions, ({ count }) => count);
  if (!(n > 0)) return null;
  const x = sumOf(directions, ({ angle, count }) => count * Math.cos(angle)) / n;
  const y = sumOf(directions, ({ angle, count }) => count * Math.sin(angle)) / n;
  const resultant = Math.hypot(x, y);
  const z = n * resultant ** 2;
  const first = (2 * z - z ** 2) / (4 * n);
  const second = (24 * z - 132 * z ** 2 + 76 * z ** 3 - 9 * z ** 4) / (288 * n ** 2);
  const p = Math.exp(-z) * (1 + first - second);
  return { p: Math.min(1, Math.max(0, p)), resultant, direction: Math.atan2(y, x) };
}

function sumOf<T>(many: readonly T[], value: (one: T) => number): number {
  return many.reduce((sum, one) => sum + value(one), 0);
}
