/** Reads the path data that drawings are made of: M, L, C with absolute coordinates, and Z. */
export type XY = { readonly x: number; readonly y: number };

/** Points along the path, `steps` to every curve and only the ends of straight lines. */
export function pointsAlong(d: string, steps = 16): XY[] {
  const points: XY[] = [];
  for (const [, command, numbers] of d.matchAll(/([MLCZ])([^MLCZ]*)/g)) {
    const values =
      (numbers ?? '').trim() === ''
        ? []
        : numbers!
            .trim()
            .split(/[\s,]+/)
            .map(Number);
    const pairs = Array.from({ length: values.length / 2 }, (_, at) => ({
      x: values[2 * at]!,
      y: values[2 * at + 1]!,
    }));
    if (command === 'C') points.push(...curve(points.at(-1)!, pairs[0]!, pairs[1]!, pairs[2]!, steps));
    else points.push(...pairs);
  }
  return points;
}

/** A cubic curve by its definition (Bernstein polynomials). */
function curve(a: XY, b: XY, c: XY, d: XY, steps: number): XY[] {
  return Array.from({ length: steps }, (_, index) => {
    const t = (index + 1) / steps;
    const [p, q, r, s] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t ** 2 * (1 - t), t ** 3];
    return { x: p * a.x + q * b.x + r * c.x + s * d.x, y: p * a.y + q * b.y + r * c.y + s * d.y };
  });
}
