/** The photos station with a thousand photos in the case: few elements, and everything still within reach. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { CaseId } from '#shared-types/ids.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

import { furnishCaseOfPhotos } from '../support/pictures/case-of-photos.ts';
import { openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';
import { untilAt } from './until.ts';

const count = 1_000;
/** Elements and texts inside the grid at any time, whatever the window up to 1920 x 1080. */
const mostNodes = 400;
const wide = { width: 1920, height: 1080 };

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;
let grid: Locator;

beforeAll(async () => {
  let caseId: CaseId | null = null;
  house = await openProgramHouse(null, async (folder) => {
    caseId = await furnishCaseOfPhotos(folder, count);
  });
  opened = await house.open({ route: `/case/${String(caseId)}/photos`, size: wide });
  page = opened.page;
  grid = page.getByRole('listbox', { name: photosTexts.grid });
  await cell(1).waitFor();
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

const cell = (number: number) => grid.locator(`[role=option][aria-posinset="${String(number)}"]`);
const button = (name: string | RegExp, exact = true) => page.getByRole('button', { name, exact });
const side = () => page.getByRole('complementary');

/** Every node inside the grid: elements and texts alike. */
const nodesInGrid = () =>
  grid.evaluate((list) => {
    const walker = document.createTreeWalker(list);
    let nodes = 0;
    while (walker.nextNode() !== null) nodes += 1;
    return nodes;
  });

/** What the grid names as the place of the keyboard: its number, and whether it is wholly in sight with a ring. */
async function keyboardPlace() {
  await page.evaluate(() => new Promise(requestAnimationFrame));
  return grid.evaluate((list) => {
    const active = document.getElementById(list.getAttribute('aria-activedescendant') ?? '');
    if (active === null) return null;
    const { top, bottom } = active.getBoundingClientRect();
    const box = list.parentElement?.parentElement?.getBoundingClientRect();
    const { outlineStyle, outlineWidth } = getComputedStyle(active);
    return {
      number: Number(active.getAttribute('aria-posinset')),
      inSight: box !== undefined && top >= box.top && bottom <= box.bottom,
      ring: outlineStyle === 'solid' && Number.parseFloat(outlineWidth) >= 2,
      focused: document.activeElement === list,
    };
  });
}

async function press(...keys: string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
}

/** Numbers of the chosen photos among those in the page. */
const chosenNumbers = () =>
  grid
    .locator('[aria-selected=true]')
    .evaluateAll((cells) => cells.map((each) => Number(each.getAttribute('aria-posinset'))));
const namesOfFirst = async (most: number) => {
  const names = [];
  for (let number = 1; number <= most; number += 1) {
    await cell(number).click();
    names.push(
      (await side()
        .getByText(/^IMG_\d+\.jpg$/)
        .textContent())!,
    );
  }
  return names;
};

const axeFindsNothing = async () => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))])).toEqual([]);
};

const journalEntries = async () => {
  const words = await page.getByText(/^Journal \d+/).textContent();
  return Number(/\d+/.exec(words!)![0]);
};

