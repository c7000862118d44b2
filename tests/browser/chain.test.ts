/** The chain station: boxes brought in and added, linked by mouse and by keys, a loop refused, flags, undo, the SVG. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { FindingFields } from '#shared-types/finding.ts';
import type { CaseId, FindingId } from '#shared-types/ids.ts';
import { chainFigureTexts, chainFlagTexts, chainTexts } from '#shared-types/texts/chain.ts';

import { exampleFinding } from '../support/exchanges.ts';
import { testId } from '../support/open-test-library.ts';
import { startEngineHere } from '../support/world-engine.ts';
import { openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';
import { until, untilAt } from './until.ts';

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;
let caseId: CaseId;

const findings: readonly Partial<FindingFields>[] = [
  { class: 'primary' },
  { class: 'secondary', component: 'shaft', zone: null, kind: 'heat-tint' },
  { class: 'undecided', presence: 'looked-for-absent', component: 'shaft', zone: null, kind: 'crack' },
];

/** A case with a primary, a secondary and a finding that is not there. */
async function furnish(folder: string): Promise<void> {
  const engine = await startEngineHere(folder);
  await engine.ask('analysts.add', { name: 'M. Sundgren', qualification: '' });
  const opening = await engine.ask('cases.open', {
    number: '26-0147',
    unit: { maker: 'Halvard', model: 'R45', serial: '30771', partNumber: '' },
    customer: 'Skerry Line',
    claim: 'The nut came loose.',
    machineKind: 'turbocharger',
  });
  caseId = opening.caseId;
  await engine.ask('bench.commit', {
    caseId,
    changes: findings.map((fields, index) => ({
      change: 'put-finding' as const,
      findingId: testId<FindingId>(700 + index),
      fields: { ...exampleFinding, bend: null, extent: null, ...fields },
      revision: null,
    })),
  });
  await engine.close();
}

