/** The one window: sandboxed, on our own page and nowhere else. */
import { BrowserWindow, session, shell } from 'electron';

import { entryPath } from '../processes/entry-table.ts';
import { pageOrigin } from './bridge-channels.ts';

/** Addresses outside that a user may be sent to, in their own browser. */
const outsideHosts = new Set<string>();

export function openWindow(): BrowserWindow {
  const window = new BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 960,
    minHeight: 600,
    show: false,
    backgroundColor: '#eceae5',
    title: 'Teardown Docket',
    webPreferences: {
      preload: entryPath('preload'),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webviewTag: false,
      spellcheck: false,
    },
  });
  const { webContents } = window;
  webContents.setWindowOpenHandler(({ url }) => {
    openOutside(url);
    return { action: 'deny' };
  });
  webContents.on('will-navigate', (event) => {
    if (!event.url.startsWith(`${pageOrigin}/`)) event.preventDefault();
  });
  webContents.on('will-attach-webview', (event) => {
    event.preventDefault();
  });
  window.once('ready-to-show', () => {
    window.show();
  });
  void window.loadURL(`${pageOrigin}/`);
  return window;
}

/** Nothing in this program needs a camera, a place, a notification: all are denied. */
export function denyPermissions(): void {
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => {
    answer(false);
  });
  session.defaultSession.setPermissionCheckHandler(() => false);
  // The page reaches nothing but its own scheme.
  session.defaultSession.webRequest.onBeforeRequest((details, answer) => {
    const own = details.url.startsWith(`${pageOrigin}/`) || details.url.startsWith('blob:');
    const inspector = details.url.startsWith('devtools:');
    answer({ cancel: !own && !inspector });
  });
}

function openOutside(address: string): void {
  const url = URL.parse(address);
  if (url?.protocol === 'https:' && outsideHosts.has(url.host)) void shell.openExternal(url.href);
}
