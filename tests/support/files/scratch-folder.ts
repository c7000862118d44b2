import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder of the running test's own, removed when the test is over. */
export function scratchFolder(): string {
  const folder = newScratchFolder();
  onTestFinished(() => {
    removeFolder(folder);
  });
  return folder;
}

/** For properties, which need one a run: whoever asks removes it with removeFolder(). */
export function newScratchFolder(): string {
  return mkdtempSync(join(tmpdir(), 'teardown-docket-'));
}

export function removeFolder(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}
