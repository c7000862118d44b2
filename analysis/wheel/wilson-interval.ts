/** Between which shares a count of k among n leaves the true one: Wilson's score interval. */

/** Both from 0 to 1. */
export type ShareInterval = { readonly low: number; readonly high: number };

/** The normal distribution's 97.5 % point: 95 % lie between it and its negative. */
const normal975 = 1.959963984540054;

/**
 * 95 %, two-sided, without continuity correction: Newcombe, Statistics in Medicine 17 (1998) 857-872, method 3.
 *
 * @throws {RangeError} unless 0 <= hit <= of, both whole, and `of` is above 0
 */
export function wilsonInterval(hit: number, of: number): ShareInterval {
  if (!(Number.isInteger(hit) && Number.isInteger(of) && hit >= 0 && hit <= of && of > 0)) {
    throw new RangeError(`${hit} of ${of} is no share`);
  }
  const squared = normal975 * normal975;
  const middle = 2 * hit + squared;
  const half = normal975 * Math.sqrt(squared + (4 * hit * (of - hit)) / of);
  const width = 2 * (of + squared);
  return { low: hit === 0 ? 0 : (middle - half) / width, high: hit === of ? 1 : (middle + half) / width };
}
