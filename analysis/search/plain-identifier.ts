/** Serial numbers, part numbers, case numbers and models as they are compared: by letters and digits alone. */

/** Upper case, no accents, nothing but letters and digits: "SN-30771", "sn 30771" and "SN30771" are one. */
export function plainIdentifier(written: string): string {
  return written
    .normalize('NFD')
    .replaceAll(/[^\p{L}\p{N}]+/gu, '')
    .toUpperCase();
}

/** What stands between the hyphens, spaces and the like of an identifier, each plain: SN and 30771. */
export function piecesOf(written: string): string[] {
  return written
    .normalize('NFC')
    .split(/[^\p{L}\p{N}\p{M}]+/u)
    .map(plainIdentifier)
    .filter((piece) => piece !== '');
}
