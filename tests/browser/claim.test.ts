/** The claim station as an analyst fills it: by the keys, with what has to be asked, and all of it there afterwards. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { claimTexts } from '#shared-types/texts/claim.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { custodyTexts } from '#shared-types/texts/custody.ts';
import { partiesTexts } from '#shared-types/texts/parties.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { typedTexts } from '#shared-types/texts/typed.ts';

import { enterFirstAnalyst, openFirstCase, station } from './first-case.ts';
import { dropFiles, openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';
import { untilAt } from './until.ts';

const claim = 'The shaft nut was never tightened and came off.';
const { seen, service, interest, typed, saving } = claimTexts;

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;

beforeAll(async () => {
  house = await openProgramHouse();
  opened = await house.open();
  page = opened.page;
  await enterFirstAnalyst(page);
  await openFirstCase(page, claim);
  const file = join(house.folder, 'compressor-housing.jpg');
  const grey = { width: 320, height: 240, channels: 3, background: '#808080' } as const;
  await writeFile(file, await sharp({ create: grey }).jpeg().toBuffer());
  await station(page, 'photos').click();
  await page.getByRole('heading', { level: 1, name: shellTexts.station.photos }).waitFor();
  await dropFiles(page, [file]);
  await station(page, 'claim').click();
  await field(seen.rotationPhoto).locator('option').nth(1).waitFor({ state: 'attached' });
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

const field = (label: string, within: Page | Locator = page) => within.getByLabel(label, { exact: true });
const button = (name: string, within: Page | Locator = page) =>
  within.getByRole('button', { name, exact: true });
const parties = () => page.getByRole('region', { name: partiesTexts.head });
const custody = () => page.getByRole('region', { name: custodyTexts.head });
const saved = () => page.getByRole('status').getByText(saving.saved).waitFor();

/** Goes on with Tab, or back, until it is there: what cannot be reached so fails. */
async function tabTo(target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await target.waitFor();
  for (let stops = 0; stops < 120; stops += 1) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press(key);
  }
  throw new Error(`not reached by Tab: ${String(target)}`);
}

async function typeInto(target: Locator, text: string): Promise<void> {
  await tabTo(target);
  await page.keyboard.type(text);
}

/**
 * By the first letter alone, as often as it takes: two letters are one word to the browser only as long as the second
 * comes within a second of the first.
 */
async function choose(list: Locator, words: string): Promise<void> {
  await tabTo(list);
  const chosen = () => list.evaluate((one: HTMLSelectElement) => one.selectedOptions[0]?.textContent ?? '');
  for (let presses = 0; presses < 5; presses += 1) {
    await page.keyboard.press(words.slice(0, 1));
    if ((await chosen()).startsWith(words)) return;
  }
  throw new Error(`not chosen: ${words}`);
}

async function pressOn(target: Locator, key = 'Enter'): Promise<void> {
  await tabTo(target);
  await page.keyboard.press(key);
}

async function breaches(): Promise<unknown[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))]);
}

/** What every control of the case's own fields shows. */
const shown = () =>
  page
    .locator('.claim-columns')
    .locator('input, select, textarea')
    .evaluateAll((controls) =>
      controls.map((one) => [
        (one as HTMLInputElement).labels?.[0]?.textContent,
        one instanceof HTMLSelectElement
          ? one.selectedOptions[0]?.textContent
          : (one as HTMLInputElement).value,
      ]),
    );

