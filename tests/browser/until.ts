/** Waits for what no words on the screen say. Nothing here has a limit of its own: the test's ends what never comes. */
import type { Locator, Page } from 'playwright';

/** Looks again until it holds: each look is a round trip to the browser. */
export async function until(holds: () => Promise<boolean>): Promise<void> {
  while (!(await holds()));
}

/** Waits until the element has the keyboard. */
export async function untilAt(page: Page, element: Locator): Promise<void> {
  await element.and(page.locator(':focus')).waitFor();
}
