/**
 * Photos stored turned and mirrored in all eight ways of EXIF: the picture on the canvas, the mark drawn on it and the
 * printed plate agree. The pictures are made by the wording of CIPA DC-008, not by the program's own libraries.
 */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { marksTexts } from '#shared-types/texts/marks.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';

import { tipNear } from '../pdf/arrow-tip.ts';
import { rasterOf } from '../pdf/pdf-tools.ts';
import { onRaster, placementsOf } from '../pdf/plate-placement.ts';
import type { Colour } from '../support/pictures/marked-picture.ts';
import { orientations, turnedJpeg } from '../support/pictures/turned-picture.ts';
import { seenInWell } from './colour-on-screen.ts';
import { enterFirstAnalyst, openFirstCase, station } from './first-case.ts';
import { dropFiles, openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';

/** As it is seen; not square, so that a picture on its side shows. */
const picture = { width: 600, height: 400 };
/**
 * Three squares that no turning or mirroring leaves where they are, in colours the screen does not have. Round the
 * tip's, JPEG shifts red and green alike, so that the arrow's own colour is not taken for found there.
 */
const squares = {
  tail: { at: { x: 450, y: 110 }, colour: [0, 255, 255] },
  tip: { at: { x: 210, y: 250 }, colour: [255, 255, 0] },
  corner: { at: { x: 60, y: 60 }, colour: [0, 255, 0] },
} as const satisfies Record<string, { at: { x: number; y: number }; colour: Colour }>;
const half = 14;

function colourAt(x: number, y: number): Colour {
  for (const { at, colour } of Object.values(squares)) {
    if (Math.abs(x + 0.5 - at.x) < half && Math.abs(y + 0.5 - at.y) < half) return colour;
  }
  return [128, 128, 128];
}

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;

beforeAll(async () => {
  house = await openProgramHouse();
  opened = await house.open();
  page = opened.page;
  await enterFirstAnalyst(page);
  await openFirstCase(page, 'It was like that when it came.');
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

describe('the eight orientations', () => {
  test('come in', async () => {
    const files = await Promise.all(
      orientations.map(async (orientation) => {
        const file = join(house.folder, `orientation-${orientation}.jpg`);
        await writeFile(file, await turnedJpeg(orientation, picture, colourAt));
        return file;
      }),
    );
    await station(page, 'photos').click();
    await page.getByRole('heading', { name: photosTexts.emptyTitle }).waitFor();
    await dropFiles(page, files);
    await page.getByRole('option', { name: photosTexts.photo('8') }).waitFor();
  });

  test.each(orientations)(
    'orientation %i is upright on the canvas, and takes a mark',
    async (orientation) => {
      if (orientation === 1) await station(page, 'marks').click();
      else await page.keyboard.press('PageDown');
      await page.getByText(marksTexts.photoOf(String(orientation), '8')).waitFor();
      await page.getByText(marksTexts.pictureComing).waitFor({ state: 'detached' });
      const [tail, tip, corner] = await seenInWell(page, [
        squares.tail.colour,
        squares.tip.colour,
        squares.corner.colour,
      ]);
      if (!tail || !tip || !corner) throw new Error('three colours were asked for');
      // Upright means: x grows to the right by one scale, y downward by the same, from the one square to the others.
      const scale = (tail.x - corner.x) / (squares.tail.at.x - squares.corner.at.x);
      expect(scale).toBeGreaterThan(0.5);
      for (const [seen, square] of [
        [tail, squares.tail],
        [tip, squares.tip],
      ] as const) {
        expect(Math.abs(seen.x - corner.x - (square.at.x - squares.corner.at.x) * scale)).toBeLessThan(2);
        expect(Math.abs(seen.y - corner.y - (square.at.y - squares.corner.at.y) * scale)).toBeLessThan(2);
      }
      await page.keyboard.press('w');
      await page.mouse.move(tail.x, tail.y);
      await page.mouse.down();
      await page.mouse.move((tail.x + tip.x) / 2, (tail.y + tip.y) / 2);
      await page.mouse.move(tip.x, tip.y);
      await page.mouse.up();
      // It could be given to a finding at once; here it is left as it is.
      await page.getByLabel(marksTexts.giving.title('?', 'arrow')).first().waitFor();
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: marksTexts.markButton('?') }).waitFor();
    },
  );

  test('are upright on their plates, with each arrow’s tip where it was drawn, to 2 pixels at 100 dpi', async () => {
    // The report is made of what the library holds.
    await page.locator('.marks-foot-saving').waitFor({ state: 'detached' });
    await station(page, 'report').click();
    await page.locator('[data-page="1"][data-drawn="true"]').waitFor();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: reportScreenTexts.save }).click();
    const pdf = join(house.folder, 'report.pdf');
    await (await download).saveAs(pdf);
    const dpi = 100;
    const placements = await placementsOf(pdf);
    // Eight plates, then the eight of the contact sheet.
    expect(placements).toHaveLength(2 * orientations.length);
    const { tail, tip, corner } = squares;
    const length = Math.hypot(tip.at.x - tail.at.x, tip.at.y - tail.at.y);
    const along = { x: (tip.at.x - tail.at.x) / length, y: (tip.at.y - tail.at.y) / length };
    for (const [index, placement] of placements.entries()) {
      const raster = await rasterOf(pdf, placement.page, dpi, join(house.folder, 'page'));
      const cornerAt = onRaster(placement, picture, corner.at, dpi);
      const [red, green, blue] = raster.at(Math.floor(cornerAt.x), Math.floor(cornerAt.y));
      expect([red < 80, green > 200, blue < 80]).toEqual([true, true, true]);
      if (index >= orientations.length) continue;
      const expected = onRaster(placement, picture, tip.at, dpi);
      const found = tipNear(raster, expected, along, 'undecided');
      const off = found === null ? Infinity : Math.hypot(found.x - expected.x, found.y - expected.y);
      expect(off).toBeLessThan(2);
    }
  });

  test('and the console had nothing to complain about', () => {
    expect(opened.complaints).toEqual([]);
  });
});
