import { dialog, type BrowserWindow } from 'electron';
import { copyFile } from 'node:fs/promises';

import type { ServedFile } from '../processes/engine-messages.ts';

/** The save dialog; false where the user thought better of it. */
export async function saveDocument(window: BrowserWindow | null, document: ServedFile): Promise<boolean> {
  const options = { defaultPath: document.fileName };
  const answer = window ? await dialog.showSaveDialog(window, options) : await dialog.showSaveDialog(options);
  if (answer.canceled) return false;
  await copyFile(document.file, answer.filePath);
  return true;
}
