/**
 * Uncertainties combined as JCGM 100:2008 (GUM) has it: independent contributions in quadrature (its eq. 10), bounds
 * without a shape as rectangles (its 4.3.7), and expanded with a coverage factor of 2.
 */

export const coverageFactor = 2;

/** The combined standard uncertainty, in the unit of the contributions; each is a sensitivity times a standard uncertainty. */
export function inQuadrature(contributions: readonly number[]): number {
  return Math.hypot(...contributions);
}

/** Standard uncertainty of what may lie anywhere within `halfWidth` either way, in the same unit. */
export function ofRectangle(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** Standard uncertainty behind an expanded one. */
export function ofExpanded(expanded: number): number {
  return expanded / coverageFactor;
}

/** Share of a standard uncertainty by which an input is moved to see what follows: small enough for a straight line. */
const small = 0.01;

/**
 * The contribution of one input: its standard uncertainty times how the result moves with it, by central differences.
 * Null where the result cannot be computed beside the input's value.
 *
 * @param standardUncertainty of the input, in its unit
 * @param change how far the result moves from its value when the input moves by so much
 */
export function contributionOf(
  standardUncertainty: number,
  change: (by: number) => number | null,
): number | null {
  if (standardUncertainty === 0) return 0;
  const step = standardUncertainty * small;
  const [up, down] = [change(step), change(-step)];
  return up === null || down === null ? null : (up - down) / (2 * small);
}
