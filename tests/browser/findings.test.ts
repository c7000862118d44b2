/** The findings of a case: what can occur is looked through by keyboard, a bend is checked, contradictions are shown. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { Channel, RequestOf, ResponseOf } from '#shared-types/api-contract.ts';
import type { Envelope } from '#shared-types/errors.ts';
import type { Finding, FindingFields } from '#shared-types/finding.ts';
import type { CaseId, FindingId, MarkId } from '#shared-types/ids.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { expectationTexts } from '#shared-types/texts/expectations.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

import { testId } from '../support/open-test-library.ts';
import { enterFirstAnalyst, openFirstCase, station } from './first-case.ts';
import { dropFiles, openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';
import { untilAt } from './until.ts';

const picture = { width: 1600, height: 1200 };
const arrow = { tail: { x: 900, y: 300 }, tip: { x: 700, y: 500 } };
/** Of the picture round the arrow's tip; neither screen nor mark has it. */
const green = [0, 255, 0] as const;

const bent = testId<FindingId>(1);
const dented = testId<FindingId>(2);
const place = { component: 'compressor-wheel', position: null, zone: 'contour-edge' } as const;
const said: FindingFields = {
  ...place,
  kind: 'bent-over',
  class: 'undecided',
  presence: 'present',
  severity: null,
  extent: null,
  bend: null,
  note: '',
};

let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;
let caseId: CaseId;

beforeAll(async () => {
  house = await openProgramHouse();
  opened = await house.open();
  page = opened.page;
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

/** A call as the page makes it. */
async function ask<C extends Channel>(channel: C, request: RequestOf<C>): Promise<ResponseOf<C>> {
  const answer = await page.evaluate(
    async ([name, body]) => {
      const token = document.querySelector<HTMLMetaElement>('meta[name="docket-token"]')?.content ?? '';
      const response = await fetch(`/call/${name}`, {
        method: 'POST',
        headers: { 'x-docket-token': token, 'content-type': 'application/json' },
        body,
      });
      return response.json() as Promise<unknown>;
    },
    [channel, JSON.stringify(request)] as const,
  );
  const envelope = answer as Envelope<ResponseOf<C>>;
  if (!envelope.ok) throw new Error(`${channel}: ${envelope.error.message}`);
  return envelope.value;
}

const button = (name: string | RegExp) => page.getByRole('button', { name });
const row = (name: string | RegExp) => page.getByRole('row', { name });
const panel = () => page.getByRole('complementary');
const kindRow = (kind: string, state: keyof typeof expectationTexts.states) =>
  row(expectationTexts.rowName(kind, 'compressor wheel, contour edge', expectationTexts.states[state]));

async function findings(): Promise<Finding[]> {
  return (await ask('bench.read', { caseId })).findings;
}

/** Looks again until the library has it: each look is a round trip. */
async function untilFindings(fits: (all: readonly Finding[]) => boolean): Promise<Finding[]> {
  for (;;) {
    const all = await findings();
    if (fits(all)) return all;
  }
}

/** Of the rules of axe-core (WCAG 2.2 A and AA), within the selector. */
async function breaches(within: string): Promise<unknown> {
  const { violations } = await new AxeBuilder({ page }).include(within).analyze();
  return violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))]);
}

