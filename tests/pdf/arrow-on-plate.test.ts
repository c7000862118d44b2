import { join } from 'node:path';

import sharp from 'sharp';
import { describe, expect, it } from 'vitest';

import { buildReportModel } from '#analysis/report/report-model.ts';

import { createReportMaker } from '../../electron/report/report-maker.ts';
import { scratchFolder } from '../support/files/scratch-folder.ts';
import { tipNear } from './arrow-tip.ts';
import { rasterOf, type Raster } from './pdf-tools.ts';
import { onRaster, placementsOf } from './plate-placement.ts';
import { arrow, blobId, finding, photo, reportInput } from './report-case.ts';

/** The printed page is looked at with this many pixels to the inch; a mark must be where it was put to 2 of them. */
const dpi = 100;
const tolerance = 2;

/**
 * The display copy is what is printed; marks are in pixels of the upright original, so the two differ in size, and
 * for one of them (photo 4) in shape by the rounding of the copy.
 */
const photos = [
  { number: 1, width: 4000, height: 3000, display: { width: 1280, height: 960 } },
  { number: 2, width: 3000, height: 4000, display: { width: 960, height: 1280 } },
  { number: 3, width: 1600, height: 500, display: { width: 1600, height: 500 } },
  { number: 4, width: 4001, height: 2667, display: { width: 640, height: 427 } },
];

/** Tip as a share of width and height; direction in degrees, 0 to the right, 90 down. */
const arrows = [
  { tip: [0.25, 0.3], direction: 0 },
  { tip: [0.5, 0.25], direction: 90 },
  { tip: [0.75, 0.3], direction: 180 },
  { tip: [0.5, 0.75], direction: 270 },
  { tip: [0.3, 0.7], direction: 37 },
  { tip: [0.7, 0.72], direction: 215 },
  { tip: [0.99, 0.5], direction: 20 },
] as const;

describe('arrows on printed plates', () => {
  it.each(['A4', 'Letter'] as const)('point at what they were drawn to, on %s', async (paper) => {
    const folder = scratchFolder();
    const pictures: Record<string, string> = {};
    for (const each of photos) {
      const file = join(folder, `picture-${each.number}.jpg`);
      await sharp({ create: { ...each.display, channels: 3, background: '#808080' } })
        .jpeg()
        .toFile(file);
      pictures[blobId(each.number)] = file;
    }
    const drawn = photos.flatMap((picture) =>
      arrows.map(({ tip: [across, down], direction }) => {
        const tip = { x: across * picture.width, y: down * picture.height };
        const angle = (direction * Math.PI) / 180;
        const along = { x: Math.cos(angle), y: Math.sin(angle) };
        const length = 0.2 * Math.min(picture.width, picture.height);
        return { picture, tip, along, tail: { x: tip.x - along.x * length, y: tip.y - along.y * length } };
      }),
    );
    const model = buildReportModel(
      reportInput({
        paper,
        photos: photos.map(({ number, width, height }) => photo(number, { width, height })),
        register: [],
        findings: [finding(1)],
        marks: drawn.map(({ picture, tail, tip }, index) =>
          arrow(index + 1, picture.number, 1, [tail.x, tail.y], [tip.x, tip.y]),
        ),
      }),
    );
    const outFile = join(folder, 'report.pdf');
    const maker = createReportMaker();
    await maker.make({ model, pictures, thumbnails: {}, outFile });
    await maker.close();

    const placements = await placementsOf(outFile);
    expect(placements).toHaveLength(photos.length);
    const rasters = new Map<number, Raster>();
    for (const { picture, tip, along } of drawn) {
      const placement = placements[picture.number - 1];
      if (placement === undefined) throw new Error(`no picture ${picture.number}`);
      const raster =
        rasters.get(placement.page) ??
        (await rasterOf(outFile, placement.page, dpi, join(folder, `page-${placement.page}`)));
      rasters.set(placement.page, raster);
      const expected = onRaster(placement, picture, tip, dpi);
      const found = tipNear(raster, expected, along);
      const off = found === null ? Infinity : Math.hypot(found.x - expected.x, found.y - expected.y);
      expect(off, `photo ${picture.number}, tip ${tip.x}, ${tip.y}`).toBeLessThan(tolerance);
    }
  });
});