describe('the parties', () => {
  test('who claims, instructs and pays is missed until somebody is entered', async () => {
    await parties().getByText(partiesTexts.nobody).nth(2).waitFor();
    expect(await parties().getByText(partiesTexts.nobody).count()).toBe(3);
    await pressOn(button(partiesTexts.add));
    await page.keyboard.press('Enter');
    await page.getByText(partiesTexts.nameMissing).waitFor();
    await page.keyboard.type('Skerry Line');
    for (const role of ['claims', 'pays', 'operates'] as const) {
      await pressOn(parties().getByRole('checkbox', { name: partiesTexts.roles[role] }), 'Space');
    }
    await typeInto(field(partiesTexts.details), 'Their reference 771');
    await page.getByRole('status').getByText(saving['form-open']).waitFor();
    await pressOn(button(partiesTexts.save));
    await parties().getByText('claims, pays, operates it').waitFor();
    expect(await parties().getByText(partiesTexts.nobody).count()).toBe(1);
    await untilAt(page, button(partiesTexts.add));
  });

  test('one is changed and removed, and put back', async () => {
    await pressOn(button(partiesTexts.editOf('Skerry Line')));
    await pressOn(parties().getByRole('checkbox', { name: partiesTexts.roles.instructs }), 'Space');
    await pressOn(button(partiesTexts.save));
    await parties().getByText('claims, instructs, pays, operates it').waitFor();
    expect(await parties().getByText(partiesTexts.nobody).count()).toBe(0);
    await untilAt(page, button(partiesTexts.editOf('Skerry Line')));
    await pressOn(button(partiesTexts.removeOf('Skerry Line')));
    await parties().getByText(partiesTexts.nobodyAtAll).waitFor();
    await untilAt(page, button(partiesTexts.add));
    await button(partiesTexts.putBack).click();
    await parties().getByText('claims, instructs, pays, operates it').waitFor();
  });
});

describe('what was seen and told', () => {
  test('rotation and thread begin as not observed, and a photo waits for what it shows', async () => {
    expect(await field(seen.rotation).inputValue()).toBe('');
    expect(await field(seen.thread).inputValue()).toBe('');
    expect(await field(seen.rotationPhoto).isDisabled()).toBe(true);
    expect(await field(seen.threadPhoto).isDisabled()).toBe(true);
    await page.getByText(interest.notStated).waitFor();
  });

  test('the state received is written', async () => {
    await typeInto(field(claimTexts.stateReceived), 'Crate dry, oil inlet plugged, turbine side open.');
    await saved();
  });

  test('a case without its number says so and not that it is saving', async () => {
    const number = field(`${claimTexts.number} ${commonTexts.required}`);
    await number.fill('');
    await page.getByText(claimTexts.numberMissing).waitFor();
    await page.getByRole('status').getByText(saving.unfinished).waitFor();
    await number.fill('26-0147');
    await saved();
  });

  test('each is entered by the keys, and one does not fill in the other', async () => {
    await choose(field(seen.rotation), 'anticlock');
    await choose(field(seen.rotationPhoto), 'Photo');
    await saved();
    expect(await field(seen.thread).inputValue()).toBe('');
    await choose(field(seen.thread), 'left');
    await typeInto(field(service.fittedOn), '11/2025');
    await page.getByText(typed.understood('November 2025')).waitFor();
  });

  test('a day that can be two days is asked about, and Tab goes to the answer', async () => {
    await typeInto(field(service.failedOn), '3/4/2026');
    const question = page.getByRole('group', { name: typed.question });
    await question.waitFor();
    await page.getByRole('status').getByText(saving.unfinished).waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('March 4, 2026');
    await page.keyboard.press('Enter');
    await page.getByText(typed.understood('March 4, 2026')).waitFor();
    expect(await question.count()).toBe(0);
    await page.getByText(service.between('94 to 123 days, about 3.1 to 4.0 months')).waitFor();
  });

  test('a time in service that the dates do not allow is said to be so', async () => {
    await typeInto(field(service.timeInService), '1 year');
    await page.getByText(service.contradicts).waitFor();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('3,5 months');
    await page.getByText(typed.understood('3.5 months')).waitFor();
    expect(await page.getByText(service.contradicts).count()).toBe(0);
  });

  test('0,35 is understood, 1,234 is asked about, 12 h is refused once it is left', async () => {
    const hours = field(service.runningHours);
    await typeInto(hours, '0,35');
    await page.getByText(typed.understood(service.hours('0.35'))).waitFor();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('12 h');
    expect(await page.getByText(typedTexts.number.unitNotHere('h')).count()).toBe(0);
    await page.keyboard.press('Tab');
    await page.getByText(typedTexts.number.unitNotHere('h')).waitFor();
    await page.getByRole('status').getByText(saving.unfinished).waitFor();
    expect(await hours.getAttribute('aria-invalid')).toBe('true');
    await hours.fill('1,234');
    const question = page.getByRole('group', { name: typed.question });
    expect(await question.getByRole('button').allTextContents()).toEqual([
      service.hours('1.234'),
      service.hours('1234'),
    ]);
    await pressOn(button(service.hours('1234')));
    await saved();
    expect(await hours.inputValue()).toBe('1234');
  });

  test('an interest that is declared asks for its words, and the warning goes with them', async () => {
    await choose(field(interest.standing), interest.standings.declared);
    await page.getByText(interest.wordsMissing).waitFor();
    await typeInto(field(interest.words), 'This shop rebuilt the unit in 2024.');
    await saved();
    expect(await page.locator('.claim-warning').count()).toBe(0);
  });
});

