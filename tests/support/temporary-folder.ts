import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { onTestFinished } from 'vitest';

/** A folder of the running test's own, gone when it ends. */
export function temporaryFolder(): string {
  const folder = makeTemporaryFolder();
  onTestFinished(() => {
    removeFolder(folder);
  });
  return folder;
}

/** For folders that several tests of a file share: whoever makes it removes it. */
export function makeTemporaryFolder(): string {
  return mkdtempSync(join(tmpdir(), 'docket-test-'));
}

export function removeFolder(folder: string): void {
  rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
