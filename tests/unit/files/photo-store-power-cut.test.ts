import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createDurableFiles } from '../../../electron/files/durable-files.ts';
import { createPhotoStore } from '../../../electron/files/photo-store.ts';
import { failingFiles, ProcessKilled } from '../../support/files/failing-files.ts';
import { powerCutFiles } from '../../support/files/power-cut-files.ts';
import { newScratchFolder, removeFolder, scratchFolder } from '../../support/files/scratch-folder.ts';

// FIPS 180-4: SHA-256 of "abc".
const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const real = createDurableFiles();
/** Above the number of steps of one import; the first test says so. */
const steps = 30;

type Run = {
  readonly root: string;
  readonly source: string;
  readonly disk: ReturnType<typeof powerCutFiles>;
};

async function onNewDisk(check: (run: Run) => Promise<void>): Promise<void> {
  const folder = newScratchFolder();
  try {
    const source = join(folder, 'source.jpg');
    writeFileSync(source, 'abc');
    await check({ root: join(folder, 'store'), source, disk: powerCutFiles(real) });
  } finally {
    removeFolder(folder);
  }
}

/** Imports with a process that is killed at the given step; answers whether the import was acknowledged. */
async function importUntilKilled(run: Run, killAt: number): Promise<boolean> {
  const files = failingFiles(run.disk, { step: 'any', nth: killAt, mode: 'killed' });
  try {
    await createPhotoStore(run.root, files).addOriginal(run.source, 'front.jpg');
    return true;
  } catch (error) {
    if (!(error instanceof ProcessKilled)) throw error;
    return false;
  }
}

function originalIn(root: string): string | null {
  const path = createPhotoStore(root, real).originalPath(abc);
  return existsSync(path) ? readFileSync(path, 'latin1') : null;
}

const killAt = fc.integer({ min: 1, max: steps });
const survivors = fc.array(fc.boolean(), { minLength: 12, maxLength: 12 });
const survives = (which: readonly boolean[]) => (index: number) => which[index] ?? false;

describe('an original after a power cut', () => {
  it('is reached at fewer steps than are tried', async () => {
    await onNewDisk(async (run) => {
      expect(await importUntilKilled(run, steps)).toBe(true);
    });
  });

  it('is whole or absent, at every step, when nothing unsynced survives', async () => {
    const seen = new Set<string | null>();
    for (let at = 1; at <= steps; at += 1) {
      await onNewDisk(async (run) => {
        const acknowledged = await importUntilKilled(run, at);
        run.disk.cutPower();
        const found = originalIn(run.root);
        seen.add(found);
        expect(['abc', null]).toContain(found);
        if (acknowledged) expect(found).toBe('abc');
      });
    }
    expect(seen).toEqual(new Set([null, 'abc']));
  });

  it('is whole or absent, whatever of the unsynced survives, and whole once it was acknowledged', async () => {
    await fc.assert(
      fc.asyncProperty(killAt, survivors, (at, which) =>
        onNewDisk(async (run) => {
          const acknowledged = await importUntilKilled(run, at);
          run.disk.cutPower(survives(which));
          expect(acknowledged ? ['abc'] : ['abc', null]).toContain(originalIn(run.root));
        }),
      ),
      { numRuns: 150, seed: 1 },
    );
  });

  describe('when a later process finished what a killed one began', () => {
    async function finishAndCut(run: Run, at: number, kept?: (index: number) => boolean): Promise<void> {
      await importUntilKilled(run, at);
      const store = createPhotoStore(run.root, run.disk);
      await store.clearIncoming();
      await store.addOriginal(run.source, 'front.jpg');
      run.disk.cutPower(kept);
      expect(originalIn(run.root)).toBe('abc');
    }

    it('is whole, at every step, when nothing unsynced survives', async () => {
      for (let at = 1; at <= steps; at += 1) await onNewDisk((run) => finishAndCut(run, at));
    });

    it('is whole, whatever of the unsynced survives', async () => {
      await fc.assert(
        fc.asyncProperty(killAt, survivors, (at, which) =>
          onNewDisk((run) => finishAndCut(run, at, survives(which))),
        ),
        { numRuns: 100, seed: 2 },
      );
    });
  });

  it('leaves at most a file that the next start clears away', async () => {
    for (let at = 1; at <= steps; at += 1) {
      await onNewDisk(async (run) => {
        await importUntilKilled(run, at);
        const store = createPhotoStore(run.root, real);
        await store.clearIncoming();
        expect(readdirSync(join(run.root, 'incoming'))).toEqual([]);
      });
    }
  });
});

describe('a derived picture after a power cut', () => {
  it('is whole or absent, whatever of the unsynced survives', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 10 }), survivors, (at, which) =>
        onNewDisk(async (run) => {
          await createPhotoStore(run.root, run.disk).makeFolders();
          const files = failingFiles(run.disk, { step: 'any', nth: at, mode: 'killed' });
          const store = createPhotoStore(run.root, files);
          const temp = store.derivativeTempPath(abc, 'display');
          await run.disk.write(temp, 'picture');
          await store.commitDerivative(temp, abc, 'display').catch((error: unknown) => {
            if (!(error instanceof ProcessKilled)) throw error;
          });
          run.disk.cutPower(survives(which));
          const path = store.derivativePath(abc, 'display');
          expect(['picture', null]).toContain(existsSync(path) ? readFileSync(path, 'latin1') : null);
        }),
      ),
      { numRuns: 60, seed: 3 },
    );
  });
});

describe('the disk that loses what was not synced', () => {
  it('loses content, new names, renames and removals, and keeps what was synced', async () => {
    const folder = scratchFolder();
    const disk = powerCutFiles(real);
    const at = (name: string) => join(folder, name);
    for (const name of ['kept', 'renamed', 'removed']) {
      await disk.write(at(name), name);
      await disk.syncFile(at(name));
    }
    await disk.syncFolder(folder);
    expect(disk.unsynced()).toBe(0);
    await disk.write(at('empty'), 'content that is not synced');
    await disk.syncFolder(folder);
    await disk.write(at('nameless'), 'x');
    await disk.syncFile(at('nameless'));
    await disk.rename(at('renamed'), at('new-name'));
    await disk.unlink(at('removed'));
    expect(disk.unsynced()).toBe(4);
    disk.cutPower();
    expect(readdirSync(folder).sort()).toEqual(['empty', 'kept', 'removed', 'renamed']);
    expect(readFileSync(at('empty'), 'utf8')).toBe('');
    expect(readFileSync(at('removed'), 'utf8')).toBe('removed');
  });
});
