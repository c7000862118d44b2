/**
 * Cameras count their files. Where numbers are left out between those that came in, whoever reads the report will ask
 * what the photos between showed: so it says itself which are missing.
 */

/** From the first missing file name to the last, by the pattern of the names beside it. */
export type FileNumberGap = { readonly first: string; readonly last: string; readonly count: number };

type Counted = {
  readonly before: string;
  readonly number: number;
  readonly width: number;
  readonly after: string;
};

/** A gap longer than this is taken for another roll of the same camera, not for photos that were left out. */
const longestGap = 200;

/** Gaps between the lowest and the highest number of names alike but for their number, in the order of the names. */
export function fileNumberGaps(names: readonly string[]): FileNumberGap[] {
  const series = Map.groupBy(
    names.flatMap((name) => countedOf(name) ?? []),
    ({ before, width, after }) => `${before}\u0000${width}\u0000${after.toLowerCase()}`,
  );
  return [...series.values()].flatMap(gapsOf);
}

/**
 * The last run of digits before the extension: "IMG_" 2041 ".jpg". Three to five of them: fewer may mean anything, and
 * more are a date or a time of day.
 */
function countedOf(name: string): Counted | null {
  const parts = /^(|.*?\D)(\d{3,5})((?:\.[^.]*)?)$/u.exec(name);
  if (parts === null) return null;
  const [, before = '', digits = '', after = ''] = parts;
  return { before, number: Number(digits), width: digits.length, after };
}

function gapsOf(series: readonly Counted[]): FileNumberGap[] {
  const sorted = [...series].sort((one, other) => one.number - other.number);
  return sorted.flatMap((one, index) => {
    const next = sorted[index + 1];
    const count = next === undefined ? 0 : next.number - one.number - 1;
    if (count < 1 || count > longestGap) return [];
    const nameOf = (number: number) => `${one.before}${String(number).padStart(one.width, '0')}${one.after}`;
    return [{ first: nameOf(one.number + 1), last: nameOf(one.number + count), count }];
  });
}
