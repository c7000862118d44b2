/** The bench: every kind of mark drawn, given, chosen, moved, hidden, taken back; and a case of a thousand photos. */
import { mkdir } from 'node:fs/promises';

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { BenchChange, BenchCommit } from '#shared-types/bench-change.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { MarkKind } from '#shared-types/mark.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

import { openLibrary } from '../../electron/database/open-library.ts';
import { migrationsFolder, testInstant } from '../support/open-test-library.ts';
import { pourWorld } from '../support/world-through-repositories.ts';
import { makeWorld, type World, type WorldCase } from '../support/world.ts';
import {
  dropFiles,
  openProgramHouse,
  smallWindow,
  type ProgramHouse,
  type ProgramWindow,
} from './program-house.ts';
import { untilAt } from './until.ts';

const { giving, chosen, said, tools } = marksTexts;

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;
let small: WorldCase;
let large: WorldCase;
/** What the page asked the library to change, as it went over the wire. */
const commits: BenchChange[][] = [];

/** One case to draw in, its photos showing a thrust bearing and a turbine wheel; one with a thousand photos and three hundred marks. */
function twoCases(): World {
  const here = makeWorld(4, { cases: 1, findings: [0, 0], photos: [2, 2], marks: [0, 0] });
  const full = makeWorld(5, { cases: 1, findings: [3, 3], photos: [1_000, 1_000], marks: [300, 300] });
  const [one] = here.cases;
  const [other] = full.cases;
  if (one === undefined || other === undefined) throw new Error('each world has a case');
  const parts = ['thrust-bearing', 'turbine-wheel'].map((component) => ({ component, position: null }));
  small = {
    ...one,
    photos: one.photos.map((photo, at) => ({
      ...photo,
      pictureSeed: photo.pictureSeed + 100_000,
      width: 1600,
      height: 1200,
      fields: { ...photo.fields, parts: parts.slice(at, at + 1) },
    })),
  };
  const [first] = other.photos;
  large = {
    ...other,
    draft: { ...other.draft, number: '27-1000' },
    marks: other.marks.map((mark) => ({ ...mark, photoId: first?.id ?? mark.photoId })),
  };
  return { ...here, cases: [small, large] };
}

beforeAll(async () => {
  const world = twoCases();
  house = await openProgramHouse(null, async (folder) => {
    await mkdir(folder, { recursive: true });
    const { db } = openLibrary({ folder, migrationsFolder, now: () => testInstant });
    pourWorld(db, world);
    db.close();
  });
  // A page without pictures, until they are seen to.
  opened = await house.open({ route: '/gallery' });
  page = opened.page;
  // The photos are rows without files: every picture is a plain grey.
  const grey = await sharp({ create: { width: 160, height: 120, channels: 3, background: '#808080' } })
    .png()
    .toBuffer();
  await page.route(/\/pictures?\//, (route) => route.fulfill({ body: grey, contentType: 'image/png' }));
  page.on('request', (request) => {
    if (!request.url().includes('bench.commit')) return;
    commits.push((request.postDataJSON() as BenchCommit).changes);
  });
  await goToMarks(small.id);
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

async function goToMarks(caseId: CaseId): Promise<void> {
  await page.evaluate((address) => {
    window.location.hash = address;
  }, `/case/${caseId}/marks`);
  await photoLies();
}

/** The photo lies in its well: how large it is shown is said once the well has been measured, and not before. */
async function photoLies(): Promise<void> {
  await page.getByRole('application').waitFor();
  await page.locator('.marks-foot-percent').getByText(/\d/).first().waitFor();
  await page.getByText(marksTexts.pictureComing).waitFor({ state: 'detached' });
}

const well = () => page.getByRole('application');
const button = (name: string | RegExp) => page.getByRole('button', { name });
const markButton = (label: string) =>
  page.getByRole('button', { name: marksTexts.markButton(label), exact: true });
const marksThere = () => page.locator('.mark-chip').count();
const foot = () => page.locator('.marks-foot');
const key = (name: string) => page.keyboard.press(name);

/** A place in the well as shares of its width and height. */
async function at(across: number, down: number): Promise<[number, number]> {
  const edge = await well().boundingBox();
  if (edge === null) throw new Error('the well is not in sight');
  return [edge.x + across * edge.width, edge.y + down * edge.height];
}

type Place = readonly [number, number];

async function drag(from: Place, to: Place): Promise<void> {
  await page.mouse.move(...(await at(...from)));
  await page.mouse.down();
  await page.mouse.move(...(await at((from[0] + to[0]) / 2, (from[1] + to[1]) / 2)));
  await page.mouse.move(...(await at(...to)));
  await page.mouse.up();
}

const clickAt = async (...place: Place) => page.mouse.click(...(await at(...place)));

/** The give box, with the keyboard in it. */
async function asked(kind: MarkKind): Promise<void> {
  await page.getByRole('region', { name: giving.title('?', kind) }).waitFor();
  await page.waitForFunction(() => document.activeElement?.getAttribute('role') === 'combobox');
}

/** What is shown may still be on its way to the library. */
const saved = () => page.locator('.marks-foot-saving').waitFor({ state: 'detached' });

/** What the deed asks the library for, commit by commit, once all is saved. */
async function changesOf(deed: () => Promise<void>): Promise<BenchChange[][]> {
  await saved();
  const from = commits.length;
  await deed();
  await saved();
  return commits.slice(from);
}

async function breaches(): Promise<unknown[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))]);
}

