/**
 * The photo store: a folder of original pictures named by their SHA-256, never changed once they are there,
 * and of pictures derived from them, which are cache.
 *
 *   originals/ab/<sha256>                        ab: the first two hex digits; no extension; read-only
 *   derived/ab/<sha256>.<kind>-<version>.<ext>
 *   plates/ab/<sha256>.plate-<version>.<crop>.<view>.<width>x<height>.jpg
 *   incoming/original-<uuid>.part                on its way in
 *   incoming/derivative-<kind>-<uuid>.part     (a plate's too)
 *
 * An original is copied into incoming/, synced, sealed, renamed to its name, and the folder is synced; the library's
 * row comes after that. Whatever dies in between leaves the original whole or absent, and at worst a .part file.
 */
import { randomUUID } from 'node:crypto';
import { dirname, join } from 'node:path';
import { derivativeKinds, type DerivativeKind } from '../images/derivative-kinds.ts';
import { AppError } from '#shared-types/errors.ts';
import { originalReasons } from '#shared-types/texts/disk.ts';
import type { DurableFiles, HashedCopy } from './durable-files.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { systemCode } from './disk-error.ts';
import { createFolderKeeper } from './folder-keeper.ts';
import { plateFileName, plateFolder, touchIfThere, trimPlates, type PlateCut } from './plate-cache.ts';
import { sweepOriginals, type StoreSweep } from './store-sweep.ts';

export type AddedOriginal = {
  readonly sha256: string;
  readonly bytes: number;
  /** The store had this very content already. */
  readonly existed: boolean;
};

/** A hashed copy of a user's file in incoming/, not yet an original. */
export type StagedOriginal = HashedCopy & { readonly path: string; readonly sourceName: string };

export type PhotoStore = {
  /**
   * Copies the user's file into incoming/, where it can be looked at before it is kept. `sourceName` is what errors
   * call it. Every staged file is handed to dropStaged() in the end, kept or not.
   * Errors: `disk-full`, `disk-refused`, `file-unreadable`, `file-empty`.
   */
  stageOriginal(sourcePath: string, sourceName: string): Promise<StagedOriginal>;
  /**
   * Gives a staged file its place among the originals. Returns when it cannot be lost.
   * Errors: `disk-full`, `disk-refused`, and `original-altered` where the store has another content under this hash:
   * that one is left as it is.
   */
  keepOriginal(staged: StagedOriginal): Promise<AddedOriginal>;
  /** Removes what is left of a staged file. Never fails: what cannot be removed now is clearIncoming()'s. */
  dropStaged(staged: StagedOriginal): Promise<void>;
  /** Stages, keeps and drops in one. Errors: those of stageOriginal() and keepOriginal(). */
  addOriginal(sourcePath: string, sourceName: string): Promise<AddedOriginal>;
  originalPath(sha256: string): string;
  hasOriginal(sha256: string): Promise<boolean>;
  derivativePath(sha256: string, kind: DerivativeKind): string;
  /** A fresh name in incoming/; the folder is there once makeFolders(), addOriginal() or clearIncoming() has run. */
  derivativeTempPath(sha256: string, kind: DerivativeKind): string;
  /** Gives a finished derived picture its name, replacing an older one. Errors: `disk-full`, `disk-refused`. */
  commitDerivative(tempPath: string, sha256: string, kind: DerivativeKind): Promise<void>;
  hasDerivative(sha256: string, kind: DerivativeKind): Promise<boolean>;
  /** Of a picture in the size in which it is printed. */
  platePath(sha256: string, cut: PlateCut): string;
  plateTempPath(): string;
  /** Errors: `disk-full`, `disk-refused`. */
  commitPlate(tempPath: string, sha256: string, cut: PlateCut): Promise<void>;
  /** Whether it is there; one that is counts as used now. */
  usePlate(sha256: string, cut: PlateCut): Promise<boolean>;
  /** Removes the plates that were not used for longest until no more than so many bytes are left. Answers how many. */
  trimPlates(mostBytes: number): Promise<number>;
  /** Removes a temporary file that is not going to be used; one that is gone already is fine. */
  discardTemp(tempPath: string): Promise<void>;
  /** Makes the store's folder in a parent that is there, and incoming/ in it. Errors: `disk-full`, `disk-refused`. */
  makeFolders(): Promise<void>;
  /**
   * Removes what an interrupted import left in incoming/: only .part files named as this store names them, never
   * one that this store itself is writing now. Answers the names removed.
   */
  clearIncoming(): Promise<readonly string[]>;
  /** Compares the originals on disk with those the library names, shelf by shelf. Reports; removes nothing. */
  sweep(knownOn: (shelf: string) => Iterable<string>): Promise<StoreSweep>;
};