describe('the custody', () => {
  async function enter(event: string, at: string, from: string, to: string | null): Promise<void> {
    const form = page.getByRole('form', { name: custodyTexts.formHead });
    const required = (label: string) => field(`${label} ${commonTexts.required}`, form);
    await choose(required(custodyTexts.event), event);
    await typeInto(required(custodyTexts.at), at);
    await typeInto(required(to === null ? custodyTexts.fromDeed : custodyTexts.fromHandover), from);
    if (to !== null) await typeInto(required(custodyTexts.to), to);
    await page.keyboard.press('Enter');
  }
  const rows = () => custody().getByRole('table').getByRole('row');

  test('an entry says what it lacks', async () => {
    await pressOn(button(custodyTexts.add));
    await page.keyboard.press('Enter');
    for (const words of ['itemMissing', 'eventMissing', 'atMissing', 'fromMissing', 'toMissing'] as const) {
      await custody().getByText(custodyTexts[words]).waitFor();
    }
  });

  test('entries stand in the order of their times, and a gap is said above them', async () => {
    await page.keyboard.type('Unit in its crate');
    await enter('released', '8.3.2026', 'C. Lund', 'Skerry Line');
    await custody().getByText('released: from C. Lund to Skerry Line').waitFor();
    await enter('received', '4 March 2026 14:30', 'the carrier', 'M. Sundgren');
    await custody().getByText('received: from the carrier to M. Sundgren').waitFor();
    await enter('opened', '5 March 2026', 'M. Sundgren', null);
    await custody().getByText('opened by M. Sundgren').waitFor();
    expect(await rows().locator('td:first-child').allTextContents()).toEqual([
      'March 4, 2026, 14:30',
      'March 5, 2026',
      'March 8, 2026',
    ]);
    const gap = custodyTexts.gaps.otherHands(
      '“Unit in its crate”',
      'M. Sundgren',
      'March 4, 2026, 14:30',
      'C. Lund',
      'March 8, 2026',
    );
    await custody().getByText(gap).waitFor();
  });

  test('a wrong one is struck with its reason, stays to be read, and its gap goes', async () => {
    await tabTo(button(custodyTexts.strikeOf('Unit in its crate', 'March 8, 2026')), 'Shift+Tab');
    await page.keyboard.press('Enter');
    await field(`${custodyTexts.strikeReason} ${commonTexts.required}`).waitFor();
    await page.keyboard.press('Enter');
    await page.getByText(custodyTexts.strikeReasonMissing).waitFor();
    // All forms are open now, and one field asks.
    await button(partiesTexts.add).click();
    await field(`${custodyTexts.at} ${commonTexts.required}`).fill('3/4/2026');
    expect(await breaches()).toEqual([]);
    await button(commonTexts.cancel, parties()).click();
    await field(`${custodyTexts.strikeReason} ${commonTexts.required}`).focus();
    await page.keyboard.type('Handed over by M. Sundgren');
    await page.keyboard.press('Enter');
    const struck = rows().filter({ hasText: 'Handed over by M. Sundgren' });
    await struck.waitFor();
    expect(await struck.locator('s').allTextContents()).toContain('released: from C. Lund to Skerry Line');
    expect(await struck.getByRole('button').count()).toBe(0);
    expect(await custody().locator('.claim-warning').count()).toBe(0);
    expect(await rows().count()).toBe(4);
  });
});