describe('marks of every kind', () => {
  test('a ring is drawn and given to a new finding in two keys, its class by one more', async () => {
    const changes = await changesOf(async () => {
      await key('r');
      await drag([0.3, 0.3], [0.45, 0.6]);
      await asked('ring');
      await key('w');
      await key('Enter');
      await key(findingsTexts.classKeys.primary);
      await markButton('P 1.1').waitFor();
    });
    expect(changes.flat()).toContainEqual(
      expect.objectContaining({
        change: 'put-finding',
        fields: expect.objectContaining({
          component: 'thrust-bearing',
          presence: 'present',
          class: 'primary',
        }) as unknown,
      }),
    );
  });

  test('an arrow is given by the number of the finding, an outline to the last by Enter alone', async () => {
    await key('w');
    await drag([0.2, 0.2], [0.3, 0.35]);
    await asked('arrow');
    await key('1');
    await key('Enter');
    await markButton('P 1.2').waitFor();
    await key('o');
    await clickAt(0.6, 0.3);
    await clickAt(0.75, 0.35);
    await clickAt(0.7, 0.5);
    await clickAt(0.6, 0.3);
    await asked('outline');
    await key('Enter');
    await markButton('P 1.3').waitFor();
  });

  test('a line and words', async () => {
    await key('l');
    await drag([0.2, 0.8], [0.5, 0.85]);
    await asked('line');
    await key('Enter');
    await markButton('P 1.4').waitFor();
    await key('t');
    await clickAt(0.6, 0.7);
    await page.getByLabel(marksTexts.wordsField).waitFor();
    await page.keyboard.type('scored here, 0.3 mm');
    await key('Enter');
    // Words need no finding: they are there as a note, and are given only when that is asked for.
    await markButton(marksTexts.noteName('scored here, 0.3 mm')).waitFor();
    await page.getByRole('list', { name: marksTexts.notes }).waitFor();
    expect(await page.getByRole('combobox', { name: giving.box }).count()).toBe(0);
    await key('s');
    await asked('text');
    await key('Enter');
    await markButton('P 1.5').waitFor();
    await page.getByRole('list', { name: marksTexts.notes }).waitFor({ state: 'detached' });
    await saved();
    expect(commits.flat()).toContainEqual(
      expect.objectContaining({
        mark: expect.objectContaining({
          geometry: expect.objectContaining({ kind: 'text', words: 'scored here, 0.3 mm' }) as unknown,
        }) as unknown,
      }),
    );
  });

  test('a circle by the keyboard alone, its handles too', async () => {
    await key('r');
    await page.keyboard.press('Shift+ArrowDown');
    await key('Enter');
    for (let step = 0; step < 4; step++) await page.keyboard.press('Shift+ArrowRight');
    await key('Enter');
    await asked('ring');
    await key('Enter');
    await markButton('P 1.6').waitFor();
    await key('v');
    await key('Enter');
    const [[wider]] = (await changesOf(() => key('Shift+ArrowRight'))) as [[BenchChange]];
    if (wider.change !== 'put-mark' || wider.mark.geometry.kind !== 'ring')
      throw new Error('no ring was put');
    expect(wider.mark.geometry.radiusX).toBeGreaterThan(wider.mark.geometry.radiusY);
  });
});

