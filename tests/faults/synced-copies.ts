/**
 * Real files, and beside them what of a folder is safe from a power cut: of each file its content at its last sync, of
 * each folder its names at its last sync, as POSIX has it (fsync(2): syncing a file does not sync its name). It knows
 * every step that the engine takes with its files; what other processes write there is not safe until the engine syncs it.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

import type { DurableFiles } from '../../electron/files/durable-files.ts';

/** A file, whatever its name is now. */
type Content = { synced: Buffer | null };
type Entry = Content | 'folder';

/** Path below the folder -> what is there. A file that was never synced may have its name and no content. */
export type Remains = ReadonlyMap<string, Buffer | 'folder'>;

export type SyncedCopies = {
  readonly files: DurableFiles;
  /**
   * What a power cut would leave now. A disk may have lost names that were not synced, or have written them before the
   * contents that belong to them.
   */
  remains(unsyncedNames: 'lost' | 'kept'): Remains;
};

/** @param beforeStep told of each step that changes something, before it is taken */
export function syncedCopies(
  real: DurableFiles,
  folder: string,
  beforeStep: (step: keyof DurableFiles) => void,
): SyncedCopies {
  const contents = new Map<string, Content>();
  const names = new Map<string, ReadonlyMap<string, Entry>>();

  const contentAt = (path: string): Content => {
    const known = contents.get(path) ?? { synced: null };
    contents.set(path, known);
    return known;
  };
  const entriesOf = (path: string): Map<string, Entry> =>
    new Map(
      readdirSync(path).map((name) => {
        const isFolder = statSync(join(path, name)).isDirectory();
        return [name, isFolder ? 'folder' : contentAt(join(path, name))];
      }),
    );

  const files: DurableFiles = {
    ...real,
    ensureFolder: (path) => {
      beforeStep('ensureFolder');
      return real.ensureFolder(path);
    },
    copyHashing: (source, target) => {
      beforeStep('copyHashing');
      return real.copyHashing(source, target);
    },
    write: (path, content) => {
      beforeStep('write');
      return real.write(path, content);
    },
    seal: (path) => {
      beforeStep('seal');
      return real.seal(path);
    },
    syncFile: async (path) => {
      beforeStep('syncFile');
      await real.syncFile(path);
      contentAt(path).synced = readFileSync(path);
    },
    syncFolder: async (path) => {
      beforeStep('syncFolder');
      await real.syncFolder(path);
      names.set(path, entriesOf(path));
    },
    rename: (from, to) => {
      beforeStep('rename');
      // In one go with what is known of it: another step may be at work at the same time.
      renameSync(from, to);
      contents.set(to, contentAt(from));
      contents.delete(from);
      return Promise.resolve();
    },
    unlink: async (path) => {
      beforeStep('unlink');
      await real.unlink(path);
      contents.delete(path);
    },
  };

  function remains(unsyncedNames: 'lost' | 'kept'): Remains {
    const left = new Map<string, Buffer | 'folder'>();
    const walk = (path: string, below: string) => {
      const entries =
        unsyncedNames === 'kept' ? entriesOf(path) : (names.get(path) ?? new Map<string, Entry>());
      for (const [name, entry] of entries) {
        left.set(join(below, name), entry === 'folder' ? entry : (entry.synced ?? Buffer.alloc(0)));
        if (entry === 'folder') walk(join(path, name), join(below, name));
      }
    };
    walk(folder, '');
    return left;
  }

  return { files, remains };
}

/** The same for what is the same to the byte. */
export function fingerprintOf(remains: Remains): string {
  const hash = createHash('sha256');
  for (const path of [...remains.keys()].sort()) hash.update(`${path}\0`).update(remains.get(path) ?? '');
  return hash.digest('hex');
}

/** Puts what was left where a program finds it. */
export function layOut(remains: Remains, folder: string): void {
  mkdirSync(folder, { recursive: true });
  for (const [path, content] of remains) {
    const place = join(folder, path);
    mkdirSync(content === 'folder' ? place : dirname(place), { recursive: true });
    if (content !== 'folder') writeFileSync(place, content);
  }
}
