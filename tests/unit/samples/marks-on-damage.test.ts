/**
 * Marks of the sample case beside what is known of its photos because they were made: they were placed from the
 * picture alone. An arrow's tip lies on the damage it names, a ring or an outline covers it.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { describe, expect, test } from 'vitest';

import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';

import { programFolder } from '../../../electron/processes/entry-table.ts';
import { readSample } from '../../../electron/services/sample-case-file.ts';

type XY = readonly [number, number];
type Region =
  | { readonly shape: 'polygon'; readonly px: readonly XY[] }
  | { readonly shape: 'ring'; readonly inner: readonly XY[]; readonly outer: readonly XY[] };
type Truth = {
  readonly part: string;
  readonly damage: readonly {
    readonly kind: string;
    readonly part?: string;
    readonly regions: readonly Region[];
  }[];
};

/** What the analyst calls by one kind may be known by others. */
const alsoKnownAs: Readonly<Record<string, readonly string[]>> = {
  wiped: ['worn-open', 'smearing'],
  rub: ['rub-full-ring'],
  // Edges that were struck while turning are bent where they are dented.
  'bent-against-rotation': ['dent'],
  // What narrows the union is the sealant in it.
  narrowed: ['sealant-left'],
};
/** Of an edge that is drawn by eye, in pixels of the picture. */
const byEye = 12;
/** Least share that a mark and the damage have in common of what both cover. */
const leastOverlap = 0.3;

const folder = join(programFolder, 'sample-cases', 'ferry-auxiliary');
const truthOf = (photo: string) =>
  JSON.parse(readFileSync(join(folder, 'truth', photo.replace('.jpg', '.json')), 'utf8')) as Truth;

const sample = readSample('ferry-auxiliary');
const marks = sample.marks.flatMap(({ photo, finding: place, geometry }) => {
  const finding = sample.findings[place];
  if (finding === undefined) return [];
  const kinds = [finding.kind, ...(alsoKnownAs[finding.kind] ?? [])];
  const { part, damage } = truthOf(photo);
  const regions = damage
    .filter((one) => kinds.includes(one.kind) && (one.part ?? part) === finding.component)
    .flatMap((one) => one.regions);
  return [{ name: `${geometry.kind} on ${photo}: ${finding.component} ${finding.kind}`, geometry, regions }];
});

function inPolygon({ x, y }: Pick<ImagePoint, 'x' | 'y'>, corners: readonly XY[]): boolean {
  let inside = false;
  corners.forEach(([x1, y1], at) => {
    const [x2, y2] = corners.at(at - 1) ?? [x1, y1];
    if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) inside = !inside;
  });
  return inside;
}

function inRegion(point: Pick<ImagePoint, 'x' | 'y'>, region: Region): boolean {
  if (region.shape === 'polygon') return inPolygon(point, region.px);
  return inPolygon(point, region.outer) !== inPolygon(point, region.inner);
}

const onAny = (point: Pick<ImagePoint, 'x' | 'y'>, regions: readonly Region[]) =>
  [0, byEye].some((off) =>
    [0, 1, 2, 3, 4, 5, 6, 7].some((eighth) => {
      const angle = (eighth * Math.PI) / 4;
      const near = { x: point.x + off * Math.cos(angle), y: point.y + off * Math.sin(angle) };
      return regions.some((region) => inRegion(near, region));
    }),
  );

function covers(geometry: MarkGeometry): ((point: Pick<ImagePoint, 'x' | 'y'>) => boolean) | null {
  if (geometry.kind === 'outline') {
    const corners = geometry.corners.map(({ x, y }): XY => [x, y]);
    return (point) => inPolygon(point, corners);
  }
  if (geometry.kind !== 'ring') return null;
  const { centre, radiusX, radiusY, rotation } = geometry;
  const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
  return ({ x, y }) => {
    const [dx, dy] = [x - centre.x, y - centre.y];
    return ((dx * cos + dy * sin) / radiusX) ** 2 + ((dy * cos - dx * sin) / radiusY) ** 2 <= 1;
  };
}

/** Of the picture's points, every fourth across and down, those that both cover to those that either covers. */
function overlap(
  isCovered: (point: { x: number; y: number }) => boolean,
  regions: readonly Region[],
): number {
  let [both, either] = [0, 0];
  for (let y = 0; y < 2_400; y += 4) {
    for (let x = 0; x < 2_400; x += 4) {
      const [here, there] = [isCovered({ x, y }), regions.some((region) => inRegion({ x, y }, region))];
      if (here && there) both += 1;
      if (here || there) either += 1;
    }
  }
  return both / either;
}

describe('a mark of the sample case', () => {
  test.each(marks.map((one) => [one.name, one] as const))('%s', (_name, { geometry, regions }) => {
    expect(regions.length).toBeGreaterThan(0);
    const isCovered = covers(geometry);
    if (isCovered !== null) expect(overlap(isCovered, regions)).toBeGreaterThanOrEqual(leastOverlap);
    else if (geometry.kind === 'arrow') expect(onAny(geometry.tip, regions)).toBe(true);
    else if (geometry.kind === 'line') {
      const { from, to } = geometry;
      expect(onAny({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, regions)).toBe(true);
    }
  });
});
