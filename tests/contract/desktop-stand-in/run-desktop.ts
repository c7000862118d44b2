/**
 * Run as a process of its own: the desktop program, electron/main.ts as it is, on the stand-in runtime. Does to it what
 * a page, a stranger's page and the runtime would do, and prints what came of it as JSON. argv[2]: the library folder.
 */
import { registerHooks } from 'node:module';
import { once } from 'node:events';

import type { Observed } from './observed.ts';

const runtimeUrl = new URL('./runtime.ts', import.meta.url).href;
registerHooks({
  resolve: (specifier, context, next) =>
    specifier === 'electron' ? { url: runtimeUrl, shortCircuit: true } : next(specifier, context),
});
const { app, shown, told } = await import('./runtime.ts');

const [, , library = ''] = process.argv;
process.argv = [process.execPath, 'electron/main.ts', '--library', library];
await import('../../../electron/main.ts');

// The shell opens its window when the engine is ready.
await shown.promise;
const [window] = told.windows;
if (!window) throw new Error(`no window: ${told.errors.join(' ')}`);
const { webContents } = window;

function prevented(event: string, details: object): boolean {
  let answer = false;
  webContents.emit(event, { ...details, preventDefault: () => (answer = true) });
  return answer;
}

const addresses = [
  'docket://app/',
  'docket://app/index.html',
  'docket://app.example.org/',
  'docket://other/',
  'docket:app',
  'https://example.org/',
  'http://127.0.0.1:8080/',
  'file:///etc/passwd',
  'data:text/html,x',
  'javascript:alert(1)',
  'about:blank',
  'blob:docket://app/1',
  'ws://127.0.0.1/',
];
const ofEach = <Value>(names: readonly string[], observe: (name: string) => Value): Record<string, Value> =>
  Object.fromEntries(names.map((name) => [name, observe(name)]));

function cancelled(url: string): boolean {
  let answer = false;
  told.beforeRequest?.({ url }, (verdict: { cancel: boolean }) => (answer = verdict.cancel));
  return answer;
}

function granted(permission: string): boolean {
  let answer = true;
  told.permissionRequest?.({}, permission, (verdict: boolean) => (answer = verdict));
  return answer;
}

const permissions = [
  ...['clipboard-read', 'clipboard-sanitized-write', 'display-capture', 'fullscreen', 'geolocation', 'hid'],
  ...['idle-detection', 'media', 'mediaKeySystem', 'midi', 'midiSysex', 'notifications', 'openExternal'],
  ...['pointerLock', 'serial', 'speaker-selection', 'storage-access', 'unknown', 'usb', 'window-management'],
];

async function page(path: string, method = 'GET') {
  const serve = told.protocols.get('docket');
  if (!serve) throw new Error('nobody serves the page');
  const response = await serve(new Request(path, { method }));
  return {
    status: response.status,
    headers: Object.fromEntries(response.headers),
    body: await response.text(),
  };
}

async function pages(paths: readonly string[], method = 'GET') {
  const answers: Observed['pages'] = {};
  for (const path of paths) answers[path] = await page(path, method);
  return answers;
}

const sender = { send: () => undefined, once: () => undefined, isDestroyed: () => false };
async function call(
  channel: string,
  senderFrame: { url: string } | null,
  request: unknown,
): Promise<unknown> {
  return told.channels.get(channel)?.({ senderFrame, sender }, request);
}
const frames = [null, { url: '' }, ...addresses.slice(2).map((url) => ({ url }))];

const observed: Observed = {
  schemes: told.schemes,
  schemesBeforeReady: told.schemesBeforeReady,
  protocols: [...told.protocols.keys()],
  windows: told.windows.map(({ options, loaded, shown }) => ({ options, loaded, shown })),
  windowOpen: ofEach(addresses, (url) => webContents.openHandler?.({ url })),
  openedOutside: told.openedOutside,
  navigationPrevented: ofEach(addresses, (url) => prevented('will-navigate', { url })),
  webviewPrevented: prevented('will-attach-webview', {}),
  permissionGranted: ofEach(permissions, granted),
  permissionChecked: ofEach(permissions, (name) => told.permissionCheck?.({}, name)),
  requestCancelled: ofEach(addresses, cancelled),
  channels: [...told.channels.keys()],
  pages: await pages(
    [
      'docket://app/',
      'docket://other/',
      ...['/package.json', '/../package.json', '/%2e%2e/package.json', '/..%2fpackage.json'],
      ...['/assets/none.js', '/picture/display/x', '/picture/..%2f..', '/document/x', '/none'],
    ].map((path) => (path.startsWith('/') ? `docket://app${path}` : path)),
  ),
  posted: (await page('docket://app/', 'POST')).status,
  own: await call('call:program.describe', { url: 'docket://app/' }, {}),
  foreign: await Promise.all(
    [...told.channels.keys()].flatMap((channel) => frames.map((frame) => call(channel, frame, {}))),
  ),
  serviceNames: told.serviceNames,
  errors: told.errors,
};

const quit = once(app, 'quit');
app.quit();
await quit;
process.stdout.write(
  JSON.stringify({ ...observed, quits: told.quits } satisfies Observed & { quits: number }),
);
