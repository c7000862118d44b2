/** Finding cases again in a real browser: words, filters, a slip in a serial number, a damage in one gesture, paging. */
import { mkdirSync } from 'node:fs';

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { hitsAPage } from '#shared-types/search.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

import { openLibrary } from '../../electron/database/open-library.ts';
import { shippedPath } from '../../electron/processes/entry-table.ts';
import { pourWorld } from '../support/world-through-repositories.ts';
import { makeWorld, turbochargerPack, type WorldCase } from '../support/world.ts';
import { openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';

const world = makeWorld(5, { cases: 90, findings: [2, 8], photos: [0, 0], marks: [0, 0] });

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;

beforeAll(async () => {
  house = await openProgramHouse(null, (folder) => {
    mkdirSync(folder, { recursive: true });
    const { db } = openLibrary({
      folder,
      migrationsFolder: shippedPath('migrations'),
      now: () => '2026-03-04T09:15:00.000Z',
    });
    pourWorld(db, world);
    db.close();
    return Promise.resolve();
  });
  opened = await house.open({ route: '/search' });
  page = opened.page;
});
afterAll(async () => {
  await opened.close();
  await house.close();
});

const box = () => page.getByRole('combobox', { name: shellTexts.findLabel });
const hits = () => page.getByRole('list', { name: searchTexts.hits }).getByRole('listitem');
const links = () => page.locator('.hit-link');
const value = (label: string) => page.getByRole('checkbox', { name: new RegExp(`^${label}, \\d`) });
const told = (total: number) =>
  page.getByText(searchTexts.resultCount(String(Math.min(total, hitsAPage)), String(total)), { exact: true });

async function lookFor(text: string): Promise<void> {
  await page.keyboard.press('Escape');
  await box().fill(text);
}
async function lookForNothing(): Promise<void> {
  await page.getByRole('button', { name: searchTexts.clear, exact: true }).click();
  await page.getByRole('heading', { name: searchTexts.begin.title }).waitFor();
}

const having = (fits: (one: WorldCase) => boolean) => world.cases.filter(fits);
const wrote = (one: WorldCase, word: string) =>
  [one.draft.claim, one.conclusion, ...one.findings.map(({ fields }) => fields.note)].some((text) =>
    new RegExp(`\\b${word}`, 'i').test(text),
  );

describe('on the search screen', () => {
  test('a word finds cases, and the filters count what it leaves and narrow it', async () => {
    await page.keyboard.press('/');
    await page.keyboard.type('circumference');
    const fitting = having((one) => wrote(one, 'circumference'));
    await told(fitting.length).waitFor();
    await hits().first().locator('mark').getByText('circumference', { exact: true }).first().waitFor();
    const [outcome, label] = ['undetermined', commonTexts.outcomes.undetermined];
    const left = fitting.filter((one) => one.outcome === outcome);
    expect(left.length).toBeGreaterThan(0);
    await page.getByRole('checkbox', { name: `${label}, ${left.length} ` }).check();
    await told(left.length).waitFor();
    // The other values of this filter still say what they would leave.
    const other = fitting.filter((one) => one.outcome === 'no-fault-found');
    await page
      .getByRole('checkbox', { name: `${commonTexts.outcomes['no-fault-found']}, ${other.length} ` })
      .waitFor();
    await value(label).uncheck();
    await told(fitting.length).waitFor();
  });

  test('more cases are listed on demand, and walked by the arrow keys', async () => {
    const total = having((one) => wrote(one, 'circumference')).length;
    expect(total).toBeGreaterThan(hitsAPage + 1);
    expect(await hits().count()).toBe(hitsAPage);
    await box().press('ArrowDown');
    const first = await links().first().textContent();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(first);
    await page.keyboard.press('ArrowDown');
    const second = await links().nth(1).textContent();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(second);
    const more = Math.min(hitsAPage, total - hitsAPage);
    await page.getByRole('button', { name: searchTexts.more(String(more)) }).click();
    await hits()
      .nth(hitsAPage + more - 1)
      .waitFor();
    expect(await hits().count()).toBe(hitsAPage + more);
    const numbers = await links().allTextContents();
    expect(new Set(numbers).size).toBe(hitsAPage + more);

    // Of a long list only what is in sight, and some about it, is in the page.
    const rest = total - 2 * hitsAPage;
    expect(rest).toBeGreaterThan(0);
    await page.getByRole('button', { name: searchTexts.more(String(rest)) }).click();
    await page.getByText(searchTexts.resultCount(String(total), String(total)), { exact: true }).waitFor();
    expect(await hits().count()).toBeLessThan(total);
    await links().first().press('End');
    await page.locator(`li[aria-posinset="${total}"] .hit-link:focus`).waitFor();
  });

  test('a serial number with two characters swapped is found, and says which it is near', async () => {
    const { serial } = world.cases[7]!.draft.unit;
    const [, digits] = serial.split('-') as [string, string];
    const typed = `sn${digits.slice(1, 2)}${digits.slice(0, 1)}${digits.slice(2)}`;
    expect(typed.slice(2)).not.toBe(digits);
    await lookFor(typed);
    await page.getByText(searchTexts.near(serial)).waitFor();
    expect(await links().allTextContents()).toContain(world.cases[7]!.draft.number);
  });

  test('words of a damage and its class, and Enter, find what the damage offered would find', async () => {
    const known = world.cases
      .flatMap(({ findings }) => findings.map(({ fields }) => fields))
      .find((fields) => fields.component === 'shaft-nut' && fields.presence === 'present')!;
    const { kind, class: damageClass } = known;
    const fitting = having((one) =>
      one.findings.some(
        ({ fields }) =>
          fields.component === 'shaft-nut' &&
          fields.kind === kind &&
          fields.class === damageClass &&
          fields.presence === 'present',
      ),
    );
    const label = turbochargerPack().kinds.find(({ id }) => id === kind)!.label;
    await lookFor(`shaft nut ${label} ${damageClass}`);
    await box().press('Enter');
    await page
      .getByRole('list', { name: searchTexts.chosenTags })
      .getByText(`shaft nut: ${label}`, { exact: true })
      .waitFor();
    await page
      .getByRole('list', { name: searchTexts.matchedFindings })
      .nth(fitting.length - 1)
      .waitFor();
    await told(fitting.length).waitFor();
    expect(new Set(await links().allTextContents())).toEqual(
      new Set(fitting.map(({ draft }) => draft.number)),
    );
    expect(await box().inputValue()).toBe('');

    // It can be taken back: the words are looked for instead.
    await page.getByRole('button', { name: /^as words: / }).click();
    expect(await box().inputValue()).toContain('"shaft nut"');
    await lookForNothing();
  });

  test('from a finding that was found, other cases with its damage in one gesture', async () => {
    await lookFor('circumference');
    const gesture = page.getByRole('button', { name: /^other cases with this damage: / }).first();
    await gesture.waitFor();
    const damage = (await gesture.getAttribute('aria-label'))!.replace(/^other cases with this damage: /, '');
    await gesture.click();
    const part = damage.split(', ')[0]!;
    await page.getByRole('list', { name: searchTexts.chosenTags }).getByText(part, { exact: true }).waitFor();
    expect(await box().inputValue()).toBe('');
    await page.getByRole('list', { name: searchTexts.matchedFindings }).first().waitFor();
    const findings = await page
      .getByRole('list', { name: searchTexts.matchedFindings })
      .first()
      .getByRole('link')
      .allTextContents();
    for (const finding of findings) expect(finding).toContain(part.split(': ')[1]!);
    await lookForNothing();
  });

  test('where nothing fits it says what was understood, and each part can be left out', async () => {
    await lookFor('circumference zirconium');
    await page.getByRole('heading', { name: searchTexts.nothing.title }).waitFor();
    const total = having((one) => wrote(one, 'circumference')).length;
    await page
      .getByRole('listitem')
      .filter({ hasText: '“circumference”' })
      .getByText(`${total} cases`)
      .waitFor();
    await page
      .getByRole('button', {
        name: searchTexts.nothing.leaveOutLabel(searchTexts.nothing.word('zirconium')),
      })
      .click();
    await page.getByText(new RegExp(`^${total} found`)).waitFor();
  });

  test('holds to the rules of axe-core (WCAG 2.2 A and AA) with cases found and filters chosen', async () => {
    const fitting = having((one) => wrote(one, 'circumference'));
    const { maker } = fitting[0]!.draft.unit;
    await lookFor(`circumference ${maker}`);
    await told(fitting.filter((one) => one.draft.unit.maker === maker).length).waitFor();
    await value('primary').check();
    // An answer to an earlier question is greyed until the one to the last is there.
    await page
      .getByRole('region', { name: searchTexts.hits })
      .and(page.locator('[aria-busy=false]'))
      .waitFor();
    await page.getByRole('list', { name: searchTexts.matchedFindings }).first().waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))])).toEqual([]);
  });

  test('and the console had nothing to complain about', () => {
    expect(opened.complaints).toEqual([]);
  });
});