describe('the grid', () => {
  test('says how many there are, and has few of them in the page', async () => {
    await page.getByText(photosTexts.count('1,000', false)).waitFor();
    expect(await cell(1).getAttribute('aria-setsize')).toBe(String(count));
    expect(await grid.getAttribute('aria-multiselectable')).toBe('true');
    expect(await nodesInGrid()).toBeLessThanOrEqual(mostNodes);
    await axeFindsNothing();
  });

  test('stays so while the wheel goes through all of them, and what is in sight is there', async () => {
    const box = page.locator('.photo-grid-box');
    const counts: number[] = [];
    const seen = new Set<number>();
    await grid.hover();
    for (;;) {
      counts.push(await nodesInGrid());
      const { numbers, gapAbove, gapBelow, before, atEnd } = await box.evaluate((shown) => {
        const { top, bottom } = shown.getBoundingClientRect();
        const inSight = [...shown.querySelectorAll('[role=option]')]
          .map((each) => ({ rect: each.getBoundingClientRect(), number: each.getAttribute('aria-posinset') }))
          .filter(({ rect }) => rect.bottom > top && rect.top < bottom);
        return {
          numbers: inSight.map(({ number }) => Number(number)).sort((one, other) => one - other),
          gapAbove: Math.min(...inSight.map(({ rect }) => rect.top)) - top,
          gapBelow: bottom - Math.max(...inSight.map(({ rect }) => rect.bottom)),
          before: shown.scrollTop,
          atEnd: shown.scrollTop + shown.clientHeight >= shown.scrollHeight - 1,
        };
      });
      for (const number of numbers) seen.add(number);
      // One after the other, from edge to edge but for the gap between two rows.
      expect(numbers).toEqual(numbers.map((_, at) => numbers[0]! + at));
      expect(Math.max(gapAbove, gapBelow)).toBeLessThanOrEqual(12);
      if (atEnd) break;
      await page.mouse.wheel(0, 700);
      await page.waitForFunction(
        ([from]) => document.querySelector('.photo-grid-box')!.scrollTop !== from,
        [before],
      );
      await page.evaluate(() => new Promise(requestAnimationFrame));
    }
    expect(Math.max(...counts)).toBeLessThanOrEqual(mostNodes);
    expect(counts.length).toBeGreaterThan(30);
    expect(seen.size).toBe(count);
  });

  test('is walked by keys to the last photo and back, with the ring in sight', async () => {
    await grid.focus();
    await press('End');
    expect(await keyboardPlace()).toEqual({ number: count, inSight: true, ring: true, focused: true });
    expect(await nodesInGrid()).toBeLessThanOrEqual(mostNodes);
    await side().getByText(photosTexts.title('1,000', '1,000')).waitFor();
    await press('Home', 'PageDown');
    const paged = (await keyboardPlace())!;
    expect(paged).toMatchObject({ inSight: true, ring: true, focused: true });
    expect(paged.number).toBeGreaterThan(6);
    await press('PageUp');
    expect((await keyboardPlace())?.number).toBe(1);
    // The row of the keyboard stays while the wheel has scrolled it away: focus is not lost.
    await grid.hover();
    await page.mouse.wheel(0, 20_000);
    await page.waitForFunction(() => document.querySelector('.photo-grid-box')!.scrollTop > 15_000);
    expect(await keyboardPlace()).toMatchObject({ number: 1, inSight: false, focused: true });
    await press('ArrowRight');
    expect(await keyboardPlace()).toEqual({ number: 2, inSight: true, ring: true, focused: true });
  });

  test('chooses with Shift, Ctrl, Space and Escape as with the pointer', async () => {
    await press('Home', 'Shift+ArrowRight', 'Shift+ArrowRight');
    expect(await chosenNumbers()).toEqual([1, 2, 3]);
    await press('Shift+ArrowLeft');
    expect(await chosenNumbers()).toEqual([1, 2]);
    await press('Control+ArrowRight', 'Control+ArrowRight');
    expect(await chosenNumbers()).toEqual([1, 2]);
    expect((await keyboardPlace())?.number).toBe(4);
    await press('Space');
    expect(await chosenNumbers()).toEqual([1, 2, 4]);
    await press('Escape');
    expect(await chosenNumbers()).toEqual([4]);
    await cell(2).click();
    await cell(5).click({ modifiers: ['Shift'] });
    expect(await chosenNumbers()).toEqual([2, 3, 4, 5]);
    await cell(3).click({ modifiers: ['Control'] });
    expect(await chosenNumbers()).toEqual([2, 4, 5]);
    await side().getByText(photosTexts.together.title('3')).waitFor();
    await axeFindsNothing();
  });
});

describe('all thousand at once', () => {
  test('are told what they share, and nothing is written before Apply', async () => {
    const before = await journalEntries();
    await grid.focus();
    await press('Control+a');
    await side().getByText(photosTexts.together.title('1,000')).waitFor();
    await side().getByText(photosTexts.together.onSome('500', '1,000')).waitFor();
    await side().getByLabel(photosTexts.stage).selectOption({ label: photosTexts.stageChoices.cleaned });
    await side()
      .getByRole('button', { name: photosTexts.together.addNamed('shaft') })
      .click();
    expect(await journalEntries()).toBe(before);
    await side()
      .getByRole('button', { name: photosTexts.together.apply('1,000') })
      .click();
    await page.getByText(photosTexts.together.done('1,000')).waitFor();
    await button(new RegExp(`^${photosTexts.missing.part} 0$`)).waitFor();
    await button(new RegExp(`^${photosTexts.missing.stage} 0$`)).waitFor();
    await page.getByText(`Journal ${String(before + 1)}`, { exact: false }).waitFor();
  });

  test('those without a caption are chosen by their count', async () => {
    await button(new RegExp(`^${photosTexts.missing.caption} 666$`)).click();
    await side().getByText(photosTexts.together.title('666')).waitFor();
  });
});

