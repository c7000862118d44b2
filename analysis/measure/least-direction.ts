/**
 * The direction that a matrix all but annuls: the answer to a homogeneous set of equations in the least-squares sense.
 * One-sided Jacobi rotations (Hestenes, J. SIAM 6 (1958) 51-90, from memory): they work on the matrix itself, so nothing
 * is lost by squaring it.
 */

/** Rotations of every pair of columns; a matrix of nine columns needs about eight rounds. */
const mostRounds = 60;

/** Columns at this angle to each other, as a cosine, are square: the relative spacing of 64-bit floats. */
const square = Number.EPSILON;

export type LeastDirection = {
  /** Of length 1, as long as a row of the matrix. */
  readonly direction: readonly number[];
  /** The matrix's singular values, largest first; the last belongs to the direction. */
  readonly singularValues: readonly number[];
};

/** A direction, and what the matrix makes of it; both are turned as the rounds go on. */
type Column = { readonly source: Float64Array; readonly image: Float64Array };

/** Rows of one length, at least one of them; fewer rows than columns will do. */
export function leastDirection(rows: readonly (readonly number[])[]): LeastDirection {
  const columns = columnsOf(rows);
  const pairs = columns.flatMap((one, at) => columns.slice(at + 1).map((other) => [one, other] as const));
  const largest = Math.max(0, ...columns.map(({ image }) => lengthOf(image)));
  for (let round = 0, turned = true; turned && round < mostRounds; round += 1) {
    turned = false;
    for (const [one, other] of pairs) {
      const turn = turnToSquare(one.image, other.image, largest);
      if (turn === null) continue;
      rotate(one.image, other.image, turn);
      rotate(one.source, other.source, turn);
      turned = true;
    }
  }
  const sorted = columns
    .map(({ image, source }) => ({ size: lengthOf(image), source }))
    .sort((one, other) => other.size - one.size);
  return {
    direction: Array.from(sorted.at(-1)?.source ?? []),
    singularValues: sorted.map(({ size }) => size),
  };
}

function columnsOf(rows: readonly (readonly number[])[]): Column[] {
  const width = rows[0]?.length ?? 0;
  return Array.from({ length: width }, (_, at) => {
    const source = new Float64Array(width);
    source[at] = 1;
    return { source, image: Float64Array.from(rows.map((row) => row[at] ?? 0)) };
  });
}

type Turn = { readonly cosine: number; readonly sine: number };

/** The rotation that makes the two square to each other; null where they are, or where one is no more than rounding. */
function turnToSquare(one: Float64Array, other: Float64Array, largest: number): Turn | null {
  const [long, short, between] = [dot(one, one), dot(other, other), dot(one, other)];
  if (Math.sqrt(Math.min(long, short)) <= square * largest) return null;
  if (Math.abs(between) <= square * Math.sqrt(long * short)) return null;
  const slope = (short - long) / (2 * between);
  const tangent = (slope < 0 ? -1 : 1) / (Math.abs(slope) + Math.sqrt(1 + slope * slope));
  const cosine = 1 / Math.sqrt(1 + tangent * tangent);
  return { cosine, sine: cosine * tangent };
}

function rotate(one: Float64Array, other: Float64Array, { cosine, sine }: Turn): void {
  for (let at = 0; at < one.length; at += 1) {
    const [first, second] = [one[at] ?? 0, other[at] ?? 0];
    one[at] = cosine * first - sine * second;
    other[at] = sine * first + cosine * second;
  }
}

const lengthOf = (vector: Float64Array) => Math.sqrt(dot(vector, vector));

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < one.length; at += 1) sum += (one[at] ?? 0) * (other[at] ?? 0);
  return sum;
}
