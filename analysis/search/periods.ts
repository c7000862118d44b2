/** Years and quarters, by the UTC day of an instant. */

/** The year and the quarter in which it lies: 2026 and 2026-Q1. @param instant ISO 8601 with Z */
export function periodsOf(instant: string): [year: string, quarter: string] {
  const year = instant.slice(0, 4);
  return [year, `${year}-Q${String(Math.ceil(Number(instant.slice(5, 7)) / 3))}`];
}

/** The year of a year or quarter. */
export const yearOf = (period: string) => period.slice(0, 4);
