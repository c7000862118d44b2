import { dirname } from 'node:path';
import { AppError } from '#shared-types/errors.ts';
import type { DurableFiles } from './durable-files.ts';

export type FolderKeeper = {
  /** Makes a folder at or below the root and those above it, so that a power cut cannot take their names back. */
  ensure(path: string): Promise<void>;
  /** Somebody else took folders away: each is looked at anew when it is next asked for. */
  forget(): void;
};

/**
 * A folder's name is safe once its parent is synced. That a folder is there says nothing about it: whoever made it may
 * have died before the sync. So each one, from the root down, is synced once in a keeper's life, new or not.
 */
export function createFolderKeeper(files: DurableFiles, root: string): FolderKeeper {
  const safe = new Map<string, Promise<void>>();

  async function makeRootSafe(): Promise<void> {
    const isNew = await files.ensureFolder(root);
    try {
      await files.syncFolder(dirname(root));
    } catch (error) {
      // The folder that holds an old root may be one this user is not allowed to open; its names are not ours to keep.
      const mayBeLeft = !isNew && error instanceof AppError && error.code === 'disk-refused';
      if (!mayBeLeft) throw error;
    }
  }

  async function makeSafe(path: string): Promise<void> {
    if (path === root) return makeRootSafe();
    const parent = dirname(path);
    if (parent === path) throw new Error(`not below the folder ${root}`);
    await ensure(parent);
    await files.ensureFolder(path);
    await files.syncFolder(parent);
  }

  async function ensure(path: string): Promise<void> {
    const begun = safe.get(path);
    if (begun !== undefined) return begun;
    const work = makeSafe(path);
    safe.set(path, work);
    try {
      await work;
    } catch (error) {
      safe.delete(path);
      throw error;
    }
  }

  return {
    ensure,
    forget: () => {
      safe.clear();
    },
  };
}
