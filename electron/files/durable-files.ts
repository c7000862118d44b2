/**
 * The steps of durable writing, each under its own name, so that whoever stores something can be handed files
 * that fail, die or forget at any one of them.
 *
 * Errors of every step: `disk-full {what}` and `disk-refused {what, reason}` with the path as `what`; the rest are
 * the system's own. Only `copyHashing` also reads a file of the user's: it throws `file-unreadable {name, reason}`.
 */
import { createHash } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename, chmod, stat, unlink, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { asDiskError, asSourceError, systemCode } from './disk-error.ts';

/** `sha256`: 64 lower-case hex digits. */
export type HashedCopy = { readonly sha256: string; readonly bytes: number };
export type FileStat = { readonly bytes: number; readonly folder: boolean };

export type DurableFiles = {
  /** Makes one folder in a parent that is there. Answers whether it had to. */
  ensureFolder(path: string): Promise<boolean>;
  /** Streams `source` into the new file `target`, hashing what it writes. `target` must not be there. Not synced. */
  copyHashing(source: string, target: string): Promise<HashedCopy>;
  /** Writes a whole file, replacing what was there. Not synced. */
  write(path: string, content: Uint8Array | string): Promise<void>;
  /** Returns when the file's content is on the disk itself. */
  syncFile(path: string): Promise<void>;
  /** Takes the permission to write from everyone (0444). */
  seal(path: string): Promise<void>;
  /** Within one file system; replaces what `to` was. */
  rename(from: string, to: string): Promise<void>;
  /** Returns when the names in the folder are on the disk itself. Does nothing on Windows, which cannot. */
  syncFolder(path: string): Promise<void>;
  unlink(path: string): Promise<void>;
  /** Names in the folder, sorted; none where there is no such folder. */
  list(path: string): Promise<readonly string[]>;
  /** Null where there is nothing. */
  stat(path: string): Promise<FileStat | null>;
  read(path: string): Promise<Uint8Array>;
  /** Streams the file and answers its SHA-256 and length. */
  hash(path: string): Promise<HashedCopy>;
};
export type FileStep = keyof DurableFiles;

/** Pieces in which files are copied and hashed, in bytes. */
const pieceBytes = 1024 * 1024;

/** The real files, on node:fs. */
export function createDurableFiles(): DurableFiles {
  return {
    ensureFolder: (path) => onDisk(path, () => makeFolder(path)),
    copyHashing: (source, target) => copyHashing(source, target),
    write: (path, content) => onDisk(path, () => writeFile(path, content)),
    // Windows flushes only through a handle that may write; the others do not mind.
    syncFile: (path) => onDisk(path, () => syncThrough(path, 'r+')),
    seal: (path) => onDisk(path, () => chmod(path, 0o444)),
    rename: (from, to) => onDisk(to, () => rename(from, to)),
    syncFolder: (path) =>
      process.platform === 'win32' ? Promise.resolve() : onDisk(path, () => syncThrough(path, 'r')),
    unlink: (path) => onDisk(path, () => unlink(path)),
    list: (path) => onDisk(path, () => listFolder(path)),
    stat: (path) => onDisk(path, () => statOrNull(path)),
    read: (path) => onDisk(path, () => readFile(path)),
    hash: (path) => onDisk(path, () => hashFile(path)),
  };
}

async function onDisk<Value>(path: string, step: () => Promise<Value>): Promise<Value> {
  try {
    return await step();
  } catch (error) {
    throw asDiskError(error, path);
  }
}

async function makeFolder(path: string): Promise<boolean> {
  try {
    await mkdir(path);
    return true;
  } catch (error) {
    if (systemCode(error) !== 'EEXIST') throw error;
    if (!(await stat(path)).isDirectory()) throw error;
    return false;
  }
}

async function copyHashing(source: string, target: string): Promise<HashedCopy> {
  const name = basename(source);
  const from = await orSourceError(name, () => open(source, 'r'));
  try {
    const to = await onDisk(target, () => open(target, 'wx', 0o644));
    try {
      const hash = createHash('sha256');
      const piece = Buffer.allocUnsafe(pieceBytes);
      let bytes = 0;
      for (;;) {
        const { bytesRead } = await orSourceError(name, () => from.read(piece, 0, pieceBytes, null));
        if (bytesRead === 0) break;
        const filled = piece.subarray(0, bytesRead);
        hash.update(filled);
        // writeFile on a handle goes on until all is written; a plain write may stop short on a full disk.
        await onDisk(target, () => to.writeFile(filled));
        bytes += bytesRead;
        reachFaultPoint('original.piece-copied');
      }
      return { sha256: hash.digest('hex'), bytes };
    } finally {
      await to.close();
    }
  } finally {
    await from.close();
  }
}

async function orSourceError<Value>(name: string, step: () => Promise<Value>): Promise<Value> {
  try {
    return await step();
  } catch (error) {
    throw asSourceError(error, name);
  }
}

async function syncThrough(path: string, flags: 'r' | 'r+'): Promise<void> {
  const handle = await open(path, flags);
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function listFolder(path: string): Promise<readonly string[]> {
  try {
    return (await readdir(path)).sort();
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return [];
    throw error;
  }
}

async function statOrNull(path: string): Promise<FileStat | null> {
  try {
    const found = await stat(path);
    return { bytes: found.size, folder: found.isDirectory() };
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return null;
    throw error;
  }
}

async function hashFile(path: string): Promise<HashedCopy> {
  const handle = await open(path, 'r');
  try {
    const hash = createHash('sha256');
    let bytes = 0;
    for await (const piece of handle.createReadStream({ highWaterMark: pieceBytes, autoClose: false })) {
      const filled = piece as Buffer;
      hash.update(filled);
      bytes += filled.length;
    }
    return { sha256: hash.digest('hex'), bytes };
  } finally {
    await handle.close();
  }
}
