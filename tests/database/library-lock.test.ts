import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { hostname } from 'node:os';

import { describe, expect, onTestFinished, test } from 'vitest';

import { AppError } from '#shared-types/errors.ts';

import { lockLibrary } from '../../electron/database/library-lock.ts';
import { shippedPath } from '../../electron/processes/entry-table.ts';
import { testInstant } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const holder = { program: 'Teardown Docket (test)', since: testInstant };

/** Another process that holds the library until it is killed, and is thorough with what nothing names any more. */
async function otherHolder(folder: string) {
  const script = `
    import { lockLibrary } from '${shippedPath('electron', 'database', 'library-lock.ts')}';
    lockLibrary(${JSON.stringify(folder)}, ${JSON.stringify(holder)});
    gc();
    setImmediate(() => {
      gc();
      console.log('held');
    });
    setInterval(() => {}, 1e6);`;
  const child = spawn(process.execPath, ['--expose-gc', '--input-type=module', '--eval', script], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  await once(child.stdout, 'data');
  return child;
}

function refusal(folder: string): AppError {
  try {
    lockLibrary(folder, holder).release();
  } catch (error) {
    if (error instanceof AppError) return error;
    throw error;
  }
  throw new Error('the lock was given twice');
}

describe('a library held by another process', () => {
  test('is refused, and the sentence says who holds it', async () => {
    const folder = temporaryFolder();
    const other = await otherHolder(folder);
    const refused = refusal(folder);
    expect(refused.code).toBe('library-locked');
    expect(refused.message).toContain(String(other.pid));
    expect(refused.message).toContain(hostname());
    expect(refused.message).toContain('Teardown Docket (test)');
  });

  test('is free again as soon as that process is killed', async () => {
    const folder = temporaryFolder();
    const other = await otherHolder(folder);
    other.kill('SIGKILL');
    await once(other, 'exit');
    expect(() => {
      lockLibrary(folder, holder).release();
    }).not.toThrow();
  });
});
