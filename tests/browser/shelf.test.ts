/** The shelf of a library with many cases: the newest at once, all when they are wanted. */
import { mkdirSync } from 'node:fs';

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';

import { shelfTexts } from '#shared-types/texts/shelf.ts';

import { openLibrary } from '../../electron/database/open-library.ts';
import { migrationsFolder, testInstant } from '../support/open-test-library.ts';
import { pourWorld } from '../support/world-through-repositories.ts';
import { makeWorld } from '../support/world.ts';
import { openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';

const count = 260;
let house: ProgramHouse;
let opened: ProgramWindow;
let page: Page;

beforeAll(async () => {
  const world = makeWorld(61, { cases: count, findings: [1, 1], photos: [0, 0], marks: [0, 0] });
  house = await openProgramHouse(null, (folder) => {
    mkdirSync(folder, { recursive: true });
    const { db } = openLibrary({ folder, migrationsFolder, now: () => testInstant });
    pourWorld(db, world);
    db.close();
    return Promise.resolve();
  });
  opened = await house.open();
  page = opened.page;
});

afterAll(async () => {
  await opened.close();
  await house.close();
});

const table = () => page.getByRole('table', { name: shelfTexts.tableCaption });
const rowCount = async () => Number(await table().getAttribute('aria-rowcount'));

test('shows the 200 cases opened last, and says so', async () => {
  await page.getByText(shelfTexts.latest('200')).waitFor();
  // The head counts as a row.
  expect(await rowCount()).toBe(201);
});

test('shows all of them once a column is sorted by, and says how many', async () => {
  await page.getByRole('button', { name: shelfTexts.columns.customer }).click();
  await page.getByText(shelfTexts.count('260', false)).waitFor();
  expect(await rowCount()).toBe(261);
  expect(await page.getByRole('button', { name: shelfTexts.readAll }).count()).toBe(0);
});

test('after a reload shows all of them by its button, by keyboard', async () => {
  await page.reload();
  const all = page.getByRole('button', { name: shelfTexts.readAll });
  await all.focus();
  await page.keyboard.press('Enter');
  await page.getByText(shelfTexts.count('260', false)).waitFor();
});

test('and holds to the rules of axe-core (WCAG 2.2 A and AA), with nothing in the console', async () => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map((node) => node.target.join(' '))])).toEqual([]);
  expect(opened.complaints).toEqual([]);
});