const sha256Form = /^[0-9a-f]{64}$/;
const partForm =
  /^(original|derivative-[a-z]+)-[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}\.part$/;

export function createPhotoStore(folder: string, files: DurableFiles): PhotoStore {
  const incoming = join(folder, 'incoming');
  const keeper = createFolderKeeper(files, folder);
  /** Names in incoming/ that this store gave out and has not finished with. */
  const inUse = new Set<string>();
  /** Originals that came while this store was open: a sweep's list of known ones may be older than they are. */
  const addedHere = new Set<string>();
  /** The last piece of work on each hash, so that two copies of one picture are stored one after the other. */
  const busy = new Map<string, Promise<unknown>>();

  const shelf = (area: string, sha256: string) => {
    if (!sha256Form.test(sha256)) throw new Error(`not a SHA-256 in lower-case hex: ${sha256}`);
    return join(folder, area, sha256.slice(0, 2));
  };
  const originalPath = (sha256: string) => join(shelf('originals', sha256), sha256);
  const derivativePath = (sha256: string, kind: DerivativeKind) => {
    const { version, extension } = derivativeKinds[kind];
    return join(shelf('derived', sha256), `${sha256}.${kind}-${version}.${extension}`);
  };
  const platePath = (sha256: string, cut: PlateCut) =>
    join(shelf(plateFolder, sha256), plateFileName(sha256, cut));
  const newPart = (kind: string) => {
    const name = `${kind}-${randomUUID()}.part`;
    inUse.add(name);
    return join(incoming, name);
  };

  const discardTemp = async (tempPath: string) => {
    inUse.delete(tempPath.slice(incoming.length + 1));
    if ((await files.stat(tempPath)) !== null) await files.unlink(tempPath);
  };

  async function alone<Value>(sha256: string, work: () => Promise<Value>): Promise<Value> {
    const before = busy.get(sha256) ?? Promise.resolve();
    const mine = before.then(work, work);
    busy.set(sha256, mine);
    try {
      return await mine;
    } finally {
      if (busy.get(sha256) === mine) busy.delete(sha256);
    }
  }

  async function stageOriginal(sourcePath: string, sourceName: string): Promise<StagedOriginal> {
    const path = newPart('original');
    try {
      await keeper.ensure(incoming);
      const copy = await files.copyHashing(sourcePath, path);
      if (copy.bytes === 0) throw new AppError('file-empty', { name: sourceName });
      return { ...copy, path, sourceName };
    } catch (error) {
      await discardTemp(path).catch(leaveForNextStart);
      throw named(error, sourceName);
    }
  }

  /** The file already stored under the copy's hash must be the copy's content, to the byte. */
  async function verifyStored(staged: StagedOriginal, storedBytes: number): Promise<void> {
    const altered = (reason: string) =>
      new AppError('original-altered', { name: staged.sourceName, sha256: staged.sha256, reason });
    if (storedBytes !== staged.bytes) throw altered(originalReasons.size(storedBytes, staged.bytes));
    const stored = await files.hash(originalPath(staged.sha256));
    if (stored.sha256 !== staged.sha256) throw altered(originalReasons.content);
  }

  async function shelve(staged: StagedOriginal): Promise<AddedOriginal> {
    const { sha256, bytes } = staged;
    const final = originalPath(sha256);
    await keeper.ensure(dirname(final));
    const stored = await files.stat(final);
    if (stored === null) {
      await files.syncFile(staged.path);
      reachFaultPoint('original.synced', sha256);
      await files.seal(staged.path);
      reachFaultPoint('original.sealed', sha256);
      await files.rename(staged.path, final);
      reachFaultPoint('original.named', sha256);
    } else {
      await verifyStored(staged, stored.bytes);
    }
    // Also for one that was there: whoever put it there may have died before this step.
    await files.syncFolder(dirname(final));
    addedHere.add(sha256);
    return { sha256, bytes, existed: stored !== null };
  }

  async function keepOriginal(staged: StagedOriginal): Promise<AddedOriginal> {
    try {
      return await alone(staged.sha256, () => shelve(staged));
    } catch (error) {
      throw named(error, staged.sourceName);
    }
  }

  async function commitCopy(tempPath: string, final: string): Promise<void> {
    // Synced before it has its name: a torn picture under it would be shown as the real one.
    await files.syncFile(tempPath);
    reachFaultPoint('copy.synced');
    await keeper.ensure(dirname(final));
    try {
      await files.rename(tempPath, final);
    } catch (error) {
      // The cache may be cleared while the program runs, folders and all.
      if (systemCode(error) !== 'ENOENT') throw error;
      keeper.forget();
      await keeper.ensure(dirname(final));
      await files.rename(tempPath, final);
    }
    inUse.delete(tempPath.slice(incoming.length + 1));
  }

  const dropStaged = (staged: StagedOriginal) => discardTemp(staged.path).catch(leaveForNextStart);

  return {
    stageOriginal,
    keepOriginal,
    dropStaged,
    addOriginal: async (sourcePath, sourceName) => {
      const staged = await stageOriginal(sourcePath, sourceName);
      try {
        return await keepOriginal(staged);
      } finally {
        await dropStaged(staged);
      }
    },
    originalPath,
    hasOriginal: async (sha256) => (await files.stat(originalPath(sha256))) !== null,
    derivativePath,
    derivativeTempPath: (_sha256, kind) => newPart(`derivative-${kind}`),
    commitDerivative: (tempPath, sha256, kind) => commitCopy(tempPath, derivativePath(sha256, kind)),
    hasDerivative: async (sha256, kind) => (await files.stat(derivativePath(sha256, kind))) !== null,
    platePath,
    plateTempPath: () => newPart('derivative-plate'),
    commitPlate: (tempPath, sha256, cut) => commitCopy(tempPath, platePath(sha256, cut)),
    usePlate: (sha256, cut) => touchIfThere(platePath(sha256, cut)),
    trimPlates: (mostBytes) => trimPlates(join(folder, plateFolder), mostBytes),
    discardTemp,
    makeFolders: () => keeper.ensure(incoming),
    clearIncoming: async () => {
      await keeper.ensure(incoming);
      const left = (await files.list(incoming)).filter((name) => partForm.test(name) && !inUse.has(name));
      for (const name of left) await files.unlink(join(incoming, name));
      return left;
    },
    sweep: (knownOn) =>
      sweepOriginals(folder, files, knownOn, { addedHere, isPart: (name) => partForm.test(name) }),
  };
}

/** The user knows the picture's name, not the store's paths. */
function named(error: unknown, sourceName: string): unknown {
  if (!(error instanceof AppError)) return error;
  const details =
    error.code === 'disk-full' || error.code === 'disk-refused'
      ? { ...error.details, what: sourceName }
      : error.code === 'file-unreadable'
        ? { ...error.details, name: sourceName }
        : error.details;
  return new AppError(error.code, details, { retryable: error.retryable, cause: error });
}

/**
 * A .part file that cannot be removed now must not hide why the import failed, nor fail one that is safely stored:
 * clearIncoming() removes it at the next start.
 */
function leaveForNextStart(): void {
  return undefined;
}
