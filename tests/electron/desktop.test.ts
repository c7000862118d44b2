/**
 * The desktop program itself, in the desktop runtime. The runtime cannot be had on every machine: where it is not, these
 * specs are skipped, and npm test says so and counts them.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { _electron, type ElectronApplication, type Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Envelope } from '#shared-types/errors.ts';
import type { ProgramDescription } from '#shared-types/library.ts';
import { findDesktopRuntime, whyNoDesktopSpecs } from '../../scripts/desktop-runtime.mjs';

const root = resolve(import.meta.dirname, '..', '..');
const hindrance = whyNoDesktopSpecs();
if (hindrance !== null) console.warn(`\nTHE DESKTOP SPECS DO NOT RUN: ${hindrance}\n`);

/** What the preload puts into the page, as far as these specs call it. */
type PageWithCarrier = {
  teardownDocket: {
    kind: string;
    call(channel: string, request: unknown): Promise<Envelope<ProgramDescription>>;
  };
};

describe.skipIf(hindrance !== null)('the desktop program', () => {
  let library: string;
  let program: ElectronApplication;
  let page: Page;

  beforeAll(async () => {
    library = mkdtempSync(join(tmpdir(), 'docket-desktop-'));
    const executablePath = findDesktopRuntime();
    if (executablePath === null) throw new Error('The desktop runtime vanished.');
    program = await _electron.launch({ executablePath, args: [root, '--library', library] });
    page = await program.firstWindow();
  });

  afterAll(async () => {
    await program.close();
    rmSync(library, { recursive: true, force: true });
  });

  it('opens one window with the name of the program', async () => {
    expect(await page.title()).toContain('Teardown Docket');
    expect(program.windows()).toHaveLength(1);
  });

  it('shows the page from its own scheme, not from a file or a server', () => {
    expect(new URL(page.url()).protocol).not.toMatch(/^(file|https?|data|about):$/);
  });

  it('answers program.describe through the preload', async () => {
    const answer = await page.evaluate(() =>
      (globalThis as unknown as PageWithCarrier).teardownDocket.call('program.describe', {}),
    );
    expect(answer).toMatchObject({ ok: true, value: { carrier: 'desktop' } });
  });

  it('gives the page neither Node nor the desktop runtime', async () => {
    const seen = await page.evaluate(() =>
      ['require', 'process', 'module', 'Buffer', 'electron', 'ipcRenderer'].filter(
        (name) => name in globalThis,
      ),
    );
    expect(seen).toEqual([]);
  });

  it('opens no second window for the page', async () => {
    const opened = await page.evaluate(() => globalThis.open('https://example.org/') !== null);
    expect(opened).toBe(false);
    expect(program.windows()).toHaveLength(1);
  });
});
