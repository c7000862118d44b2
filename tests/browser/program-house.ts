/** The program in a real browser: engine, loopback host and Chromium, one of each for a whole test file. */
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

import { chromium, type Browser, type Page } from 'playwright';

import { openLoopbackHost } from '../../electron/host/loopback-host.ts';
import { createEngineLink } from '../../electron/processes/engine-link.ts';
import { createEventHub } from '../../electron/processes/event-hub.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';

export type ProgramWindow = {
  readonly page: Page;
  /** Errors and warnings of the console and faults of the page, as they came: a test expects none. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
};

export type WindowOptions = {
  /** The part of the address after the hash: `/gallery`. */
  readonly route?: string;
  readonly theme?: 'light' | 'dark';
  /** Of the root's font size: 1 for what the browser brings. */
  readonly textScale?: number;
  readonly size?: { readonly width: number; readonly height: number };
};

export type ProgramHouse = {
  open(options?: WindowOptions): Promise<ProgramWindow>;
  /** A folder of the house's own, for files to drop and documents to save. */
  readonly folder: string;
  /** How often an engine was started. */
  enginesStarted(): number;
  close(): Promise<void>;
};

export const smallWindow = { width: 1280, height: 720 };

/** A slow machine is no failure. Milliseconds. */
const patience = 120_000;

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

/**
 * @param firstEngineFault as TEARDOWN_DOCKET_FAULT has it; the engine that is started after it has none
 * @param furnish fills the library's folder before an engine opens it
 */
export async function openProgramHouse(
  firstEngineFault: string | null = null,
  furnish: (libraryFolder: string) => Promise<unknown> = () => Promise.resolve(),
): Promise<ProgramHouse> {
  const folder = makeTemporaryFolder();
  await furnish(join(folder, 'own'));
  const hub = createEventHub();
  let engines = 0;
  const link = createEngineLink({
    broker: createForkBroker({
      environment: (entry): Record<string, string> => {
        if (entry !== 'engine') return {};
        engines += 1;
        return engines === 1 && firstEngineFault !== null ? { TEARDOWN_DOCKET_FAULT: firstEngineFault } : {};
      },
    }),
    folders: { own: join(folder, 'own'), samples: join(folder, 'samples') },
    carrier: 'loopback',
    library: 'own',
    publish: hub.publish,
  });
  const host = await openLoopbackHost({ link, hub, uploadFolder: join(folder, 'uploads'), port: 0 });
  const browser = await chromium.launch({ executablePath: chromiumOnThisMachine(), args: flags });
  return {
    folder,
    enginesStarted: () => engines,
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

async function openWindow(browser: Browser, address: string, options: WindowOptions): Promise<ProgramWindow> {
  const { route = '/', theme = 'light', textScale = 1, size = smallWindow } = options;
  const context = await browser.newContext({ viewport: size, colorScheme: theme, acceptDownloads: true });
  context.setDefaultTimeout(patience);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(`${address}#${route}`);
  await page.getByRole('heading').first().waitFor();
  await page.evaluate(async (scale) => {
    document.documentElement.style.fontSize = `${scale * 100}%`;
    await document.fonts.ready;
  }, textScale);
  return { page, complaints, close: () => context.close() };
}

/** Drops files from the disk on the middle of the window, as the operating system does: through the DevTools protocol. */
export async function dropFiles(page: Page, files: readonly string[]): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const { width, height } = page.viewportSize() ?? smallWindow;
  const data = { items: [], files: [...files], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
    await session.send('Input.dispatchDragEvent', { type, x: width / 2, y: height / 2, data });
  }
  await session.detach();
}
