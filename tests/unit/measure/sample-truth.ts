/** What is true in the sample case's photos, because they were made: read from the files beside them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { imagePoint } from '#analysis/marks/planes.ts';
import type { CameraPlace } from '#analysis/measure/photo-scale.ts';
import type { ImagePoint } from '#shared-types/points.ts';

import { programFolder } from '../../../electron/processes/entry-table.ts';

/** Millimetres; z up from the bench. */
export type Place = readonly [number, number, number];
type Row = readonly [number, number, number, number];

type Truth = {
  readonly tiltDegrees?: number;
  readonly picture: { readonly width: number; readonly height: number };
  /** From millimetres to homogeneous pixels. */
  readonly camera: { readonly matrix: readonly [Row, Row, Row] };
  readonly points: Readonly<
    Record<string, { readonly mm: Place; readonly px: readonly [number, number]; readonly visible: boolean }>
  >;
  readonly lengths: readonly { readonly from: string; readonly to: string; readonly mm: number }[];
};

export function truthOf(photo: string) {
  const path = join(programFolder, 'sample-cases', 'ferry-auxiliary', 'truth', `${photo}.json`);
  const truth = JSON.parse(readFileSync(path, 'utf8')) as Truth;
  const point = (name: string) => {
    const found = truth.points[name];
    if (found === undefined) throw new Error(`${photo} has no point ${name}`);
    return found;
  };
  return {
    ...truth,
    placeOf: (name: string): Place => point(name).mm,
    pixelOf: (name: string): ImagePoint => imagePoint(...point(name).px),
    seen: (place: Place): ImagePoint => project(truth.camera.matrix, place),
  };
}

function project(matrix: readonly [Row, Row, Row], [x, y, z]: Place): ImagePoint {
  const [u, v, w] = matrix.map(([a, b, c, d]) => a * x + b * y + c * z + d) as [number, number, number];
  return imagePoint(u / w, v / w);
}

/** The camera over a plane at the height z, and the degrees between its line of sight and the plane's normal. */
export function cameraOver(
  { camera: { matrix }, picture }: Pick<Truth, 'camera' | 'picture'>,
  z: number,
): CameraPlace & { readonly tilt: number } {
  const [u, v, w] = matrix;
  // The camera is where all three rows are 0; its height follows by Cramer's rule.
  const height = -determinant(u, v, w, 3) / determinant(u, v, w, 2);
  return {
    distanceMm: height - z,
    middle: imagePoint(picture.width / 2, picture.height / 2),
    tilt: (Math.acos(Math.abs(w[2]) / Math.hypot(w[0], w[1], w[2])) * 180) / Math.PI,
  };
}

/** Of the first two columns and the one named. */
function determinant(u: Row, v: Row, w: Row, third: 2 | 3): number {
  return (
    u[third] * (v[0] * w[1] - v[1] * w[0]) -
    v[third] * (u[0] * w[1] - u[1] * w[0]) +
    w[third] * (u[0] * v[1] - u[1] * v[0])
  );
}
