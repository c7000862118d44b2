/** The report station as an analyst works at it: sections written beside the pages, which follow, and lead back. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import { AxeBuilder } from '@axe-core/playwright';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { claimTexts } from '#shared-types/texts/claim.ts';
import { openPointTexts } from '#shared-types/texts/open-points.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

import { placesOfPdf, type PlaceOnPage } from '../../renderer/report/places-of-pdf.ts';
import { noisyJpeg } from '../support/pictures/marked-picture.ts';
import { enterFirstAnalyst, openFirstCase, station } from './first-case.ts';
import { dropFiles, openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';

const texts = reportScreenTexts;

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;

beforeAll(async () => {
  house = await openProgramHouse();
  opened = await house.open();
  page = opened.page;
  await enterFirstAnalyst(page);
  await openFirstCase(page, 'The shaft nut was never tightened and came off.');
  const files = await Promise.all(
    [1, 2, 3].map(async (number) => {
      const file = join(house.folder, `IMG_000${number}.jpg`);
      await writeFile(file, await noisyJpeg(number));
      return file;
    }),
  );
  await station(page, 'photos').click();
  await page.getByRole('heading', { level: 1, name: shellTexts.station.photos }).waitFor();
  await dropFiles(page, files);
  await page.getByText(photosTexts.count('3', false)).first().waitFor();
  await toReport();
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

async function toReport(): Promise<void> {
  await station(page, 'report').click();
  await page.locator('[data-page="1"][data-drawn="true"]').waitFor();
}

const panel = () => page.getByRole('complementary', { name: texts.panel });
const section = (name: string) => panel().getByRole('region', { name, exact: true });
const words = (name: string) => section(name).getByLabel(texts.words);
const button = (name: string, within: Page | Locator = page) =>
  within.getByRole('button', { name, exact: true });
const pages = () => page.getByRole('region', { name: texts.pagesLabel });
const saved = () => panel().getByRole('status').getByText(texts.saving.saved).waitFor();

/** Pages near the sight, as they are read out, without white space. */
const onPages = (said: string) =>
  page.waitForFunction(
    (wanted) =>
      [...document.querySelectorAll('.pdf-page .only-read-out')]
        .map((one) => one.textContent.replace(/\s+/g, ''))
        .join('')
        .includes(wanted),
    said.replace(/\s+/g, ''),
  );

async function showPage(heading: string): Promise<void> {
  const contents = panel().locator('.report-contents');
  if (!(await contents.evaluate((one) => (one as HTMLDetailsElement).open))) {
    await contents.locator('summary').click();
  }
  await contents.getByRole('button', { name: new RegExp(`${heading}$`) }).click();
}

/** Named places of the document that is shown, in their order, and the size of its pages in points. */
async function placesShown(): Promise<{ places: PlaceOnPage[]; width: number; height: number }> {
  const address = (await page.getByRole('link', { name: texts.print }).getAttribute('href')) ?? '';
  const answer = await page.context().request.get(new URL(address, page.url()).href);
  const loading = getDocument({ data: new Uint8Array(await answer.body()), verbosity: 0 });
  try {
    const pdf = await loading.promise;
    const places = (await placesOfPdf(pdf)).sort(
      (one, other) => one.page - other.page || one.y - other.y || one.x - other.x,
    );
    const { width, height } = (await pdf.getPage(1)).getViewport({ scale: 1 });
    return { places, width, height };
  } finally {
    await loading.destroy();
  }
}

