/** Lengths on a photo: with the keyboard alone, and with the mouse on a sample photo whose truth is known. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { fitView, imagePoint, imageToScreen } from '#analysis/marks/planes.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { measureTexts } from '#shared-types/texts/measure.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';

import { enterFirstAnalyst, openFirstCase, station } from './first-case.ts';
import { dropFiles, openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';

/** CSS pixels round the whole photo, as renderer/marks/use-photo-view.ts lays it. */
const fitMargin = 12;

/** A plate with a printed rectangle of 100 x 60 mm, seen at about 45 degrees; size in pixels. */
const sample = resolve('sample-cases', 'ferry-auxiliary', 'photos', 'BRN_2104.jpg');
const size = { width: 2400, height: 1800 };
const truth = JSON.parse(
  readFileSync(resolve('sample-cases', 'ferry-auxiliary', 'truth', 'BRN_2104.json'), 'utf8'),
) as { readonly points: Readonly<Record<string, { readonly px: readonly [number, number] }>> };

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;

const well = () => page.getByRole('application');
const saved = () => page.getByText(marksTexts.saving).waitFor({ state: 'detached' });
const reading = () => page.locator('.marks-reading');

beforeAll(async () => {
  house = await openProgramHouse();
  opened = await house.open();
  page = opened.page;
  await enterFirstAnalyst(page);
  await openFirstCase(page, 'The thrust bearing was made too thin.');
  await station(page, 'photos').click();
  await page.getByRole('heading', { name: photosTexts.emptyTitle }).waitFor();
  await dropFiles(page, [sample]);
  await page.getByRole('option', { name: photosTexts.photo('1') }).waitFor();
  await station(page, 'marks').click();
  await page.locator('.marks-stage canvas').first().waitFor();
  await well().focus();
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

/** Where a point of the photo is in the window, while the whole photo is shown. */
async function onScreen(name: string): Promise<[number, number]> {
  const point = truth.points[name];
  const edge = await well().boundingBox();
  if (point === undefined || edge === null) throw new Error(`${name} is not in sight`);
  const [x, y] = point.px;
  const seen = imageToScreen(fitView(size, edge, fitMargin), imagePoint(x, y));
  return [edge.x + seen.x, edge.y + seen.y];
}

describe('with the keyboard alone', () => {
  /** A span from the middle of the photo so many steps to the right, drawn by the tool of this key. */
  async function spanned(tool: string, steps: number): Promise<void> {
    await page.keyboard.press(tool);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    for (let step = 0; step < steps; step += 1) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Enter');
  }

  test('a length is measured in pixels first, and in millimetres once a scale is entered', async () => {
    await spanned('d', 10);
    await page.getByText(measureTexts.setScale).waitFor();
    expect(await reading().textContent()).toMatch(/^\d+ px, no scale$/);
    await spanned('b', 10);
    const known = page.getByLabel(measureTexts.scale.length);
    await page.waitForFunction(() => document.activeElement?.tagName === 'INPUT');
    await page.keyboard.type('40');
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.activeElement?.getAttribute('role') === 'application');
    expect(await known.inputValue()).toBe('40');
    await page.getByText(measureTexts.scale.used).waitFor();
    // The same span, so the same length: whatever the uncertainty, the value is the one entered.
    await page.keyboard.press('v');
    await page.getByRole('button', { name: /^Mark length 40[.\d]* ± / }).focus();
    await page.keyboard.press('Enter');
    await page.getByText(measureTexts.warnings['tilt-not-corrected']).waitFor();
    expect(await reading().textContent()).toMatch(/^40[.\d]* ± [.\d]+\u00a0mm$/);
  });

  test('and is measured by nothing once the scale is taken away', async () => {
    await page.getByRole('button', { name: /^Mark scale 40/ }).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Delete');
    await page.getByRole('button', { name: /^Mark length \d+ px, no scale$/ }).waitFor();
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: /^Mark length 40[.\d]* ± / }).waitFor();
    await saved();
  });
});

describe('with the mouse', () => {
  test('the diagonal of the plate is right by a rectangle of known sides, though the camera was tilted', async () => {
    await page.keyboard.press('p');
    for (const corner of ['upper-left', 'upper-right', 'lower-right', 'lower-left']) {
      await page.mouse.click(...(await onScreen(corner)));
    }
    await page.getByLabel(measureTexts.scale.along).waitFor();
    await page.waitForFunction(() => document.activeElement?.tagName === 'INPUT');
    await page.keyboard.type('100');
    await page.keyboard.press('Enter');
    await page.keyboard.type('60');
    await page.keyboard.press('Enter');
    await page.getByText(measureTexts.scale.used).waitFor();

    await page.keyboard.press('d');
    await page.mouse.move(...(await onScreen('upper-left')));
    await page.mouse.down();
    await page.mouse.move(...(await onScreen('lower-right')), { steps: 4 });
    await page.mouse.up();
    await page.getByText(measureTexts.byRectangle('100 × 60\u00a0mm')).waitFor();
    const said = /^([\d.]+) ± ([\d.]+)\u00a0mm$/.exec((await reading().textContent()) ?? '');
    // By Pythagoras of the sides.
    expect(Math.abs(Number(said?.[1]) - Math.hypot(100, 60))).toBeLessThan(Number(said?.[2]));
    await saved();
  });

  test('and is all there after a reload', async () => {
    const names = () => page.getByRole('button', { name: /^Mark (length|scale)/ }).allTextContents();
    const before = await names();
    expect(before).toHaveLength(4);
    await page.reload();
    await page.getByRole('button', { name: 'Mark scale 100 × 60\u00a0mm' }).waitFor();
    expect(await names()).toEqual(before);
  });

  test('holds to the rules of axe-core (WCAG 2.2 A and AA), and the console stays empty', async () => {
    for (const name of [/^Mark scale 100/, /^Mark length 11/]) {
      await page.getByRole('button', { name }).click();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))])).toEqual([]);
    }
    expect(opened.complaints).toEqual([]);
  });
});