describe('Escape', () => {
  test('drops an outline, a drag and words without a trace', async () => {
    const asked = await changesOf(async () => {
      await key('o');
      await clickAt(0.5, 0.2);
      await clickAt(0.6, 0.2);
      await key('Escape');
      await key('r');
      await page.mouse.move(...(await at(0.2, 0.2)));
      await page.mouse.down();
      await page.mouse.move(...(await at(0.4, 0.4)));
      await key('Escape');
      await page.mouse.up();
      await key('t');
      await clickAt(0.5, 0.5);
      await page.getByLabel(marksTexts.wordsField).waitFor();
      await page.keyboard.type('not kept');
      await key('Escape');
      await page.getByLabel(marksTexts.wordsField).waitFor({ state: 'detached' });
      await key('v');
    });
    expect(asked).toEqual([]);
    expect(await marksThere()).toBe(6);
  });
});

describe('several', () => {
  test('are chosen together and moved, duplicated and stacked, each in one go', async () => {
    await key('Control+a');
    await page.getByRole('region', { name: chosen.several(6) }).waitFor();
    const moved = await changesOf(() => key('Shift+ArrowRight'));
    expect(moved.map((changes) => changes.map(({ change }) => change))).toEqual([Array(6).fill('put-mark')]);
    const copied = await changesOf(() => key('Control+d'));
    expect(copied.map((changes) => changes.map((change) => 'revision' in change && change.revision))).toEqual(
      [Array(6).fill(null)],
    );
    await markButton('P 1.12').waitFor();
    const stacked = await changesOf(() => key('Shift+f'));
    expect(stacked).toHaveLength(1);
    expect(stacked[0]?.every(({ change }) => change === 'put-mark')).toBe(true);
  });

  test('are hidden in this window only, which is said with a way to show them', async () => {
    const asked = await changesOf(async () => {
      await key('h');
      await foot().getByText(marksTexts.hidden(6)).waitFor();
      await button(marksTexts.showAll).click();
      await foot().getByText(marksTexts.hidden(6)).waitFor({ state: 'detached' });
      await key('Shift+h');
      await foot().getByText(marksTexts.hiddenAll).waitFor();
      await key('Shift+h');
      await foot().getByText(marksTexts.hiddenAll).waitFor({ state: 'detached' });
    });
    expect(asked).toEqual([]);
  });

  test('are given to another finding together', async () => {
    await key('Control+a');
    await key('s');
    await page.getByRole('region', { name: giving.several(12) }).waitFor();
    await page.keyboard.type('crack');
    await key('Enter');
    await key('Enter');
    await markButton('? 2.12').waitFor();
  });
});

describe('the screen', () => {
  test('holds to the rules of axe-core with the give box open and with the keys open', async () => {
    await key('s');
    // Some of the list will do: axe takes its time over each line.
    await page.getByRole('combobox', { name: giving.box }).fill('crack');
    expect(await breaches()).toEqual([]);
    await key('Escape');
    await key('?');
    await page.getByRole('dialog', { name: marksTexts.keys.title }).waitFor();
    expect(await breaches()).toEqual([]);
    await key('Escape');
  });

  test('says where photos are brought in when a file is dropped on it', async () => {
    await dropFiles(page, [import.meta.filename]);
    await page.getByText(marksTexts.dropElsewhere).waitFor();
    await button(marksTexts.toPhotosStation).click();
    await page.getByRole('heading', { level: 1, name: shellTexts.station.photos }).waitFor();
    await page.goBack();
    await well().waitFor();
  });
});

