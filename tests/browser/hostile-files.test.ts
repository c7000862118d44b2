/** One drop with everything a card or a mailbox can hold: what is good arrives, what is not is named, with what to do. */
import { readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { ErrorCode } from '#shared-types/errors.ts';
import { errorSentences } from '#shared-types/texts/errors.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';

import { pictureLimits } from '../../electron/images/picture-limits.ts';
import { markedPicture, noisyJpeg } from '../support/pictures/marked-picture.ts';
import { jpegHeader, pngHeader } from '../support/pictures/picture-headers.ts';
import { enterFirstAnalyst, openFirstCase, station } from './first-case.ts';
import { dropFiles, openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';

const side = 60_000;

/** Every bad file with the sentence it must be answered with; `null` stands for words the decoder chooses. */
const bad: readonly { name: string; code: ErrorCode; details: Readonly<Record<string, string | null>> }[] = [
  { name: 'empty.jpg', code: 'file-empty', details: {} },
  { name: 'letter.jpg', code: 'file-not-a-picture', details: {} },
  { name: 'cut-off.jpg', code: 'picture-broken', details: { reason: null } },
  ...['vast.jpg', 'vast.png'].map((name) => ({
    name,
    code: 'picture-too-large' as const,
    // 60 000 x 60 000 pixels are 3 600 megapixels.
    details: { megapixels: '3600', limit: String(pictureLimits.megapixelsByRows) },
  })),
];
/** Made by computer, as its digital source type says. */
const sampleCasePhoto = resolve('sample-cases', 'ferry-auxiliary', 'photos', 'BRN_2041.jpg');
const good = ['face.jpg', 'sixteen-bits.png', 'wheel.jpg'];

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;

async function contents(): Promise<Record<string, Buffer>> {
  const wheel = await noisyJpeg(3);
  const whole = await noisyJpeg(4);
  const deep = markedPicture({ width: 96, height: 64 }).toColourspace('rgb16').png();
  return {
    'cut-off.jpg': whole.subarray(0, whole.length / 2),
    'empty.jpg': Buffer.alloc(0),
    'face.jpg': await noisyJpeg(1),
    'letter.jpg': Buffer.from('Dear Sirs, please find the photos attached.\n'),
    'sixteen-bits.png': await deep.toBuffer(),
    'vast.jpg': jpegHeader(side, side),
    'vast.png': pngHeader(side, side),
    'wheel.jpg': wheel,
    'wheel-copied.jpg': wheel,
  };
}

beforeAll(async () => {
  house = await openProgramHouse();
  opened = await house.open();
  page = opened.page;
  await enterFirstAnalyst(page);
  await openFirstCase(page, 'The wheel burst.');
  await station(page, 'photos').click();
  await page.getByRole('heading', { name: photosTexts.emptyTitle }).waitFor();
  for (const [name, content] of Object.entries(await contents())) {
    await writeFile(join(house.folder, name), content);
  }
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

/** The catalogue's sentence with its details, and anything where the detail is null. */
function sentencePattern(code: ErrorCode, details: Readonly<Record<string, string | null>>): RegExp {
  const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const parts = errorSentences[code].split(/\{(\w+)\}/);
  const filled = parts.map((part, at) => {
    if (at % 2 === 0) return escaped(part);
    const value = details[part];
    if (value === undefined) throw new Error(`no detail ${part} for ${code}`);
    return value === null ? '[^()]+' : escaped(value);
  });
  return new RegExp(`^${filled.join('')}$`);
}

describe('a drop of good and bad files', () => {
  let lines: readonly string[];

  beforeAll(async () => {
    const { channels, depth } = await sharp(join(house.folder, 'sixteen-bits.png')).metadata();
    expect([channels, depth]).toEqual([3, 'ushort']);
    await dropFiles(
      page,
      Object.keys(await contents()).map((name) => join(house.folder, name)),
    );
    const list = page.getByRole('list', { name: photosTexts.listLabel });
    await list.waitFor();
    lines = await list.getByRole('listitem').allTextContents();
  });

  test('takes the good ones in, the one of 16 bits a channel too, in the order of their names', async () => {
    await page.getByText(photosTexts.resultOf.added(good.length)).waitFor();
    const cells = page.getByRole('listbox', { name: photosTexts.grid }).getByRole('option');
    await cells.nth(good.length - 1).waitFor();
    expect(await cells.count()).toBe(good.length);
    const pictures = cells.locator('img');
    for (let at = 0; at < good.length; at += 1) {
      await pictures.nth(at).evaluate((image: HTMLImageElement) => image.decode());
    }
    await cells.first().click();
    await page.getByRole('complementary').getByText('face.jpg').waitFor();
  });

  test.each(bad)('names $name with what to do', ({ name, code, details }) => {
    const said = lines.filter((line) => line.startsWith(name));
    expect(said).toEqual([expect.stringMatching(sentencePattern(code, { name, ...details }))]);
  });

  test('says of the copy that it is one, and of which photo', async () => {
    // Two are decoded at a time: whichever came second is the copy. The other is named once it is read.
    const copies = page
      .getByRole('list', { name: photosTexts.listLabel })
      .getByRole('listitem')
      .filter({ hasText: /^wheel/ });
    const told = copies.filter({ hasText: photosTexts.alreadyHereAs('3', 'wheel') });
    await told.waitFor();
    expect(await copies.count()).toBe(1);
    const line = await told.textContent();
    const isSecond = line!.startsWith('wheel-copied.jpg');
    const [copy, first] = isSecond ? ['wheel-copied.jpg', 'wheel.jpg'] : ['wheel.jpg', 'wheel-copied.jpg'];
    expect(line).toBe(`${copy} ${photosTexts.alreadyHereAs('3', first)}`);
    await page.getByText(photosTexts.resultOf.here(1)).waitFor();
  });

  test('has something to say of no other file', async () => {
    expect(lines.length).toBe(bad.length + 1);
    await page.getByText(photosTexts.resultOf.failed(bad.length)).waitFor();
  });

  test('leaves the originals as they were', async () => {
    for (const [name, content] of Object.entries(await contents())) {
      expect((await readFile(join(house.folder, name))).equals(content)).toBe(true);
    }
  });
});

describe('a picture whose file says that no camera took it', () => {
  test('is warned of in the list and above the grid, and can be chosen from there', async () => {
    const { synthetic } = photosTexts;
    await dropFiles(page, [sampleCasePhoto]);
    await page
      .getByRole('listitem')
      .filter({ hasText: synthetic.result })
      .getByText('BRN_2041.jpg')
      .waitFor();
    const notice = page.getByRole('status').filter({ hasText: synthetic.notice('1', true) });
    await notice.getByRole('button', { name: synthetic.choose(true) }).click();
    await page.getByText(synthetic.says('algorithmicMedia')).waitFor();
    await page.getByRole('option', { name: synthetic.short, selected: true }).waitFor();
    // Out again: what follows counts the photos that were there before.
    await page.getByRole('button', { name: photosTexts.takeOut.open }).click();
    await page.getByLabel(photosTexts.takeOut.reason).fill('a sample');
    await page.getByRole('button', { name: photosTexts.takeOut.do, exact: true }).click();
    await notice.waitFor({ state: 'detached' });
  });
});

describe('a picture taken out and dropped again', () => {
  test('is put back, and the list says so with the reason', async () => {
    const reason = 'the face of the spare wheel';
    const texts = photosTexts.takeOut;
    await page.getByRole('option', { name: photosTexts.photo('1') }).click();
    await page.keyboard.press('Delete');
    await page.getByLabel(texts.reason).fill(reason);
    await page.getByRole('button', { name: texts.do, exact: true }).click();
    await page.getByText(photosTexts.count('2', false)).waitFor();
    await page.getByRole('button', { name: photosTexts.views.register }).click();
    await page.getByText(`“${reason}”`).waitFor();
    // Dropped on the register: whatever of the station is shown, photos come in.
    await dropFiles(page, [join(house.folder, 'face.jpg')]);
    await page.getByText(photosTexts.isPutBack(reason)).waitFor();
    await page.getByText(photosTexts.resultOf.putBack(1)).waitFor();
    await page.getByText(photosTexts.count('3', false)).waitFor();
    await page.getByText(`“${reason}”`, { exact: true }).waitFor({ state: 'detached' });
  });

  test('and the screens hold to the rules of axe-core (WCAG 2.2 A and AA)', async () => {
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))])).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });
});