/** Brings the first place of which this holds into sight. @returns where it stands in the window */
async function pointOf(isIt: (place: PlaceOnPage) => boolean): Promise<{ x: number; y: number }> {
  // Nothing is being made, which would be said above the pages, and where a click on them leads is known.
  await page
    .getByRole('status')
    .getByText(/^\d+ pages$/)
    .waitFor();
  const { places, width, height } = await placesShown();
  const place = places.find(isIt);
  if (place === undefined) throw new Error('the document has no such place');
  const sheet = page.locator(`[data-page="${place.page}"] canvas`);
  // Well below the head of what scrolls, whichever part of the page it is.
  await sheet.evaluate((canvas, share) => {
    canvas.scrollIntoView({ block: 'start' });
    const scrolled = canvas.closest('.pdf-pages');
    scrolled?.scrollBy(0, canvas.getBoundingClientRect().height * share - 200);
  }, place.y / height);
  await page.locator(`[data-page="${place.page}"][data-drawn="true"]`).waitFor();
  const box = await sheet.boundingBox();
  if (box === null) throw new Error('the page is not in sight');
  const scale = box.width / width;
  return { x: box.x + (place.x + 5) * scale, y: box.y + (place.y + 3) * scale };
}

describe('sections of one’s own', () => {
  test('are written beside the pages, and the pages follow', async () => {
    // The new section's heading has the focus in the press's own turn: what is typed next is meant for it.
    const at = await button(texts.addTo['before-findings']).evaluate(async (add: HTMLElement) => {
      add.click();
      await Promise.resolve();
      return document.activeElement?.tagName;
    });
    expect(at).toBe('INPUT');
    await page.keyboard.type('How it was examined');
    await page.keyboard.press('Tab');
    await page.keyboard.type('Nothing was **sectioned**. See [plate IMG_0002] and [plate 2].');
    await saved();
    await showPage('How it was examined');
    await onPages('4How it was examinedNothing was sectioned. See plate 2 and [plate 2].');
    await section('How it was examined').getByText(texts.loose['plate-by-number']('[plate 2]')).waitFor();
  });

  test('the pages stay where they are, and in sight, while new ones are made', async () => {
    const before = await pages().evaluate((one) => one.scrollTop);
    expect(before).toBeGreaterThan(0);
    // From now on every moment without a drawn page in sight is noted.
    await page.evaluate(() => {
      const blank = { seen: false };
      const look = () => {
        const canvases = [...document.querySelectorAll<HTMLCanvasElement>('.pdf-page canvas')];
        const box = document.querySelector('.pdf-pages')?.getBoundingClientRect();
        const inSight = canvases.filter((one) => {
          const own = one.getBoundingClientRect();
          return box !== undefined && own.bottom > box.top && own.top < box.bottom;
        });
        // A canvas that was never drawn into is 300 pixels wide (HTML standard, 4.12.5).
        if (inSight.length === 0 || inSight.some((one) => one.width === 300)) blank.seen = true;
      };
      new MutationObserver(look).observe(document.querySelector('.report-sheets') ?? document.body, {
        subtree: true,
        childList: true,
        attributes: true,
      });
      Object.assign(window, { blank });
    });
    await words('How it was examined').click();
    await page.keyboard.press('Control+End');
    await page.keyboard.type(' Said once more.');
    await onPages('Said once more.');
    expect(await pages().evaluate((one) => one.scrollTop)).toBe(before);
    expect(await panel().locator('.report-contents').getAttribute('open')).not.toBeNull();
    expect(await page.evaluate(() => (window as unknown as { blank: { seen: boolean } }).blank.seen)).toBe(
      false,
    );
  });

  test('a reference is chosen and stands where the caret was', async () => {
    await words('How it was examined').click();
    await page.keyboard.press('Control+Home');
    await section('How it was examined')
      .getByLabel(texts.refer)
      .selectOption({ label: texts.referGroups.plate('3', 'IMG_0003.jpg') });
    await page.keyboard.type(': ');
    expect(await words('How it was examined').inputValue()).toMatch(/^\[plate IMG_0003\.jpg\]: Nothing/);
    await saved();
    await onPages('plate 3: Nothing was');
  });

  test('are moved, removed and put back, and there after a reload', async () => {
    await button(texts.addTo['before-findings']).click();
    await page.keyboard.type('Oil supply');
    await saved();
    await button(texts.named(texts.earlier, 'Oil supply')).click();
    await saved();
    const headings = () =>
      panel()
        .getByLabel(texts.sectionHeading)
        .evaluateAll((fields) => fields.map((one) => (one as HTMLInputElement).value));
    expect(await headings()).toEqual(['Oil supply', 'How it was examined']);
    await button(texts.named(texts.remove, 'Oil supply')).click();
    expect(await headings()).toEqual(['How it was examined']);
    await button(texts.putBack).click();
    expect(await headings()).toEqual(['Oil supply', 'How it was examined']);
    await saved();
    await page.reload();
    await page.locator('[data-page="1"][data-drawn="true"]').waitFor();
    expect(await headings()).toEqual(['Oil supply', 'How it was examined']);
  });
});

