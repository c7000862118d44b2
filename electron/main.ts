/** The desktop program: one instance, one window, one engine. No database and no picture is ever opened in this process. */
import { app, BrowserWindow, dialog, ipcMain } from 'electron';
import { parseArgs } from 'node:util';

import { createEngineLink } from './processes/engine-link.ts';
import { createEventHub } from './processes/event-hub.ts';
import { libraryFolders } from './processes/library-folder.ts';
import { setMenu } from './shell/menu.ts';
import { announcePageScheme, servePageScheme } from './shell/page-scheme.ts';
import { registerChannels } from './shell/registration.ts';
import { saveDocument } from './shell/save-document.ts';
import { createUtilityBroker } from './shell/utility-broker.ts';
import { denyPermissions, openWindow } from './shell/window.ts';

const { values } = parseArgs({
  args: process.argv.slice(app.isPackaged ? 1 : 2),
  options: { library: { type: 'string' } },
  strict: false,
});

announcePageScheme();
if (app.requestSingleInstanceLock()) void run();
else app.quit();

async function run(): Promise<void> {
  await app.whenReady();
  const hub = createEventHub();
  const link = createEngineLink({
    broker: createUtilityBroker(),
    folders: libraryFolders(typeof values.library === 'string' ? values.library : null),
    carrier: 'desktop',
    library: 'own',
    publish: hub.publish,
  });
  denyPermissions();
  servePageScheme(link);
  registerChannels(ipcMain, {
    link,
    hub,
    saveAs: (document) => saveDocument(BrowserWindow.getFocusedWindow(), document),
  });
  setMenu();

  const started = await link.started;
  if (!started.ok) {
    dialog.showErrorBox('Teardown Docket', started.error.message);
    app.quit();
    return;
  }
  openWindow();
  app.on('second-instance', () => BrowserWindow.getAllWindows()[0]?.focus());
  app.on('activate', () => {
    if (BrowserWindow.getAllWindows().length === 0) openWindow();
  });
  app.on('window-all-closed', () => {
    app.quit();
  });
  closeBeforeQuitting(link);
}

/** Saving never waits for this: it only lets go of the library in good order. */
function closeBeforeQuitting(link: { close(): Promise<void> }): void {
  let closed = false;
  app.on('before-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    void link.close().finally(() => {
      closed = true;
      app.quit();
    });
  });
}
