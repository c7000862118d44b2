/** From a photo in the grid to a marked, classed finding in the report's table, with key presses alone. */
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { CaseId } from '#shared-types/ids.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

import { furnishCaseOfPhotos } from '../support/pictures/case-of-photos.ts';
import { openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;

beforeAll(async () => {
  let caseId: CaseId | null = null;
  house = await openProgramHouse(null, async (folder) => {
    caseId = await furnishCaseOfPhotos(folder, 6);
  });
  opened = await house.open({ route: `/case/${String(caseId)}/photos` });
  page = opened.page;
  await page.getByRole('option', { name: photosTexts.photo('6') }).waitFor();
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

type Stop = {
  readonly role: string;
  readonly name: string;
  /** A ring of its own (outline or shadow) that a person can see, inside the window. */
  readonly shown: boolean;
};

/** Where the keyboard is now; in a list that names its active entry, that entry. */
async function keyboardStop(): Promise<Stop> {
  await page.evaluate(() => new Promise(requestAnimationFrame));
  return page.evaluate(() => {
    const focused = document.activeElement;
    if (!(focused instanceof HTMLElement) || focused === document.body) {
      return { role: '', name: 'nowhere', shown: false };
    }
    const entry = document.getElementById(focused.getAttribute('aria-activedescendant') ?? '');
    const place = entry ?? focused;
    const { outlineStyle, outlineWidth, outlineColor, boxShadow } = getComputedStyle(place);
    const edge = place.getBoundingClientRect();
    const ring =
      outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1 && !/, 0\)$|transparent/.test(outlineColor);
    const inSight =
      edge.width > 0 &&
      edge.bottom > 0 &&
      edge.right > 0 &&
      edge.top < window.innerHeight &&
      edge.left < window.innerWidth;
    const name = place.getAttribute('aria-label') ?? place.textContent;
    return {
      role: focused.getAttribute('role') ?? focused.tagName.toLowerCase(),
      name: name.trim().slice(0, 80),
      shown: inSight && (ring || boxShadow !== 'none'),
    };
  });
}

const press = (...keys: string[]) =>
  keys.reduce((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve());

/** Goes on with one key until the stop is the one that is sought; every stop on the way has to be seen. */
async function walkTo(key: string, isThere: (stop: Stop) => boolean, most = 60): Promise<Stop> {
  const unseen: Stop[] = [];
  for (let step = 0; step < most; step += 1) {
    await page.keyboard.press(key);
    const stop = await keyboardStop();
    if (!stop.shown) unseen.push(stop);
    if (isThere(stop)) {
      expect(unseen).toEqual([]);
      return stop;
    }
  }
  throw new Error(`${key} never led there; it last stood at ${JSON.stringify(await keyboardStop())}`);
}

describe('with the keyboard alone', () => {
  test('a photo is chosen in the grid and opened at the marks', async () => {
    await walkTo('Tab', ({ role }) => role === 'listbox');
    await press('ArrowRight', 'ArrowRight');
    expect(await keyboardStop()).toMatchObject({ shown: true });
    await press('Enter');
    await page.getByRole('application').waitFor();
    // How large the photo is shown is said once its well has been measured.
    await page.locator('.marks-foot-percent').getByText(/\d/).first().waitFor();
    await page.getByText(marksTexts.pictureComing).waitFor({ state: 'detached' });
  });

  test('the tools are reached and seen, and a ring is drawn with arrow keys and Enter', async () => {
    await walkTo('Tab', ({ role }) => role === 'application');
    await press('r', 'Shift+ArrowDown', 'Enter');
    await press('Shift+ArrowRight', 'Shift+ArrowRight', 'Shift+ArrowRight', 'Enter');
    await page.getByRole('region', { name: marksTexts.giving.title('?', 'ring') }).waitFor();
    await page.waitForFunction(() => document.activeElement?.getAttribute('role') === 'combobox');
    expect(await keyboardStop()).toMatchObject({ role: 'combobox', shown: true });
  });

  test('it is given to a new finding at the part shown, and classed by a letter', async () => {
    await page.keyboard.type('scor');
    const offered = await walkTo('ArrowDown', ({ name }) => name.includes('scoring'));
    await press('Enter');
    await page.getByRole('group', { name: marksTexts.giving.class }).waitFor();
    expect(await keyboardStop()).toMatchObject({ shown: true });
    await press(findingsTexts.classKeys.primary.toLowerCase());
    await page.getByRole('button', { name: /^Mark P \d+\.1$/ }).waitFor();
    expect(offered.name).toContain('shaft');
    await walkTo('Tab', ({ role, name }) => role === 'button' && /^Mark P \d+\.1$/.test(name));
  });

  test('the finding is reached at its station, and its note written', async () => {
    await walkTo('Shift+Tab', ({ name }) => name.startsWith(shellTexts.station.findings));
    await press('Enter');
    await page.getByRole('heading', { level: 1, name: shellTexts.station.findings }).waitFor();
    await walkTo('Tab', ({ role }) => role === 'row' || role === 'tr');
    await walkTo('ArrowDown', ({ name }) => name.includes('scoring'));
    await press('Enter');
    await walkTo('Tab', ({ role }) => role === 'textarea', 90);
    await page.keyboard.type('all round, under the front journal');
    await press('Tab');
    // In a narrow window the table has no room for notes: it is in the row, out of sight.
    const written = page.locator('td', { hasText: 'all round, under the front journal' });
    await written.waitFor({ state: 'attached' });
  });

  test('and the console had nothing to complain about', () => {
    expect(opened.complaints).toEqual([]);
  });
});
