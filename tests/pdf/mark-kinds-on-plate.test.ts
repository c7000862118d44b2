import { join } from 'node:path';

import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { imagePoint } from '#analysis/marks/planes.ts';
import type { Mark, MarkGeometry } from '#shared-types/mark.ts';

import { createReportMaker } from '../../electron/report/report-maker.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import { rasterOf, textOf, type Raster } from './pdf-tools.ts';
import { onRaster, placementsOf, type Placement } from './plate-placement.ts';
import { printReport } from './printed-report.ts';
import { finding, findingId, markId, photo, photoId, reportInput } from './report-case.ts';

/** The printed page is looked at with this many pixels to the inch; a mark must be where it was put to 2 of them. */
const dpi = 100;
const tolerance = 2;

type XY = { readonly x: number; readonly y: number };
type Picture = {
  readonly number: number;
  readonly width: number;
  readonly height: number;
  readonly display: { readonly width: number; readonly height: number };
};

/** One of each way a picture can lie; the third one’s copy differs from it in shape by rounding. */
const pictures: readonly Picture[] = [
  { number: 1, width: 4000, height: 3000, display: { width: 1280, height: 960 } },
  { number: 2, width: 3000, height: 4000, display: { width: 960, height: 1280 } },
  { number: 3, width: 4001, height: 2667, display: { width: 640, height: 427 } },
];

/** Places as shares of width and height. */
const share = (picture: Picture, across: number, down: number) =>
  imagePoint(across * picture.width, down * picture.height);

const kindsOn = (picture: Picture) =>
  ({
    ring: {
      kind: 'ring',
      v: 1,
      centre: share(picture, 0.3, 0.3),
      radiusX: 0.18 * picture.width,
      radiusY: 0.09 * picture.height,
      rotation: 0.7,
    },
    outline: {
      kind: 'outline',
      v: 1,
      corners: [
        share(picture, 0.6, 0.15),
        share(picture, 0.92, 0.2),
        share(picture, 0.85, 0.5),
        share(picture, 0.62, 0.42),
      ],
    },
    line: { kind: 'line', v: 1, from: share(picture, 0.15, 0.65), to: share(picture, 0.48, 0.9) },
    text: { kind: 'text', v: 1, at: share(picture, 0.6, 0.75), words: 'scored here' },
  }) as const satisfies Record<string, MarkGeometry>;

let folder: string;
let outFile: string;
let placements: Placement[];
const rasters = new Map<number, Raster>();

beforeAll(async () => {
  folder = makeTemporaryFolder();
  const marks = pictures.flatMap((picture) =>
    Object.values(kindsOn(picture)).map((geometry, index): Mark => ({
      id: markId(picture.number * 10 + index),
      photoId: photoId(picture.number),
      findingId: findingId(1),
      geometry: structuredClone(geometry),
      order: index,
      revision: 1,
    })),
  );
  const maker = createReportMaker();
  const printed = await printReport(
    maker,
    folder,
    reportInput({
      photos: pictures.map(({ number, width, height, display }) =>
        photo(number, { width, height, displayWidth: display.width, displayHeight: display.height }),
      ),
      // A primary finding: its lines are unbroken, so that every point of them can be looked for.
      findings: [finding(1)],
      marks,
    }),
  );
  await maker.close();
  outFile = printed.file;
  placements = await placementsOf(outFile);
});

afterAll(() => removeFolder(folder));

async function pageOf(picture: Picture): Promise<{ raster: Raster; placement: Placement }> {
  const placement = placements[picture.number - 1];
  if (placement === undefined) throw new Error(`no picture ${picture.number}`);
  const { page } = placement;
  const raster = rasters.get(page) ?? (await rasterOf(outFile, page, dpi, join(folder, `page-${page}`)));
  rasters.set(page, raster);
  return { raster, placement };
}

/** How much of a pixel is #b84700: red less blue is 184 in it, none on the pictures and on white. */
const cover = (raster: Raster, x: number, y: number) => {
  const [red, , blue] = raster.at(Math.floor(x), Math.floor(y));
  return (red - blue) / 184;
};

/** How far from `at`, along the unit vector `across`, the middle of the line in colour lies; Infinity for no line. */
function offAcross(raster: Raster, at: XY, across: XY): number {
  let weight = 0;
  let sum = 0;
  // No further: 3 points of the page, 4 pixels, from the line stands its label in the same colour.
  for (let step = -3.25; step <= 3.25; step += 0.25) {
    const seen = Math.max(0, cover(raster, at.x + across.x * step, at.y + across.y * step));
    weight += seen;
    sum += seen * step;
  }
  return weight < 1 ? Infinity : Math.abs(sum / weight);
}

