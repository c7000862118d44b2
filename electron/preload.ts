/** Bundled to one CommonJS file and run in the sandbox: gives the page the bridge and nothing else. */
import { contextBridge, ipcRenderer, webUtils } from 'electron';

import { createBridge } from './shell/bridge.ts';

type DroppedFile = Parameters<typeof webUtils.getPathForFile>[0] & {
  readonly name: string;
  readonly size: number;
};

contextBridge.exposeInMainWorld(
  'teardownDocket',
  createBridge<DroppedFile>(ipcRenderer, (file) => webUtils.getPathForFile(file)),
);