beforeAll(async () => {
  house = await openProgramHouse(null, furnish);
  opened = await house.open({ route: `/case/${caseId}/chain` });
  page = opened.page;
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

const sheet = () => page.locator('.chain-sheet');
const box = (start: string) => sheet().getByRole('button', { name: new RegExp(`^${start}`) });
const root = () => box('Root cause: Grit in the oil');
const primary = () => box('Finding 1, primary');
const secondary = () => box('Finding 2, secondary');
const button = (name: string) => page.getByRole('button', { name, exact: true });
const figure = (boxes: number, links: number) =>
  page.getByRole('group', { name: chainTexts.figure(boxes, links), exact: true });
const linkButton = (cause: string, effect: string, certainty: string) =>
  page.getByRole('complementary').getByRole('button', {
    name: chainTexts.linkName(cause, effect, certainty),
    exact: true,
  });

async function middleOf(place: Locator) {
  const at = await place.boundingBox();
  if (at === null) throw new Error('it is not in sight');
  return { x: at.x + at.width / 2, y: at.y + at.height / 2 };
}

async function drag(from: Locator, to: Locator): Promise<void> {
  const start = await middleOf(from);
  const end = await middleOf(to);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2);
  await page.mouse.move(end.x, end.y);
  await page.mouse.up();
}

describe('the chain', () => {
  test('is empty at first; one press brings the primary and secondary findings in', async () => {
    await page.getByRole('heading', { name: chainTexts.emptyTitle }).waitFor();
    await page
      .getByRole('main')
      .getByRole('button', { name: chainTexts.bringIn(2) })
      .last()
      .click();
    await figure(2, 0).waitFor();
    await primary().waitFor();
    await secondary().waitFor();
  });

  test('a root cause is added and linked by keys alone', async () => {
    await page.keyboard.press('n');
    await page.getByLabel(chainTexts.nodeForm.kind).selectOption('root-cause');
    await page.getByLabel(chainTexts.nodeForm.words).fill('Grit in the oil');
    await page.keyboard.press('Enter');
    await figure(3, 0).waitFor();
    await untilAt(page, root());
    await page.keyboard.press('l');
    await page.getByRole('status').getByText(chainTexts.linking.begun('“Grit in the oil”')).waitFor();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('status').getByText(chainTexts.linking.over('finding 1')).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog', { name: chainTexts.linkForm.title }).waitFor();
    await page.keyboard.type('embedded particles in all pads');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await figure(3, 1).waitFor();
    await linkButton('“Grit in the oil”', 'finding 1', 'established').waitFor();
    expect(await sheet().getByText('embedded').count()).toBe(1);
  });

  test('Escape leaves a link that was begun, without a trace', async () => {
    await primary().focus();
    await page.keyboard.press('l');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Escape');
    await page.getByRole('status').getByText(chainTexts.linking.left).waitFor();
    expect(await page.getByRole('dialog').count()).toBe(0);
    await page.keyboard.press('l');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Escape');
    await figure(3, 1).waitFor();
    const [start, end] = [await middleOf(primary()), await middleOf(secondary())];
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await page.mouse.move(end.x, end.y);
    await page.locator('.chain-drag').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.chain-drag').waitFor({ state: 'detached' });
    await page.mouse.up();
    expect(await page.getByRole('dialog').count()).toBe(0);
  });

  test('the wheel and the keys make it larger and smaller, 0 fits it again', async () => {
    const wide = async () => (await primary().boundingBox())?.width ?? 0;
    await page.keyboard.press('0');
    const fitted = await wide();
    await page.keyboard.press('+');
    await until(async () => (await wide()) > fitted);
    const larger = await wide();
    const { x, y } = await middleOf(primary());
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, 400);
    await until(async () => (await wide()) < larger);
    await page.keyboard.press('0');
    await until(async () => (await wide()) === fitted);
  });

  test('a link that is let go as soon as it arrives is a link too', async () => {
    await button(chainTexts.fit).click();
    const [start, end] = [await middleOf(primary()), await middleOf(secondary())];
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    // By a quick hand: the page has no time to draw the last move. The mouse is the browser's pointer 1.
    await page.locator('.chain-well').evaluate((well, { x, y }) => {
      for (const type of ['pointermove', 'pointerup']) {
        well.dispatchEvent(new PointerEvent(type, { pointerId: 1, clientX: x, clientY: y, bubbles: true }));
      }
    }, end);
    const dialog = page.getByRole('dialog', { name: chainTexts.linkForm.title });
    await dialog.getByText('Finding 2, secondary').waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await page.mouse.up();
    await figure(3, 1).waitFor();
  });

  test('dragging from a cause to its effect links them', async () => {
    await button(chainTexts.fit).click();
    await drag(primary(), secondary());
    const dialog = page.getByRole('dialog', { name: chainTexts.linkForm.title });
    await dialog.getByText('Finding 2, secondary').waitFor();
    await button(chainTexts.linkForm.make).click();
    await figure(3, 2).waitFor();
    await linkButton('finding 1', 'finding 2', 'likely').waitFor();
  });

  test('a loop is refused, and its way is named', async () => {
    await button(chainTexts.fit).click();
    await drag(secondary(), root());
    const path = 'finding 2 → “Grit in the oil” → finding 1 → finding 2';
    await page.getByRole('alert').getByText(path).waitFor();
    expect(await page.getByRole('dialog').count()).toBe(0);
    await figure(3, 2).waitFor();
    await page.getByRole('alert').getByRole('button').click();
  });

  test('what is to be settled is listed and leads to its place', async () => {
    const missing = page.getByRole('button', { name: chainFlagTexts.noReason('finding 1', 'finding 2') });
    await missing.click();
    await page.getByRole('heading', { name: chainTexts.panel.chosenLink }).waitFor();
    await button(chainTexts.panel.change).click();
    await page.getByLabel(chainTexts.linkForm.reason).fill('smeared while it ran dry');
    await button(chainTexts.linkForm.change).click();
    await missing.waitFor({ state: 'detached' });
    await page.getByText(chainTexts.panel.noFlags).waitFor();
  });

  test('undo takes back, redo does again, and all of it is there after a reload', async () => {
    await page.keyboard.press('Control+z');
    await page.getByText(chainFlagTexts.noReason('finding 1', 'finding 2')).waitFor();
    await page.keyboard.press('Control+z');
    await figure(3, 1).waitFor();
    await page.keyboard.press('Control+Shift+z');
    await page.keyboard.press('Control+Shift+z');
    await page.getByText(chainTexts.panel.noFlags).waitFor();
    await primary().focus();
    await page.keyboard.press('Delete');
    await figure(2, 0).waitFor();
    await page.keyboard.press('Control+z');
    await figure(3, 2).waitFor();
    await page.getByText(chainTexts.saving).waitFor({ state: 'detached' });
    await page.reload();
    await figure(3, 2).waitFor();
    await linkButton('“Grit in the oil”', 'finding 1', 'established').waitFor();
    await page.getByText(chainTexts.panel.noFlags).waitFor();
  });

  test('the figure is saved as SVG, with the boxes of the screen', async () => {
    const download = page.waitForEvent('download');
    await button(chainTexts.save).click();
    const taken = await download;
    expect(taken.suggestedFilename()).toBe('chain-26-0147.svg');
    const file = join(house.folder, 'chain.svg');
    await taken.saveAs(file);
    const svg = readFileSync(file, 'utf8');
    expect(svg.match(/>(Root cause|Finding \d, \w+)</g)?.sort()).toEqual([
      '>Finding 1, primary<',
      '>Finding 2, secondary<',
      '>Root cause<',
    ]);
    for (const certainty of ['established', 'likely'] as const) {
      expect(svg).toContain(`>${chainFigureTexts.certainties[certainty]}<`);
    }
  });

  test('has no fault that axe finds, and the console stays empty', async () => {
    await page.keyboard.press('n');
    const inForm = await new AxeBuilder({ page }).include('dialog').analyze();
    await page.keyboard.press('Escape');
    const { violations } = await new AxeBuilder({ page }).analyze();
    const found = [...inForm.violations, ...violations];
    expect(found.map(({ id, nodes }) => [id, nodes.map((node) => node.html)])).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });
});