describe('the findings of a case', () => {
  test('a case with a photo of a wheel, a bent edge marked on it, and dents', async () => {
    await enterFirstAnalyst(page);
    await openFirstCase(page, 'The wheel was struck on the bench.');
    caseId = (await ask('cases.list', {}))[0]!.id;
    const file = join(house.folder, 'wheel.png');
    const ground = sharp({ create: { ...picture, channels: 3, background: '#808080' } });
    const [r, g, b] = green;
    const square = { create: { width: 60, height: 60, channels: 3 as const, background: { r, g, b } } };
    await writeFile(
      file,
      await ground
        .composite([{ input: square, left: arrow.tip.x - 30, top: arrow.tip.y }])
        .png()
        .toBuffer(),
    );
    await station(page, 'photos').click();
    await page.getByRole('heading', { name: photosTexts.emptyTitle }).waitFor();
    await dropFiles(page, [file]);
    await page.getByRole('option', { name: photosTexts.photo('1') }).waitFor();
    const photo = (await ask('photos.list', { caseId }))[0]!;
    const { component } = place;
    await ask('photos.change', {
      photoId: photo.id,
      revision: photo.revision,
      fields: { seenFrom: 'from-outlet', parts: [{ component, position: null }] },
    });
    const mark = { id: testId<MarkId>(3), photoId: photo.id, findingId: bent, order: 0 };
    await ask('bench.commit', {
      caseId,
      changes: [
        { change: 'put-finding', findingId: bent, fields: said, revision: null },
        {
          change: 'put-finding',
          findingId: dented,
          fields: { ...said, zone: 'leading-edges', kind: 'dent', class: 'unrelated' },
          revision: null,
        },
        {
          change: 'put-mark',
          mark: { ...mark, geometry: { kind: 'arrow', v: 1, ...arrow } },
          revision: null,
        },
      ],
    });
    await station(page, 'findings').click();
    await row(/^Finding 1, bent over/).waitFor();
  });

  test('each mark is a picture of what it shows, and leads to it', async () => {
    const shown = page.getByRole('img', {
      name: 'Mark ? 1.1 on photo 1: bent over, compressor wheel, contour edge',
    });
    // The picture comes some time after the row: each look is a round trip to the browser.
    for (;;) {
      const { data } = await sharp(await shown.screenshot())
        .removeAlpha()
        .raw()
        .toBuffer({ resolveWithObject: true });
      const isGreen = (at: number) =>
        green.every((value, part) => Math.abs(data.readUInt8(at + part) - value) < 60);
      const greens = Array.from({ length: data.length / 3 }, (_, pixel) => pixel * 3).filter(isGreen).length;
      // The crop is about 430 pixels wide and shown on 48: the square of 60 pixels is some 6 by 6 of these.
      if (greens > 12) break;
    }
    await shown.click();
    await button('Mark ? 1.1').waitFor();
    await page.goBack();
    await row(/^Finding 1, bent over/).waitFor();
  });

  test('what can occur is looked through by keyboard: one key answers, undo takes it back', async () => {
    await button(findingsTexts.views.look).click();
    const filter = page.getByRole('searchbox', { name: expectationTexts.filter });
    await filter.fill('contour bent');
    await kindRow('bent over', 'present').waitFor();
    await filter.fill('contour rub');
    await kindRow('rub all round', 'unknown').waitFor();
    await page.keyboard.press('Tab');
    for (let press = 0; press < 2; press += 1) await page.keyboard.press('Tab');
    await untilAt(page, row('compressor wheel').first());
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await untilAt(page, kindRow('rub', 'unknown'));
    await page.keyboard.press('n');
    await untilAt(page, kindRow('rub', 'looked-for-absent'));
    // No rub is no rub all round either.
    await kindRow('rub all round', 'looked-for-absent').waitFor();
    const [found] = (await untilFindings((all) => all.length === 3)).slice(2);
    expect(found).toMatchObject({ ...place, kind: 'rub', presence: 'looked-for-absent', class: 'undecided' });
    await page.keyboard.press('e');
    await untilAt(page, kindRow('rub', 'not-examined'));
    await page.keyboard.press('Control+z');
    await kindRow('rub', 'looked-for-absent').waitFor();
    await page.keyboard.press('Control+z');
    await kindRow('rub', 'unknown').waitFor();
    await untilFindings((all) => all.length === 2);
    await page.keyboard.press('Control+Shift+z');
    await kindRow('rub', 'looked-for-absent').waitFor();
    expect(await breaches('main')).toEqual([]);
  });

  test('what is not there has no class, in the table and in the panel', async () => {
    await button(findingsTexts.views.table).click();
    const absent = row(/^Finding 3, rub,/);
    await absent.click();
    expect(await absent.getByRole('img').count()).toBe(0);
    await absent.getByText(findingsTexts.noClass, { exact: true }).waitFor();
    await panel().getByText(findingsTexts.classOnlyOfPresent).waitFor();
    expect(await panel().getByRole('button', { name: findingsTexts.changeClass }).count()).toBe(0);
  });

  test('a bend is checked against the rotation as soon as both are known', async () => {
    const { bend } = findingsTexts;
    await row(/^Finding 1, bent over/).click();
    await panel().getByRole('radio', { name: bend.notTold }).focus();
    await page.keyboard.press('a');
    await panel().getByText(bend.needsSide).waitFor();
    await page.keyboard.press('f');
    await panel().getByText(bend.undecided['no-rotation']).waitFor();
    await panel().getByRole('link', { name: bend.toRotation }).waitFor();
    const [known] = await untilFindings((all) => all[0]?.bend !== null);
    expect(known?.bend).toEqual({ sense: 'anticlockwise', seenFrom: 'from-outlet' });

    const { unit, revision } = await ask('cases.read', { caseId });
    const rotation = { sense: 'clockwise', seenFrom: 'from-inlet', photoId: null } as const;
    await ask('cases.change', { caseId, revision, fields: { unit: { ...unit, rotation } } });
    // Common practice, no source: seen from the outlet a standard unit turns anticlockwise.
    await panel().getByText(bend.reads.with).waitFor();
    await panel().getByRole('radio', { name: bend.senses.clockwise, exact: true }).check();
    await panel().getByText(bend.reads.against).waitFor();
    await panel()
      .getByLabel(findingsTexts.kind, { exact: true })
      .selectOption({ label: 'bent with the rotation' });
    await panel().getByText(bend.kindDisagrees('bent with the rotation')).waitFor();
    await page.keyboard.press('Escape');
    await button(findingsTexts.undo).click();
    await panel().getByText(bend.kindDisagrees('bent with the rotation')).waitFor({ state: 'detached' });
  });

  test('the class is changed with a reason, and the panel keeps its history', async () => {
    const { classify, history } = findingsTexts;
    await panel().getByText(history.none).waitFor();
    await panel().getByRole('button', { name: findingsTexts.changeClass }).click();
    const dialog = page.getByRole('dialog', { name: classify.title(1) });
    await dialog.getByRole('radio', { name: commonTexts.damageClasses.secondary }).check();
    await dialog.getByLabel(classify.reason).fill('The housing has the same burr.');
    expect(await breaches('dialog')).toEqual([]);
    await dialog.getByRole('button', { name: classify.save }).click();
    await panel().getByText('The housing has the same burr.').waitFor();
    await panel().getByText(history.change('undecided', 'secondary')).waitFor();
    await panel()
      .getByText(/^M. Sundgren, /)
      .waitFor();
    // Every finding that is there has its class now; that which is not there needs none.
    await station(page, 'findings').and(page.getByTitle(shellTexts.stationState.done)).waitFor();
  });

  test('a finding with marks is not said to be absent without a question', async () => {
    await panel()
      .getByLabel(findingsTexts.presence, { exact: true })
      .selectOption({ label: 'Looked for, not there' });
    const dialog = page.getByRole('dialog', { name: findingsTexts.denying.title(1) });
    await dialog.getByText(findingsTexts.denying.words(['S 1.1'])).waitFor();

    await dialog.getByRole('button', { name: commonTexts.cancel }).click();
    await dialog.waitFor({ state: 'detached' });
    expect((await findings())[0]?.presence).toBe('present');
  });

  test('what contradicts itself is said above the table and signed in its rows', async () => {
    await button(findingsTexts.add).click();
    const dialog = page.getByRole('dialog', { name: findingsTexts.addTitle });
    await dialog.getByLabel(findingsTexts.part, { exact: true }).selectOption({ label: 'compressor wheel' });
    await dialog.getByLabel(findingsTexts.zone, { exact: true }).selectOption({ label: 'contour edge' });
    await dialog.getByLabel(findingsTexts.kind, { exact: true }).selectOption({ label: 'bent over' });
    expect(await dialog.getByRole('radio').count()).toBe(0);
    expect(await breaches('dialog')).toEqual([]);
    await dialog.getByRole('button', { name: findingsTexts.saveNew }).click();
    const toSettle = page.getByRole('region', { name: findingsTexts.conflicts.heading(1) });
    await toSettle.getByText('is there, but').waitFor();
    await row(/^Finding 1, bent over.*to settle with finding 4$/).waitFor();
    await row(/^Finding 4, bent over.*to settle with finding 1$/).waitFor();
    await toSettle.getByRole('link', { name: /^1 bent over/ }).click();
    await panel()
      .getByRole('heading', { name: findingsTexts.title(1) })
      .waitFor();
    expect(await breaches('main')).toEqual([]);
  });

  test('a zone that another part does not have is dropped, is said to be, and comes back, over an open dialog too', async () => {
    await row(/^Finding 2, dents/).click();
    await panel()
      .getByLabel(findingsTexts.part, { exact: true })
      .selectOption({ label: 'compressor housing' });
    const message = page.getByText(findingsTexts.zoneDropped('leading edges', 'compressor housing'));
    await message.waitFor();
    await untilFindings((all) => all.some(({ id, zone }) => id === dented && zone === null));
    await panel().getByRole('button', { name: findingsTexts.remove }).click();
    const dialog = page.getByRole('dialog', { name: findingsTexts.removing.title(2) });
    await dialog.waitFor();
    await message.waitFor();
    expect(await breaches('dialog')).toEqual([]);
    // A click reaches the message only where nothing lies over it.
    await page.getByRole('status').getByRole('button', { name: findingsTexts.undo }).click();
    await untilFindings((all) => all.some(({ id, zone }) => id === dented && zone === 'leading-edges'));
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
  });

  test('half an extent is told and not saved', async () => {
    await panel().getByLabel(findingsTexts.affected, { exact: true }).fill('3');
    expect(await panel().getByText(findingsTexts.extentHalf).count()).toBe(0);
    await panel().getByLabel(findingsTexts.note).focus();
    await panel().getByText(findingsTexts.extentHalf).waitFor();
    await panel().getByLabel(findingsTexts.outOf, { exact: true }).fill('12');
    await panel().getByLabel(findingsTexts.note).focus();
    const all = await untilFindings((known) =>
      known.some(({ id, extent }) => id === dented && extent !== null),
    );
    expect(all.find(({ id }) => id === dented)?.extent).toEqual({ affected: 3, of: 12 });
  });

  test('of a thousand findings only those in sight are in the page, and the keyboard reaches the last', async () => {
    const changes = Array.from({ length: 1_000 }, () => ({
      change: 'put-finding' as const,
      findingId: crypto.randomUUID() as FindingId,
      fields: {
        ...said,
        component: 'shaft',
        zone: 'thread',
        kind: 'corrosion',
        presence: 'not-examined' as const,
      },
      revision: null,
    }));
    await ask('bench.commit', { caseId, changes });
    await page.getByText(findingsTexts.count(1_004)).waitFor();
    expect(await page.getByRole('row').count()).toBeLessThan(60);
    await row(/^Finding 1, bent over/).focus();
    await page.keyboard.press('End');
    await untilAt(page, row(/^Finding 1004,/));
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await panel()
      .getByRole('heading', { name: findingsTexts.title(1_003) })
      .waitFor();
    await page.keyboard.press('Home');
    await untilAt(page, row(/^Finding 1, bent over/));
    expect(await page.evaluate(() => document.documentElement.scrollHeight - window.innerHeight)).toBe(0);
  });

  test('and the console had nothing to complain about', () => {
    expect(opened.complaints).toEqual([]);
  });
});
