/**
 * One wrong, missing, added, doubled or swapped character: the distance of F. J. Damerau, "A technique for computer
 * detection and correction of spelling errors" (1964), is 1.
 */

/** An identifier of fewer characters would be near to half the library: R45 to R46. */
export const shortestNear = 5;

/**
 * True where one edit makes one of the other: a character replaced, left out or put in, or two neighbours swapped. Not
 * true of equal texts. Characters are UTF-16 units of plain identifiers.
 */
export function oneEditApart(one: string, other: string): boolean {
  if (one.length > other.length) return oneEditApart(other, one);
  const longer = other.length - one.length;
  if (longer > 1) return false;
  let first = 0;
  while (first < one.length && one.charCodeAt(first) === other.charCodeAt(first)) first += 1;
  if (longer === 1) return sameFrom(one, first, other, first + 1);
  if (first === one.length) return false;
  if (sameFrom(one, first + 1, other, first + 1)) return true;
  return (
    one.charCodeAt(first) === other.charCodeAt(first + 1) &&
    one.charCodeAt(first + 1) === other.charCodeAt(first) &&
    sameFrom(one, first + 2, other, first + 2)
  );
}

function sameFrom(one: string, start: number, other: string, otherStart: number): boolean {
  if (one.length - start !== other.length - otherStart) return false;
  for (let place = start, there = otherStart; place < one.length; place += 1, there += 1) {
    if (one.charCodeAt(place) !== other.charCodeAt(there)) return false;
  }
  return true;
}