test('all of it is there after a reload', async () => {
  await button(commonTexts.close, custody()).click();
  const before = await shown();
  await page.reload();
  await page.getByText('claims, instructs, pays, operates it').waitFor();
  await custody().getByRole('table').waitFor();
  await field(seen.rotationPhoto).locator('option').nth(1).waitFor({ state: 'attached' });
  expect(await shown()).toEqual(before);
  const values = Object.fromEntries(before) as Record<string, string>;
  expect(values).toMatchObject({
    [claimTexts.claim]: claim,
    [seen.rotation]: 'anticlockwise, seen from the air inlet, along the axis',
    [seen.rotationPhoto]: 'Photo 1',
    [seen.thread]: seen.hands.left,
    [seen.threadPhoto]: seen.photoEmpty,
    [service.fittedOn]: '2025-11',
    [service.failedOn]: '2026-03-04',
    [service.timeInService]: '3.5 months',
    [service.runningHours]: '1234',
    [interest.standing]: interest.standings.declared,
  });
});

test('what was typed and not understood is still there after a look at another station', async () => {
  const hours = field(service.runningHours);
  await hours.fill('1,234');
  await station(page, 'findings').click();
  await page.getByRole('heading', { level: 1, name: shellTexts.station.findings }).waitFor();
  await station(page, 'claim').click();
  await page.getByRole('group', { name: typed.question }).waitFor();
  expect(await hours.inputValue()).toBe('1,234');
  await button(service.hours('1234')).click();
  await saved();
});

test('what two windows wrote is asked about where it is seen, however far the page is scrolled', async () => {
  const other = await house.open({ route: new URL(page.url()).hash.slice(1) });
  const call = '**/cases.change';
  const held = Promise.withResolvers<void>();
  const begun = Promise.withResolvers<void>();
  await page.route(call, async (route) => {
    begun.resolve();
    await held.promise;
    await route.continue();
  });
  await field(claimTexts.conclusion).fill('mine');
  await begun.promise;
  await other.page.getByLabel(claimTexts.conclusion, { exact: true }).fill('theirs');
  await other.page.getByRole('status').getByText(saving.saved).waitFor();
  await custody().scrollIntoViewIfNeeded();
  held.resolve();
  const choice = button(claimTexts.conflict.keepMine);
  await choice.waitFor();
  const box = await choice.boundingBox();
  expect(box?.y).toBeGreaterThanOrEqual(0);
  expect((box?.y ?? 720) + (box?.height ?? 0)).toBeLessThanOrEqual(720);
  await choice.click();
  await saved();
  await page.unroute(call);
  await other.page.getByText('mine', { exact: true }).waitFor();
  expect(other.complaints).toEqual([]);
  await other.close();
});

test('a withdrawn case shows everything and lets nothing be changed', async () => {
  const before = await shown();
  await button(claimTexts.withdraw.open).click();
  await page.getByRole('dialog').getByRole('textbox').fill('opened twice');
  await button(claimTexts.withdraw.do).click();
  await page.getByText(claimTexts.closed(commonTexts.statuses.withdrawn)).waitFor();
  expect(await shown()).toEqual(before);
  await parties().getByText('claims, instructs, pays, operates it').waitFor();
  await custody().getByText('opened by M. Sundgren').waitFor();
  const columns = page.locator('.claim-columns');
  expect(await columns.getByRole('button').count()).toBe(0);
  const changeable = columns.locator('input:not([readonly]), textarea:not([readonly]), select:enabled');
  expect(await changeable.count()).toBe(0);
  expect(await breaches()).toEqual([]);
});

test('and the console had nothing to complain about', () => {
  expect(opened.complaints).toEqual([]);
});
