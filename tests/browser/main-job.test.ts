/**
 * The job, once through, as the analyst does it: a case, a dropped photo, an arrow, a primary finding, the printed
 * page, and the case found again by its damage.
 */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

import { tipNear } from '../pdf/arrow-tip.ts';
import { qpdfCheck, rasterOf, textOf } from '../pdf/pdf-tools.ts';
import { onRaster, placementsOf } from '../pdf/plate-placement.ts';
import { seenInWell, type ScreenPlace } from './colour-on-screen.ts';
import { enterFirstAnalyst, openFirstCase, station } from './first-case.ts';
import { dropFiles, openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';

const picture = { width: 2400, height: 1800 };
/** Where the arrow goes, as shares of the picture. */
const tail = { x: 0.7, y: 0.25 };
const tip = { x: 0.4, y: 0.55 };

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;
let pdf: string;

beforeAll(async () => {
  house = await openProgramHouse();
  opened = await house.open();
  page = opened.page;
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

const button = (name: string | RegExp) => page.getByRole('button', { name });

/** Squares on the picture at the arrow's two ends, in colours that neither the screen nor a mark has. */
const ends = {
  tail: { at: tail, colour: [0, 255, 255] },
  tip: { at: tip, colour: [0, 255, 0] },
} as const;

/** A grey picture with the two squares. */
async function pictureWithEnds(): Promise<Buffer> {
  const side = 24;
  const squares = Object.values(ends).map(({ at, colour: [r, g, b] }) => ({
    input: { create: { width: side, height: side, channels: 3 as const, background: { r, g, b } } },
    left: Math.round(at.x * picture.width - side / 2),
    top: Math.round(at.y * picture.height - side / 2),
  }));
  const ground = sharp({ create: { ...picture, channels: 3, background: '#808080' } });
  return ground.composite(squares).jpeg({ quality: 95 }).toBuffer();
}

/** The middle of a square as the analyst sees it on the screen. */
async function seen(end: keyof typeof ends): Promise<ScreenPlace> {
  const [middle] = await seenInWell(page, [ends[end].colour]);
  if (middle === undefined) throw new Error('one colour was asked for');
  return middle;
}

describe('the job, from the claim to the printed page and back', () => {
  test('the first analyst says who works here', async () => {
    await enterFirstAnalyst(page);
  });

  test('a case is opened with its number, unit and claim', async () => {
    await openFirstCase(page, 'The shaft nut was never tightened and came off.');
    await page.getByText('“The shaft nut was never tightened and came off.”').first().waitFor();
  });

  test('a photo is dropped on the photos and arrives', async () => {
    const file = join(house.folder, 'front-face.jpg');
    await writeFile(file, await pictureWithEnds());
    await station(page, 'photos').click();
    await page.getByRole('heading', { name: photosTexts.emptyTitle }).waitFor();
    await dropFiles(page, [file]);
    const photo = page.getByRole('option', { name: photosTexts.photo('1') });
    await photo.waitFor();
    await photo.click();
    await page.getByText('front-face.jpg').first().waitFor();
    expect(await page.getByRole('listbox').getByRole('option').count()).toBe(1);
  });

  test('an arrow is drawn on it and given to a primary finding', async () => {
    await station(page, 'marks').click();
    await page.getByRole('application').waitFor();
    await page.getByText(marksTexts.noFindingsHere).waitFor();
    await page.getByText(marksTexts.pictureComing).waitFor({ state: 'detached' });
    await page.keyboard.press('w');
    const from = await seen('tail');
    const to = await seen('tip');
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2);
    await page.mouse.move(to.x, to.y);
    await page.mouse.up();
    await page.getByLabel(findingsTexts.part, { exact: true }).selectOption({ label: 'thrust bearing' });
    await page.getByLabel(findingsTexts.zone, { exact: true }).selectOption({ label: 'front pads' });
    await page.getByLabel(findingsTexts.kind, { exact: true }).selectOption({ label: 'worn away' });
    await page.getByRole('radio', { name: commonTexts.damageClasses.primary }).check();
    await button(marksTexts.giving.save).click();
    await button(marksTexts.markButton('P 1.1')).waitFor();
  });

  test('it is taken back, done again, and there after a reload', async () => {
    const mark = button(marksTexts.markButton('P 1.1'));
    await page.keyboard.press('Control+z');
    await mark.waitFor({ state: 'detached' });
    await page.keyboard.press('Control+Shift+z');
    await mark.waitFor();
    await page.reload();
    await mark.waitFor();
  });

  test('the printed page has the arrow’s tip where it was drawn, to 2 pixels at 100 dpi', async () => {
    await station(page, 'report').click();
    await page.locator('[data-page="1"][data-drawn="true"]').waitFor();
    const download = page.waitForEvent('download');
    await button(reportScreenTexts.save).click();
    pdf = join(house.folder, 'report.pdf');
    const taken = await download;
    expect(taken.suggestedFilename()).toBe('report-26-0147.pdf');
    await taken.saveAs(pdf);
    await qpdfCheck(pdf);
    const words = await textOf(pdf);
    expect(words).toContain('The shaft nut was never tightened and came off.');
    expect(words).toContain('Thrust bearing, front pads');

    const [placement] = await placementsOf(pdf);
    if (placement === undefined) throw new Error('no plate on the pages');
    const dpi = 100;
    const at = { x: tip.x * picture.width, y: tip.y * picture.height };
    const from = { x: tail.x * picture.width, y: tail.y * picture.height };
    const length = Math.hypot(at.x - from.x, at.y - from.y);
    const along = { x: (at.x - from.x) / length, y: (at.y - from.y) / length };
    const expected = onRaster(placement, picture, at, dpi);
    const raster = await rasterOf(pdf, placement.page, dpi, join(house.folder, 'page'));
    const found = tipNear(raster, expected, along);
    expect(found).not.toBeNull();
    const off = found === null ? Infinity : Math.hypot(found.x - expected.x, found.y - expected.y);
    expect(off).toBeLessThan(2);
  });

  test('the case is found again by its damage', async () => {
    await page.keyboard.press('/');
    await page.keyboard.type('worn');
    await page.getByRole('option', { name: /thrust bearing: worn away/ }).waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.getByText(searchTexts.resultCount('1', '1')).waitFor();
    await page.getByRole('link', { name: /1 thrust bearing, front pads: worn away/ }).click();
    await page.getByRole('heading', { level: 1, name: shellTexts.station.findings }).waitFor();
  });

  test.each(['claim', 'photos', 'marks', 'findings', 'report'] as const)(
    'the %s screen holds to the rules of axe-core (WCAG 2.2 A and AA)',
    async (name) => {
      await station(page, name).click();
      await page.getByRole('heading', { level: 1, name: shellTexts.station[name] }).waitFor();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))])).toEqual([]);
    },
  );

  test('and the console had nothing to complain about', () => {
    expect(opened.complaints).toEqual([]);
  });
});
