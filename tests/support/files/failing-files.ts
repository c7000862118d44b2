/** Files that go wrong at one named step, as a full disk, a refusing folder or a killed process would. */
import { AppError } from '#shared-types/errors.ts';
import type { DurableFiles, FileStep } from '../../../electron/files/durable-files.ts';

export type FileFailure = {
  readonly step: FileStep | 'any';
  /** At which call of the step, or of all steps together: 1 is the first. */
  readonly nth: number;
  /** `killed`: this step and every later one of any name does nothing but throw ProcessKilled. */
  readonly mode: 'full' | 'refused' | 'killed';
};

export class ProcessKilled extends Error {
  constructor() {
    super('the process was killed here');
    this.name = 'ProcessKilled';
  }
}

export type FailingFiles = DurableFiles & {
  /** Whether the failure has happened: a test that never reached it has tested nothing. */
  failed(): boolean;
};

export function failingFiles(real: DurableFiles, failure: FileFailure): FailingFiles {
  let calls = 0;
  let failed = false;

  async function guard<Value>(
    step: FileStep,
    target: string,
    work: () => Promise<Value>,
    begin: () => Promise<void> = () => Promise.resolve(),
  ): Promise<Value> {
    if (failed && failure.mode === 'killed') throw new ProcessKilled();
    const counts = failure.step === 'any' || step === failure.step;
    if (counts) calls += 1;
    if (!counts || calls !== failure.nth) return work();
    failed = true;
    if (failure.mode === 'refused') throw new AppError('disk-refused', { what: target, reason: 'test' });
    // A disk fills up, and a process dies, in the middle of a write: half of it is there.
    await begin();
    throw failure.mode === 'full' ? new AppError('disk-full', { what: target }) : new ProcessKilled();
  }

  return {
    failed: () => failed,
    ensureFolder: (path) => guard('ensureFolder', path, () => real.ensureFolder(path)),
    copyHashing: (source, target) =>
      guard(
        'copyHashing',
        target,
        () => real.copyHashing(source, target),
        async () => {
          await real.write(target, firstHalf(await real.read(source)));
        },
      ),
    write: (path, content) =>
      guard(
        'write',
        path,
        () => real.write(path, content),
        () => real.write(path, firstHalf(Buffer.from(content))),
      ),
    syncFile: (path) => guard('syncFile', path, () => real.syncFile(path)),
    seal: (path) => guard('seal', path, () => real.seal(path)),
    rename: (from, to) => guard('rename', to, () => real.rename(from, to)),
    syncFolder: (path) => guard('syncFolder', path, () => real.syncFolder(path)),
    unlink: (path) => guard('unlink', path, () => real.unlink(path)),
    list: (path) => guard('list', path, () => real.list(path)),
    stat: (path) => guard('stat', path, () => real.stat(path)),
    read: (path) => guard('read', path, () => real.read(path)),
    hash: (path) => guard('hash', path, () => real.hash(path)),
  };
}

function firstHalf(content: Uint8Array): Uint8Array {
  return content.subarray(0, Math.floor(content.length / 2));
}
