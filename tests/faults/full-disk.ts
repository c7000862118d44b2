/** Files on a disk that is full for one step, or for all that write, until some space is freed. */
import { AppError } from '#shared-types/errors.ts';

import type { DurableFiles } from '../../electron/files/durable-files.ts';

/** The steps that take room on the disk. */
export const writingSteps = [
  'ensureFolder',
  'copyHashing',
  'write',
  'syncFile',
  'rename',
  'syncFolder',
] as const satisfies readonly (keyof DurableFiles)[];
export type WritingStep = (typeof writingSteps)[number];

export type FullDisk = {
  readonly files: DurableFiles;
  fill(step: WritingStep | 'every'): void;
  free(): void;
  /** How many steps found the disk full since it was last filled. */
  refusals(): number;
};

export function createFullDisk(real: DurableFiles): FullDisk {
  let full: WritingStep | 'every' | null = null;
  let refusals = 0;

  const unlessFull = <Value>(step: WritingStep, path: string, work: () => Promise<Value>): Promise<Value> => {
    if (full !== step && full !== 'every') return work();
    refusals += 1;
    return Promise.reject(new AppError('disk-full', { what: path }, { retryable: true }));
  };

  return {
    files: {
      ...real,
      ensureFolder: (path) => unlessFull('ensureFolder', path, () => real.ensureFolder(path)),
      async copyHashing(source, target) {
        // A disk fills up in the middle of a file: half of it is there.
        if (full === 'copyHashing' || full === 'every') {
          const content = await real.read(source);
          await real.write(target, content.subarray(0, content.length / 2));
        }
        return unlessFull('copyHashing', target, () => real.copyHashing(source, target));
      },
      write: (path, content) => unlessFull('write', path, () => real.write(path, content)),
      syncFile: (path) => unlessFull('syncFile', path, () => real.syncFile(path)),
      rename: (from, to) => unlessFull('rename', to, () => real.rename(from, to)),
      syncFolder: (path) => unlessFull('syncFolder', path, () => real.syncFolder(path)),
    },
    fill(step) {
      full = step;
      refusals = 0;
    },
    free() {
      full = null;
    },
    refusals: () => refusals,
  };
}