describe('undo', () => {
  test('takes all of it back, and it stays so after a reload', async () => {
    const undo = button(marksTexts.undo);
    await key('Control+z');
    const entered = marksTexts.steps['finding-entered']({
      marks: '12 marks',
      where: marksTexts.steps.where('1'),
      finding: '2',
    });
    await page.getByRole('status').getByText(said.undone(entered), { exact: true }).waitFor();
    while (await undo.isEnabled()) await key('Control+z');
    expect(await marksThere()).toBe(0);
    await button(marksTexts.redo).click();
    await markButton('?').waitFor();
    await key('Control+z');
    await markButton('?').waitFor({ state: 'detached' });
    // What is shown is not in the library before it says so.
    await page.locator('.marks-foot-saving').waitFor({ state: 'detached' });
    await page.reload();
    await page.getByText(marksTexts.noFindingsHere).waitFor();
    expect(await marksThere()).toBe(0);
  });
});

describe('a reload', () => {
  const reload = async () => {
    await page.reload();
    await photoLies();
  };

  test('comes back to the photo worked on last, by way of another station too', async () => {
    await key('PageDown');
    await page.getByText(marksTexts.photoOf('2', '2')).waitFor();
    await reload();
    await page.getByText(marksTexts.photoOf('2', '2')).waitFor();
    await page.getByRole('link', { name: new RegExp(`^${shellTexts.station.claim}`) }).click();
    await page.getByRole('heading', { level: 1, name: shellTexts.station.claim }).waitFor();
    await page.reload();
    await page.getByRole('heading', { level: 1, name: shellTexts.station.claim }).waitFor();
    await page.getByRole('link', { name: new RegExp(`^${shellTexts.station.marks}`) }).click();
    await page.getByText(marksTexts.photoOf('2', '2')).waitFor();
  });

  test('at a photo that is not in the case shows the first, and says so', async () => {
    await page.evaluate((address) => {
      window.location.hash = address;
    }, `/case/${small.id}/marks/${large.photos[0]!.id}`);
    await page.getByText(marksTexts.photoGone).waitFor();
    await page.getByText(marksTexts.photoOf('1', '2')).waitFor();
  });

  /** Numbers of findings that were taken back are not given again: which one it is does not matter here. */
  const ordinal = (of: Page, nth: number) =>
    of.getByRole('button', { name: new RegExp(`^${marksTexts.markButton(`P \\d+\\.${String(nth)}`)}$`) });

  test('right after gestures loses none of them, those not sent yet neither', async () => {
    await key('r');
    await drag([0.3, 0.3], [0.45, 0.6]);
    await asked('ring');
    await key('w');
    await key('Enter');
    await key(findingsTexts.classKeys.primary);
    await ordinal(page, 1).waitFor();
    await page.locator('.marks-foot-saving').waitFor({ state: 'detached' });
    // In a window of its own: requests that the test answers itself do not outlive their page.
    const other = await house.open({ route: `/case/${small.id}/marks` });
    await ordinal(other.page, 1).click();
    await other.page.getByRole('region', { name: /^Ring P/ }).waitFor();
    const loaded = other.page.waitForEvent('load');
    await other.page.evaluate(() => {
      const keydown = { key: 'd', ctrlKey: true, bubbles: true };
      for (let copy = 0; copy < 5; copy++) window.dispatchEvent(new KeyboardEvent('keydown', keydown));
      window.location.reload();
    });
    await loaded;
    await ordinal(other.page, 6).waitFor();
    expect(await other.page.locator('.mark-chip').count()).toBe(6);
    await other.close();
    await ordinal(page, 6).waitFor();
  });

  test('forgets what was given to last: Enter takes what the photo shows, never a part that is not on it', async () => {
    await reload();
    const marked = page.locator('[role=option][aria-selected=true]');
    await key('r');
    await drag([0.6, 0.3], [0.7, 0.5]);
    await asked('ring');
    expect(await marked.textContent()).toMatch(/\d w/);
    await key('Escape');
    await key('PageDown');
    await page.getByText(marksTexts.photoOf('2', '2')).waitFor();
    await key('r');
    await drag([0.6, 0.3], [0.7, 0.5]);
    await asked('ring');
    await page.getByRole('group', { name: giving.groups.elsewhere }).getByRole('option').waitFor();
    expect(await marked.textContent()).toContain('turbine wheel');
    await key('Enter');
    await page.getByRole('group', { name: giving.class }).waitFor();
    await key('Escape');
    await key('Escape');
  });
});

