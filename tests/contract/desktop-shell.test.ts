/**
 * The desktop program's shell, as electron/main.ts starts it, on a stand-in for the runtime: what it asks of the
 * runtime, what it refuses a page and a stranger, and that it ends in good order. What the runtime makes of it is for
 * tests/electron, where the runtime is present.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { channels } from '#shared-types/api-contract.ts';

import { pageHeaders } from '../../electron/processes/page-policy.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import type { Observed } from './desktop-stand-in/observed.ts';

const script = fileURLToPath(new URL('./desktop-stand-in/run-desktop.ts', import.meta.url));
let folder: string;
let seen: Observed & { quits: number };
let exitCode: number | null;

beforeAll(async () => {
  folder = makeTemporaryFolder();
  const child = spawn(process.execPath, [script, `${folder}/own`], { stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (said += text));
  [exitCode] = (await once(child, 'close')) as [number | null];
  seen = JSON.parse(said) as typeof seen;
});
afterAll(() => {
  removeFolder(folder);
});

const allOf = (record: Readonly<Record<string, unknown>>) => [...new Set(Object.values(record))];
const ownAddresses = ['docket://app/', 'docket://app/index.html'];
const but = (record: Readonly<Record<string, unknown>>, ...names: string[]) =>
  Object.fromEntries(Object.entries(record).filter(([name]) => !names.includes(name)));

describe('the window', () => {
  test('is one, sandboxed, isolated, without Node, on the page of the program’s own scheme', () => {
    expect(seen.windows).toHaveLength(1);
    expect(seen.windows[0]?.loaded).toEqual(['docket://app/']);
    // Electron's security guide, items 2 to 5 and 12: https://www.electronjs.org/docs/latest/tutorial/security
    const { webPreferences } = seen.windows[0]?.options as { webPreferences: Record<string, unknown> };
    expect(webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webviewTag: false,
    });
    expect(webPreferences.preload).toMatch(/dist[\\/]electron[\\/]preload\.cjs$/);
    for (const loosened of [
      ...['webSecurity', 'allowRunningInsecureContent', 'experimentalFeatures', 'enableBlinkFeatures'],
      ...['nodeIntegrationInWorker', 'nodeIntegrationInSubFrames', 'additionalArguments', 'devTools'],
    ]) {
      expect(webPreferences).not.toHaveProperty(loosened);
    }
  });

  test('goes nowhere else, opens nothing and takes no other page in', () => {
    expect(Object.keys(seen.windowOpen)).toHaveLength(13);
    for (const answer of Object.values(seen.windowOpen)) expect(answer).toEqual({ action: 'deny' });
    expect(seen.openedOutside).toEqual([]);
    for (const own of ownAddresses) expect(seen.navigationPrevented[own]).toBe(false);
    expect(allOf(but(seen.navigationPrevented, ...ownAddresses))).toEqual([true]);
    expect(seen.webviewPrevented).toBe(true);
  });

  test('is granted nothing, and reaches nothing but its own scheme', () => {
    expect(allOf(seen.permissionGranted)).toEqual([false]);
    expect(allOf(seen.permissionChecked)).toEqual([false]);
    const reached = Object.keys(seen.requestCancelled).filter((url) => !seen.requestCancelled[url]);
    expect(reached).toEqual([...ownAddresses, 'blob:docket://app/1']);
  });
});

describe('the scheme of the page', () => {
  test('is announced before the program is ready: standard and secure, and no more than is needed', () => {
    expect(seen.schemesBeforeReady).toBe(true);
    expect(seen.protocols).toEqual(['docket']);
    const privileges = { standard: true, secure: true, supportFetchAPI: true, stream: true };
    expect(seen.schemes).toEqual([{ scheme: 'docket', privileges }]);
  });

  test('serves the page with the same policy as the loopback host, and nothing outside its folder', () => {
    expect(seen.pages['docket://app/']).toMatchObject({ status: 200, headers: pageHeaders });
    expect(seen.pages['docket://app/']?.body).toContain('<!doctype html>');
    for (const [path, { status, headers }] of Object.entries(seen.pages)) {
      expect([path, status]).toEqual([path, path === 'docket://app/' ? 200 : 404]);
      expect(headers).toMatchObject(pageHeaders);
    }
    expect(Object.keys(seen.pages)).toHaveLength(11);
    expect(seen.posted).toBe(404);
  });
});

describe('the line to the page', () => {
  test('has the contract’s channels and the three of its own, and answers the program’s page', () => {
    expect(seen.channels.toSorted()).toEqual(
      [
        ...channels.map((channel) => `call:${channel}`),
        ...['docket:take-in', 'docket:deliver', 'docket:listen'],
      ].toSorted(),
    );
    expect(seen.own).toMatchObject({ ok: true, value: { carrier: 'desktop' } });
  });

  test('refuses every channel to every other frame, and to one that is gone', () => {
    expect(seen.foreign.length).toBeGreaterThan(12 * channels.length);
    for (const answer of seen.foreign) {
      expect(answer).toMatchObject({ ok: false, error: { code: 'carrier-refused' } });
    }
  });
});

test('the program ends once the engine has let go of the library, without a fault', () => {
  expect(seen.errors).toEqual([]);
  expect(seen.serviceNames).toEqual(['Teardown Docket engine']);
  // Asked once by the user, and once by itself when the library is closed.
  expect(seen.quits).toBe(2);
  expect(exitCode).toBe(0);
});