describe('the pages', () => {
  test('take as many plates as is chosen', async () => {
    await pages()
      .getByRole('region', { name: /^Page 1 of/ })
      .waitFor();
    const count = () => page.locator('.pdf-page').count();
    const before = await count();
    await button(texts.plates[4], panel()).click();
    await saved();
    await page.waitForFunction((all) => document.querySelectorAll('.pdf-page').length < all, before);
    expect(await button(texts.plates[4], panel()).getAttribute('aria-pressed')).toBe('true');
  });

  test('lead to the fields of a section of one’s own', async () => {
    const { x, y } = await pointOf(({ name }) => name === 'own-1');
    await page.mouse.click(x, y);
    await page.waitForFunction(() => document.activeElement instanceof HTMLTextAreaElement);
    expect(await words('How it was examined').evaluate((one) => one === document.activeElement)).toBe(true);
  });

  test.each([
    ['findings', 'findings'],
    ['answer', 'claim'],
  ] as const)('lead from %s to the station %s', async (place, name) => {
    await toReport();
    const { x, y } = await pointOf((known) => known.name === place);
    await page.mouse.click(x, y);
    await page.getByRole('heading', { level: 1, name: shellTexts.station[name] }).waitFor();
  });

  test('lead from a plate to its photo at the marks', async () => {
    await toReport();
    const { places } = await placesShown();
    const second = places.filter(({ name }) => name.startsWith('plate-'))[1];
    const { x, y } = await pointOf(({ name }) => name === second?.name);
    // Well within the picture, whose upper left corner the place is.
    await page.mouse.click(x + 40, y + 40);
    await page.locator('.photo-row').waitFor();
    expect(page.url()).toContain(`/marks/${(second?.name ?? '').slice('plate-'.length)}`);
  });
});

describe('what is still open', () => {
  test('is listed beside the pages, and a point leads to where it is settled', async () => {
    await toReport();
    const list = panel().getByRole('list', { name: openPointTexts.head });
    const point = list.getByRole('listitem').filter({ hasText: openPointTexts.photosWithoutPart(3) });
    await point.getByRole('link', { name: texts.writtenAt.photos }).click();
    await page.getByRole('heading', { level: 1, name: shellTexts.station.photos }).waitFor();
  });

  test('goes from the list once it is settled', async () => {
    await station(page, 'claim').click();
    await page.getByLabel(claimTexts.conclusion).fill('It was not the nut.');
    await toReport();
    const list = panel().getByRole('list', { name: openPointTexts.head });
    await list.getByText(openPointTexts.claim.noConclusion).waitFor({ state: 'detached' });
    await list.getByText(openPointTexts.claim.noInterest).waitFor();
  });
});

describe('the screen', () => {
  test('holds to the rules of axe-core (WCAG 2.2 A and AA), with its contents open', async () => {
    await toReport();
    await panel().locator('.report-contents summary').click();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))])).toEqual([]);
  });

  test('keeps everything within reach with text of twice the size', async () => {
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    for (const control of [button(texts.save), button(texts.addTo['before-answer'])]) {
      await control.scrollIntoViewIfNeeded();
      const box = await control.boundingBox();
      expect(box !== null && box.x >= 0 && box.x + box.width <= 1280).toBe(true);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1280);
  });

  test('and the console had nothing to complain about', () => {
    expect(opened.complaints).toEqual([]);
  });
});
