/** A general computer-vision library, as an independent reference for the map of a plane. */
import { createRequire } from 'node:module';

import type cvTypes from '@techstark/opencv-js';

import type { PlanePoint } from '#analysis/marks/drawing-path.ts';

/** What the package hands out is a promise; its types say otherwise, and an import of it would be taken for a module. */
const library = createRequire(import.meta.url)('@techstark/opencv-js') as Promise<typeof cvTypes>;

/** Its map from four points to four, which it takes as 32-bit floats, and what that makes of `points` in 64 bits. */
export async function mappedByLibrary(
  from: readonly PlanePoint[],
  to: readonly PlanePoint[],
  points: readonly PlanePoint[],
): Promise<PlanePoint[]> {
  const cv = await library;
  const flat = (many: readonly PlanePoint[]) => many.flatMap(({ x, y }) => [x, y]);
  const matrices = {
    from: cv.matFromArray(4, 1, cv.CV_32FC2, flat(from)),
    to: cv.matFromArray(4, 1, cv.CV_32FC2, flat(to)),
    points: cv.matFromArray(points.length, 1, cv.CV_64FC2, flat(points)),
    mapped: new cv.Mat(),
  };
  const map = cv.getPerspectiveTransform(matrices.from, matrices.to);
  cv.perspectiveTransform(matrices.points, matrices.mapped, map);
  const numbers = matrices.mapped.data64F;
  const mapped = points.map((_, at) => ({ x: numbers[2 * at]!, y: numbers[2 * at + 1]! }));
  for (const matrix of [...Object.values(matrices), map]) matrix.delete();
  return mapped;
}
