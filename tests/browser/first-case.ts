/** The first steps of every journey: who works here, and a case to work on. */
import type { Page } from 'playwright';

import { shelfTexts } from '#shared-types/texts/shelf.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

export async function enterFirstAnalyst(page: Page): Promise<void> {
  await page.getByLabel(shellTexts.analyst.name).fill('M. Sundgren');
  await page.getByRole('button', { name: shellTexts.analyst.enter }).click();
  await page.getByRole('heading', { name: shelfTexts.empty.title }).waitFor();
}

export async function openFirstCase(page: Page, claim: string): Promise<void> {
  const { dialog } = shelfTexts;
  await page.getByRole('button', { name: shelfTexts.newCase }).first().click();
  await page.getByLabel(dialog.number).fill('26-0147');
  await page.getByLabel(dialog.kind).selectOption({ label: 'turbocharger' });
  await page.getByLabel(dialog.model).fill('R45');
  await page.getByLabel(dialog.serial).fill('30771');
  await page.getByLabel(dialog.claim).fill(claim);
  await page.getByRole('button', { name: dialog.open }).click();
  await page.getByRole('heading', { level: 1, name: shellTexts.station.claim }).waitFor();
}

export function station(page: Page, name: keyof typeof shellTexts.station) {
  return page.getByRole('navigation').getByRole('link', { name: new RegExp(`^${shellTexts.station[name]}`) });
}