/** Checks points of a line, each with the direction that leads square off it, both in pixels of the picture. */
async function expectLineThrough(picture: Picture, points: readonly (readonly [XY, XY])[]): Promise<void> {
  const { raster, placement } = await pageOf(picture);
  for (const [point, across] of points) {
    const at = onRaster(placement, picture, point, dpi);
    const beside = onRaster(placement, picture, { x: point.x + across.x, y: point.y + across.y }, dpi);
    const length = Math.hypot(beside.x - at.x, beside.y - at.y);
    const direction = { x: (beside.x - at.x) / length, y: (beside.y - at.y) / length };
    const off = offAcross(raster, at, direction);
    expect(off, `${picture.number}: ${point.x}, ${point.y}`).toBeLessThan(tolerance);
  }
}

const squareOff = (from: XY, to: XY): XY => ({ x: -(to.y - from.y), y: to.x - from.x });
const between = (from: XY, to: XY, part: number): XY => ({
  x: from.x + part * (to.x - from.x),
  y: from.y + part * (to.y - from.y),
});

describe.each(pictures)('on the plate of picture $number', (picture) => {
  const kinds = kindsOn(picture);

  it('a ring runs where the ellipse of its geometry does', async () => {
    const { centre, radiusX: a, radiusY: b, rotation } = kinds.ring;
    const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
    const turned = (x: number, y: number) => ({ x: x * cos - y * sin, y: x * sin + y * cos });
    const points = Array.from({ length: 24 }, (_, index) => {
      const t = (index * Math.PI) / 12;
      const rim = turned(a * Math.cos(t), b * Math.sin(t));
      // The ellipse's normal is its gradient, (x/a², y/b²).
      const normal = turned(Math.cos(t) / a, Math.sin(t) / b);
      const scaled = 100 / Math.hypot(normal.x, normal.y);
      return [
        { x: centre.x + rim.x, y: centre.y + rim.y },
        { x: normal.x * scaled, y: normal.y * scaled },
      ] as const;
    });
    await expectLineThrough(picture, points);
  });

  it('an outline runs from corner to corner and closes', async () => {
    const { corners } = kinds.outline;
    const points = corners.flatMap((corner, index) => {
      const next = corners[(index + 1) % corners.length]!;
      return [0.1, 0.3, 0.5, 0.7, 0.9].map(
        (part) => [between(corner, next, part), squareOff(corner, next)] as const,
      );
    });
    await expectLineThrough(picture, points);
  });

  it('a line runs from end to end, where its ticks stand square across it', async () => {
    const { from, to } = kinds.line;
    await expectLineThrough(
      picture,
      [0.05, 0.35, 0.65, 0.95].map((part) => [between(from, to, part), squareOff(from, to)] as const),
    );
    // Beside the line, on the tick alone: 5 of the page's points off, at both ends.
    const { raster, placement } = await pageOf(picture);
    for (const end of [from, to]) {
      const at = onRaster(placement, picture, end, dpi);
      const [one, other] = [onRaster(placement, picture, from, dpi), onRaster(placement, picture, to, dpi)];
      const length = Math.hypot(other.x - one.x, other.y - one.y);
      const along = { x: (other.x - one.x) / length, y: (other.y - one.y) / length };
      for (const side of [-1, 1]) {
        const aside = (3.6 * dpi * side) / 72;
        const onTick = { x: at.x - along.y * aside, y: at.y + along.x * aside };
        expect(offAcross(raster, onTick, along)).toBeLessThan(tolerance);
      }
    }
  });

  it('words begin at their place, and are words', async () => {
    const { at } = kinds.text;
    const { raster, placement } = await pageOf(picture);
    const begun = onRaster(placement, picture, at, dpi);
    // The underline: 3.6 drawing points, each 0.75 of the page's, under the baseline; its left end is that of the words.
    const depth = begun.y + (3.6 * 0.75 * dpi) / 72;
    expect(offAcross(raster, { x: begun.x + 20, y: depth }, { x: 0, y: 1 })).toBeLessThan(tolerance);
    let left = begun.x + 20;
    while (cover(raster, left - 1, depth) > 0.25) left -= 1;
    expect(Math.abs(left - begun.x)).toBeLessThan(tolerance);
    // The highest ink is that of "d" and "h": 712 thousandths of 14 drawing points, the ascenders of the font's b, d, h.
    let top = begun.y;
    for (let y = begun.y; y > begun.y - 20; y -= 1) {
      const row = Array.from({ length: 70 }, (_, x) => cover(raster, begun.x + x, y));
      if (Math.max(...row) > 0.25) top = y;
    }
    expect(Math.abs(begun.y - top - (0.712 * 14 * 0.75 * dpi) / 72)).toBeLessThan(tolerance);
    expect(await textOf(outFile)).toContain('scored here');
  });
});