describe('what was chosen for several and not applied', () => {
  const { together } = photosTexts;
  const waiting = (n: string) => side().getByRole('region', { name: together.waiting.title(n, false) });

  test('goes along with a photo more, and waits beside the panel when another is chosen', async () => {
    await cell(2).click();
    await cell(3).click({ modifiers: ['Shift'] });
    await side().getByLabel(photosTexts.stage).selectOption({ label: photosTexts.stageChoices.stripped });
    await cell(4).click({ modifiers: ['Control'] });
    await button(together.apply('3')).waitFor();
    await cell(6).click();
    await waiting('3')
      .getByText(together.waiting.what(photosTexts.stage, photosTexts.stageChoices.stripped))
      .waitFor();
    await axeFindsNothing();
    await cell(7).click({ modifiers: ['Control'] });
    await waiting('3').waitFor();
    expect(await button(together.apply('2')).isDisabled()).toBe(true);
    await waiting('3').getByRole('button', { name: together.waiting.chooseAgain }).click();
    expect(await chosenNumbers()).toEqual([2, 3, 4]);
    await button(together.apply('3')).waitFor();
  });

  test('is there again after a change of station, and is applied then', async () => {
    const before = await journalEntries();
    await page.getByRole('link', { name: new RegExp(`^${shellTexts.station.claim}`) }).click();
    await page.getByRole('heading', { level: 1, name: shellTexts.station.claim }).waitFor();
    await page.getByRole('link', { name: new RegExp(`^${shellTexts.station.photos}`) }).click();
    await button(together.apply('3')).waitFor();
    await cell(6).click();
    await waiting('3').getByRole('button', { name: together.waiting.apply }).click();
    await page.getByText(together.done('3')).waitFor();
    await waiting('3').waitFor({ state: 'detached' });
    await cell(4).getByText(photosTexts.stages.stripped).waitFor();
    await page.getByText(`Journal ${String(before + 1)}`, { exact: false }).waitFor();
  });
});

describe('one photo', () => {
  test('has its stage saved when the choice is settled, once, not at every step', async () => {
    await cell(1).click();
    const before = await journalEntries();
    const stage = side().getByLabel(photosTexts.stage);
    // As the arrow keys do in the list: three changes, and then it is left.
    await stage.evaluate((select: HTMLSelectElement) => {
      select.focus();
      const set = Object.getOwnPropertyDescriptor(HTMLSelectElement.prototype, 'value')!.set!;
      for (const value of ['as-received', 'stripped', 'sectioned']) {
        set.call(select, value);
        select.dispatchEvent(new Event('change', { bubbles: true }));
      }
      select.blur();
    });
    await cell(1).getByText(photosTexts.stages.sectioned).waitFor();
    await page.getByText(`Journal ${String(before + 1)}`, { exact: false }).waitFor();
  });
});

