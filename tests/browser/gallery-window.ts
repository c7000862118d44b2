/** The design page in a real browser, served by the loopback host as every page is. */
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright';

import { openLoopbackHost } from '../../electron/host/loopback-host.ts';
import { createEngineLink } from '../../electron/processes/engine-link.ts';
import { createEventHub } from '../../electron/processes/event-hub.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';

export type GalleryWindow = {
  readonly page: Page;
  /** Errors of the console and faults of the page, as they came. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
};

export type GalleryHouse = {
  /** @param textScale of the root's font size, 1 for what the browser brings */
  open(options?: { theme?: 'light' | 'dark'; textScale?: number }): Promise<GalleryWindow>;
  close(): Promise<void>;
};

const size = { width: 1280, height: 720 };
const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** One host and one browser for the whole file. */
export async function openGalleryHouse(): Promise<GalleryHouse> {
  const folder = makeTemporaryFolder();
  const hub = createEventHub();
  const link = createEngineLink({
    broker: createForkBroker(),
    folders: { own: join(folder, 'own'), samples: join(folder, 'samples') },
    carrier: 'loopback',
    library: 'own',
    publish: hub.publish,
  });
  const host = await openLoopbackHost({ link, hub, uploadFolder: join(folder, 'uploads'), port: 0 });
  const browser = await chromium.launch({ executablePath: chromiumOnThisMachine(), args: flags });
  return {
    open: (options = {}) => openWindow(browser, host.address, options),
    async close() {
      await browser.close();
      await host.close();
      await link.close();
      removeFolder(folder);
    },
  };
}

function chromiumOnThisMachine(): string {
  return execFileSync('sh', ['-c', 'command -v chromium'], { encoding: 'utf8' }).trim();
}

async function openWindow(
  browser: Browser,
  address: string,
  { theme = 'light', textScale = 1 }: { theme?: 'light' | 'dark'; textScale?: number },
): Promise<GalleryWindow> {
  const context = await browser.newContext({ viewport: size, colorScheme: theme });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(`${address}#/gallery`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.evaluate(async (scale) => {
    document.documentElement.style.fontSize = `${scale * 100}%`;
    await document.fonts.ready;
  }, textScale);
  return { page, complaints, close: () => context.close() };
}