describe('a thousand photos and three hundred marks', () => {
  test('keep few thumbnails in the page, wherever one is', async () => {
    await goToMarks(large.id);
    await page.getByText(marksTexts.photoOf('1', '1,000')).waitFor();
    const thumbnails = page.getByRole('navigation', { name: marksTexts.photosTitle }).getByRole('link');
    expect(await thumbnails.count()).toBeLessThan(60);
    await thumbnails.first().focus();
    await key('End');
    await untilAt(page, page.getByRole('link', { name: /^Photo 1,?000\b/ }));
    expect(await thumbnails.count()).toBeLessThan(60);
    await key('Enter');
    await page.getByText(marksTexts.photoOf('1,000', '1,000')).waitFor();
    expect(await thumbnails.count()).toBeLessThan(60);
  });

  test('open at their tools with text at 200 % too, wherever in the row the photo is', async () => {
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    await page.getByRole('link', { name: new RegExp(`^${shellTexts.station.claim}`) }).click();
    await page.getByRole('heading', { level: 1, name: shellTexts.station.claim }).waitFor();
    await goToMarks(large.id);
    await page.getByText(marksTexts.photoOf('1,000', '1,000')).waitFor();
    await page.getByRole('link', { name: /^Photo 1,?000\b/ }).waitFor();
    const tools = await page.getByRole('toolbar', { name: marksTexts.toolsLabel }).boundingBox();
    expect(tools?.y).toBeGreaterThan(0);
    expect((tools?.y ?? 0) + (tools?.height ?? Infinity)).toBeLessThan(smallWindow.height);
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '';
    });
  });

  test('keep the photo in sight in its row while a mark is given, and say where a step was taken back', async () => {
    await key('r');
    await drag([0.3, 0.3], [0.45, 0.6]);
    await asked('ring');
    // The row has one line now, and scrolls to the photo once that is drawn.
    await page.waitForFunction(() => {
      const row = document.querySelector('.photo-row-scroller')?.getBoundingClientRect();
      const thumbnail = document.querySelector('.photo-row [aria-current]')?.getBoundingClientRect();
      if (row === undefined || thumbnail === undefined) return false;
      return thumbnail.top >= row.top && thumbnail.bottom <= row.bottom;
    });
    const give = (await button(new RegExp(`^${giving.choose}`)).boundingBox())!;
    expect(give.y + give.height).toBeLessThanOrEqual(smallWindow.height);
    await key('Escape');
    await key('Control+z');
    const { steps, kinds } = marksTexts;
    const drawn = steps.drawn({ marks: kinds.ring, where: steps.where('1,000'), finding: '' });
    const message = page.getByRole('status').getByText(said.undone(drawn), { exact: true });
    await message.waitFor();
    // Not over the tools at the foot of the photo.
    const words = (await message.boundingBox())!;
    expect(words.y + words.height).toBeLessThan((await foot().boundingBox())!.y);
    await key('v');
    // It goes by itself.
    await message.waitFor({ state: 'detached' });
  });

  test('are chosen together, and walked through by key', async () => {
    // The keyboard is there in the key's own turn: the next key is not for the photo before.
    const reached = await page.getByRole('link', { name: /^Photo 1,?000\b/ }).evaluate(async (link) => {
      link.focus();
      link.dispatchEvent(new KeyboardEvent('keydown', { key: 'Home', bubbles: true, cancelable: true }));
      await Promise.resolve();
      return document.activeElement?.getAttribute('aria-label');
    });
    expect(reached).toMatch(/^Photo 1(?!,?\d)/);
    await key('Enter');
    await page.getByText(marksTexts.photoOf('1', '1,000')).waitFor();
    await button(tools.select).click();
    await key('Control+a');
    await page.getByRole('region', { name: chosen.several(300) }).waitFor();
    await page.keyboard.press('Shift+f');
    await key('Escape');
    await key('m');
    await page.getByRole('region', { name: /^(Arrow|Ring|Outline|Line|Text) / }).waitFor();
  });

  test('and the console had nothing to complain about', () => {
    expect(opened.complaints).toEqual([]);
  });
});
