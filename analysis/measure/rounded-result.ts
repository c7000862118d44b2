/**
 * A result with its expanded uncertainty as it is written: the uncertainty to two significant figures, the value to the
 * same place (JCGM 100:2008, 7.2.6).
 */
export function roundedResult(
  value: number,
  expanded: number,
): { readonly value: string; readonly expanded: string } {
  if (!(Number.isFinite(value) && Number.isFinite(expanded))) throw new RangeError('a result is a number');
  if (expanded <= 0) return { value: String(value), expanded: '0' };
  // Rounded first: 0.0996 becomes 0.10, which has its second figure one place further up.
  const rounded = Number(expanded.toPrecision(2));
  const decimals = Math.max(0, 1 - Math.floor(Math.log10(rounded)));
  return { value: value.toFixed(decimals), expanded: rounded.toFixed(decimals) };
}
