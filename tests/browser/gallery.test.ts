/** Every control in every state, in both themes: what a reader, a keyboard and a screen reader get of them. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';

import { classStyles } from '#shared-types/class-style.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { galleryTexts } from '#shared-types/texts/gallery.ts';

import { openGalleryHouse, type GalleryHouse, type GalleryWindow } from './gallery-window.ts';

let house: GalleryHouse;
let opened: GalleryWindow | null = null;

beforeAll(async () => {
  house = await openGalleryHouse();
});
afterAll(() => house.close());

afterEach(async () => {
  const complaints = opened?.complaints ?? [];
  await opened?.close();
  opened = null;
  expect(complaints).toEqual([]);
});

async function gallery(options?: Parameters<GalleryHouse['open']>[0]): Promise<Page> {
  opened = await house.open(options);
  return opened.page;
}

const themes = ['light', 'dark'] as const;

it('holds to the rules of axe-core, which follow WCAG 2.2 and the ARIA authoring practices', async () => {
  const page = await gallery();
  expect(await breaches(page, 'body')).toEqual([]);
});

describe.each(themes)('in the %s theme', (theme) => {
  it('holds to them in a dialog and in messages', async () => {
    const page = await gallery({ theme });
    await page.getByRole('button', { name: galleryTexts.say, exact: true }).click();
    await page.getByRole('button', { name: galleryTexts.sayError }).click();
    expect(await breaches(page, '.toaster')).toEqual([]);
    await page.getByRole('button', { name: galleryTexts.openDialog }).click();
    expect(await breaches(page, 'dialog')).toEqual([]);
  });

  it('lets a message go by itself, one with something to do later, an error never', async () => {
    const page = await gallery({ theme });
    await page.clock.install();
    const said = page.locator('.toaster').getByText(galleryTexts.said);
    const error = page.locator('.toaster').getByText(galleryTexts.fieldError);
    await page.getByRole('button', { name: galleryTexts.say, exact: true }).click();
    await page.getByRole('button', { name: galleryTexts.sayError }).click();
    await page.mouse.move(0, 0);
    await page.clock.fastForward(10_000);
    expect([await said.count(), await error.count()]).toEqual([1, 1]);
    await page.clock.fastForward(60_000);
    await said.waitFor({ state: 'detached' });
    expect(await error.count()).toBe(1);
  });

  // WCAG 2.2, 1.4.3: 4.5 to 1 for text of this size; the formula is that of its definition of contrast ratio.
  it('sets the letter of each class off from its shape by at least 4.5 to 1', async () => {
    const page = await gallery();
    for (const [name, style] of Object.entries(classStyles)) {
      const badge = page
        .getByRole('region', { name: galleryTexts[theme], exact: true })
        .getByRole('img', { name: commonTexts.damageClasses[name as keyof typeof classStyles], exact: true });
      expect(await badge.textContent()).toBe(style.letter);
      const [shape, letter] = await badge.evaluate((svg) => [
        getComputedStyle(svg).fill,
        getComputedStyle(svg.querySelector('text') ?? svg).fill,
      ]);
      expect(contrastRatio(shape, letter)).toBeGreaterThanOrEqual(4.5);
    }
  });
});

describe('with text at 200 % (WCAG 2.2, 1.4.4)', () => {
  it('grows every text and needs no sideways scrolling in a window of 1280 by 720', async () => {
    const page = await gallery({ textScale: 2 });
    const sizes = await page.evaluate(() => ({
      text: getComputedStyle(document.body).fontSize,
      content: document.documentElement.scrollWidth,
      window: document.documentElement.clientWidth,
    }));
    // 14 px of text for work, twice.
    expect(sizes.text).toBe('28px');
    expect(sizes.content).toBeLessThanOrEqual(sizes.window);
  });

  it('cuts no button’s words off', async () => {
    const page = await gallery({ textScale: 2 });
    const cut = await page
      .locator('button')
      .evaluateAll((buttons) =>
        buttons
          .filter((one) => one.scrollWidth > one.clientWidth + 1 || one.scrollHeight > one.clientHeight + 1)
          .map((one) => one.textContent),
      );
    expect(cut).toEqual([]);
  });
});

it('shows its words in the two faces that are served with it', async () => {
  const page = await gallery();
  const faces = await page.evaluate(() =>
    [...document.fonts].filter((face) => face.status === 'loaded').map((face) => face.family),
  );
  expect(new Set(faces.map((family) => family.replaceAll('"', '')))).toEqual(
    new Set(['Source Sans 3', 'Source Serif 4']),
  );
});

describe('a dialog', () => {
  it('takes the focus into its first field, keeps it, and gives it back when Escape closes it', async () => {
    const page = await gallery();
    const opener = page.getByRole('button', { name: galleryTexts.openDialog });
    await opener.press('Enter');
    const dialog = page.getByRole('dialog', { name: galleryTexts.dialogTitle });
    expect(await hasFocus(dialog.getByRole('textbox'))).toBe(true);

    // Field, cancel, save, close: twice round and back.
    for (const key of [...Array<string>(8).fill('Tab'), ...Array<string>(5).fill('Shift+Tab')]) {
      await page.keyboard.press(key);
      expect(await dialog.evaluate((element) => element.contains(document.activeElement))).toBe(true);
    }
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await hasFocus(opener)).toBe(true);
  });
});

describe('a table', () => {
  it('is walked by arrow keys with one stop for Tab, and sorted by its heads', async () => {
    const page = await gallery();
    const table = page.getByRole('table', { name: galleryTexts.tableCaption }).first();
    expect(await table.locator('tbody tr[tabindex="0"]').count()).toBe(1);

    await table.locator('tbody tr').first().focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    expect(await numbersOf(table, 'tr[aria-current="true"]')).toEqual(['12']);
    await page.keyboard.press('End');
    expect(await hasFocus(table.locator('tbody tr').last())).toBe(true);

    expect(await numbersOf(table, 'tbody tr')).toEqual(['7', '9', '12', '14']);
    const head = table.getByRole('columnheader', { name: galleryTexts.tableHeads.number });
    expect(await head.getAttribute('aria-sort')).toBe('ascending');
    await head.getByRole('button').click();
    expect(await head.getAttribute('aria-sort')).toBe('descending');
    // As numbers: as words 7 would come after 14.
    expect(await numbersOf(table, 'tbody tr')).toEqual(['14', '12', '9', '7']);
  });
});

describe('messages', () => {
  it('are announced by their kind, and one that went wrong stays until it is dismissed', async () => {
    const page = await gallery();
    const messages = page.getByRole('region', { name: commonTexts.messages });
    await page.getByRole('button', { name: galleryTexts.say, exact: true }).click();
    await messages.getByRole('status').getByText(galleryTexts.said).waitFor();
    await page.getByRole('button', { name: galleryTexts.sayError }).click();
    const alert = messages.getByRole('alert');
    await alert.getByText(galleryTexts.fieldError).waitFor();
    await alert.getByRole('button', { name: commonTexts.dismiss }).click();
    await alert.getByText(galleryTexts.fieldError).waitFor({ state: 'detached' });
    expect(await alert.textContent()).toBe('');
  });
});

it('outlines whatever the keyboard stands on (WCAG 2.2, 2.4.7)', async () => {
  const page = await gallery();
  const stops = await page.locator('.gallery :is(a[href], button, input, select, textarea):enabled').count();
  let outlined = 0;
  for (let stop = 0; stop < stops; stop += 1) {
    await page.keyboard.press('Tab');
    outlined += await page.evaluate(() => {
      const here = document.activeElement;
      if (here === null || here === document.body) return 0;
      const { outlineStyle, outlineWidth } = getComputedStyle(here);
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 ? 1 : 0;
    });
  }
  expect(stops).toBeGreaterThan(20);
  expect(outlined).toBe(stops);
});

async function breaches(page: Page, within: string): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).include(within).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`);
}

function hasFocus(element: Locator): Promise<boolean> {
  return element.evaluate((one) => one === document.activeElement);
}

/** The first column of the rows that fit, from the top. */
function numbersOf(table: Locator, rows: string): Promise<string[]> {
  return table
    .locator(rows)
    .evaluateAll((found) => found.map((row) => row.querySelector('td')?.textContent ?? ''));
}

/** Of two colours as `rgb(r, g, b)`, by the definitions of relative luminance and contrast ratio in WCAG 2.2. */
function contrastRatio(one: string, other: string): number {
  const [lighter = 0, darker = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (lighter + 0.05) / (darker + 0.05);
}

function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = (colour.match(/\d+/g) ?? []).map((part) => {
    const share = Number(part) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
