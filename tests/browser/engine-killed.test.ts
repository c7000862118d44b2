/** The engine dies in the middle of an import: the window says so, starts it again, and no photo is half there. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import { afterAll, beforeAll, expect, test } from 'vitest';

import { photosTexts } from '#shared-types/texts/photos.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

import { noisyJpeg } from '../support/pictures/marked-picture.ts';
import { enterFirstAnalyst, openFirstCase, station } from './first-case.ts';
import { dropFiles, openProgramHouse, type ProgramHouse } from './program-house.ts';
import { until } from './until.ts';

let house: ProgramHouse;

beforeAll(async () => {
  // The original is kept, its row is not yet written: the second of four photos.
  house = await openProgramHouse('import.original-kept:kill@2');
});
afterAll(() => house.close());

test('the window says that it stopped, starts it again, and shows only whole photos', async () => {
  const files = await Promise.all(
    [1, 2, 3, 4].map(async (seed) => {
      const file = join(house.folder, `part-${String(seed)}.jpg`);
      await writeFile(file, await noisyJpeg(seed));
      return file;
    }),
  );
  const { page, close } = await house.open();
  await enterFirstAnalyst(page);
  await openFirstCase(page, 'It whistled.');
  await station(page, 'photos').click();
  await page.getByRole('heading', { name: photosTexts.emptyTitle }).waitFor();

  // The banner may stand for less than the half second between two looks at a locator: each frame is looked at.
  const words = shellTexts.engine.restarting;
  const restarting = page.waitForFunction((said) => document.body.innerText.includes(said), words);
  await dropFiles(page, files);
  await restarting;
  await page.getByText(words).waitFor({ state: 'detached' });
  expect(house.enginesStarted()).toBe(2);
  await page.getByText(photosTexts.resultsBy.interrupted).waitFor();

  const photos = page.getByRole('listbox', { name: photosTexts.grid }).getByRole('option');
  // The grid reads the photos anew a little after the job is told of.
  const told = (count: number) => page.getByText(photosTexts.resultOf.added(count));
  await until(async () => (await told(await photos.count()).count()) === 1);
  const whole = await photos.count();
  expect(whole).toBeLessThan(files.length);
  for (const picture of await photos.locator('img').all()) {
    expect(
      await picture.evaluate((image: HTMLImageElement) => image.decode().then(() => image.naturalWidth)),
    ).toBe(320);
  }

  await dropFiles(page, files);
  await told(files.length - whole).waitFor();
  await photos.nth(files.length - 1).waitFor();
  expect(await photos.count()).toBe(files.length);
  await close();
});