describe('the order', () => {
  test('is changed by dragging, with a line where the photos would come', async () => {
    const before = await journalEntries();
    expect(await namesOfFirst(5)).toEqual([1, 2, 3, 4, 5].map((n) => `IMG_000${String(n)}.jpg`));
    await cell(1).click();
    await cell(2).click({ modifiers: ['Control'] });
    const from = (await cell(2).boundingBox())!;
    const to = (await cell(4).boundingBox())!;
    await page.mouse.move(from.x + 80, from.y + 80);
    await page.mouse.down();
    await page.mouse.move(from.x + 120, from.y + 90);
    await page.mouse.move(to.x + to.width - 20, to.y + 80);
    // In the gap after photo 4. The line is drawn a little after the pointer has come there.
    await page.waitForFunction((edge) => {
      const line = document.querySelector('.photo-insertion')?.getBoundingClientRect();
      return line !== undefined && line.left >= edge && line.right <= edge + 12;
    }, to.x + to.width);
    await page.mouse.up();
    await cell(3).and(grid.locator('[aria-selected=true]')).waitFor();
    expect(await chosenNumbers()).toEqual([3, 4]);
    expect(await namesOfFirst(5)).toEqual([3, 4, 1, 2, 5].map((n) => `IMG_000${String(n)}.jpg`));
    await page.getByText(`Journal ${String(before + 1)}`, { exact: false }).waitFor();
  });

  test('is changed by Alt with the arrow keys, and said', async () => {
    await cell(3).click();
    await cell(4).click({ modifiers: ['Control'] });
    const before = await journalEntries();
    await press('Alt+ArrowLeft', 'Alt+ArrowLeft');
    await page.getByText(photosTexts.moved('2', false, '1', '1,000')).waitFor();
    // Written before the window goes: one line, or two where the keys came slowly.
    await page.waitForFunction(
      (known) => Number(/Journal (\d+)/.exec(document.body.innerText)?.[1]) > known,
      before,
    );
    await button(photosTexts.views.register).click();
    await page.getByRole('table').waitFor();
    await page.reload();
    await cell(1).waitFor();
    expect(await namesOfFirst(3)).toEqual([1, 2, 3].map((n) => `IMG_000${String(n)}.jpg`));
  });

  test('of time taken puts the first one taken first and says where those without a time are', async () => {
    await button(photosTexts.byTime.do).click();
    await page.getByText(`${photosTexts.byTime.done} ${photosTexts.byTime.timeless('100', false)}`).waitFor();
    await grid.focus();
    await press('Home');
    // Photo 1 was taken last, photo 1 000 has no time: 999 comes first, 1 000 last.
    expect(await namesOfFirst(2)).toEqual(['IMG_0999.jpg', 'IMG_0998.jpg']);
    await grid.focus();
    await press('End');
    await side().getByText('IMG_1000.jpg').waitFor();
  });
});

describe('the register', () => {
  test('keeps the line of what was taken out, and gives it back', async () => {
    const texts = photosTexts.takeOut;
    await grid.focus();
    await press('Home', 'Shift+ArrowRight', 'Delete');
    await page.getByRole('heading', { name: texts.title('2', false) }).waitFor();
    await page.getByText(texts.named('1', 'IMG_0999.jpg')).waitFor();
    await page.getByText(texts.named('2', 'IMG_0998.jpg')).waitFor();
    await page.getByText(texts.noMarks).waitFor();
    await axeFindsNothing();
    await button(texts.do).click();
    await page.getByText(texts.reasonMissing).waitFor();
    await page.getByLabel(texts.reason).fill('Two of another unit');
    await button(texts.do).click();
    await page.getByText(photosTexts.count('998', false)).waitFor();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await untilAt(page, grid);
    expect(await keyboardPlace()).toMatchObject({ number: 1, focused: true });

    await button(photosTexts.views.register).click();
    const table = page.getByRole('table', { name: photosTexts.register.caption });
    await table.waitFor();
    await page.getByText(photosTexts.register.order).waitFor();
    expect(await table.getAttribute('aria-rowcount')).toBe(String(count + 1));
    expect(await table.locator('tr').count()).toBeLessThan(80);
    await axeFindsNothing();
    const box = page.getByRole('region', { name: photosTexts.register.caption });
    await box.focus();
    await press('End');
    // The end of the box is found as lines are measured on the way.
    const lastOut = button(photosTexts.register.putBackNamed('IMG_0999.jpg'));
    await lastOut.waitFor();
    await lastOut.click();
    await page.getByText(photosTexts.count('999', false)).waitFor();
    await lastOut.waitFor({ state: 'detached' });
    await button(photosTexts.register.putBackNamed('IMG_0998.jpg')).waitFor();
    const hash = table.getByRole('button', { name: /^SHA-256 of IMG_0998\.jpg/ });
    await hash.click();
    expect(await hash.textContent()).toMatch(/^[0-9a-f]{64}$/);
    await button(photosTexts.views.grid).click();
    expect(await namesOfFirst(1)).toEqual(['IMG_0999.jpg']);
  });

  test('and the console had nothing to complain about', () => {
    expect(opened.complaints).toEqual([]);
  });
});
