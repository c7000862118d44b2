/**
 * Files on a disk that may lose what was not synced. Content counts as safe after syncFile, a name in a folder after
 * syncFolder of that folder, as POSIX has it (fsync(2): syncing a file does not sync its entry in the folder).
 */
import { chmodSync, existsSync, renameSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { DurableFiles } from '../../../electron/files/durable-files.ts';

export type PowerCutFiles = DurableFiles & {
  /** How much may be lost now: entries and contents. */
  unsynced(): number;
  /**
   * Cuts the power. Each thing that was not synced has a number from 0, in no particular order, and is kept where
   * `survives` says so: a disk writes back what it likes. Without it nothing unsynced survives. Afterwards this layer has nothing unsynced; go on with a fresh one.
   */
  cutPower(survives?: (index: number) => boolean): void;
};

/** A file's content, wherever its name goes. */
type Content = { path: string; syncedBytes: number; dirty: boolean };
/** A change of names that a folder's sync makes safe; `undo` takes it back on the disk. */
type NameChange = { readonly folder: string; readonly undo: () => void };

export function powerCutFiles(real: DurableFiles): PowerCutFiles {
  const contents = new Map<string, Content>();
  let names: NameChange[] = [];

  const wrote = (path: string, isNew: boolean) => {
    const known = contents.get(path);
    if (known === undefined) contents.set(path, { path, syncedBytes: 0, dirty: true });
    else Object.assign(known, { dirty: true, syncedBytes: 0 });
    // A file that has another name by then is out of this one's reach.
    if (isNew) names.push({ folder: dirname(path), undo: () => remove(path) });
  };

  return {
    ...real,
    ensureFolder: async (path) => {
      const made = await real.ensureFolder(path);
      if (made) names.push({ folder: dirname(path), undo: () => remove(path) });
      return made;
    },
    copyHashing: async (source, target) => {
      try {
        return await real.copyHashing(source, target);
      } finally {
        if (existsSync(target)) wrote(target, true);
      }
    },
    write: async (path, content) => {
      const isNew = !existsSync(path);
      await real.write(path, content);
      wrote(path, isNew);
    },
    syncFile: async (path) => {
      await real.syncFile(path);
      const content = contents.get(path);
      if (content !== undefined) Object.assign(content, { dirty: false, syncedBytes: statSync(path).size });
    },
    rename: async (from, to) => {
      const replaced = (await real.stat(to)) === null ? null : await real.read(to);
      await real.rename(from, to);
      const content = contents.get(from);
      if (content !== undefined) {
        content.path = to;
        contents.set(to, content);
        contents.delete(from);
      }
      names.push({
        folder: dirname(to),
        undo: () => {
          if (!existsSync(to)) return;
          // The old name may be on the disk still, or again: a file comes back to it with whatever it holds.
          if (existsSync(dirname(from))) renameSync(to, from);
          else remove(to);
          if (replaced !== null) writeFileSync(to, replaced);
        },
      });
    },
    syncFolder: async (path) => {
      await real.syncFolder(path);
      names = names.filter((change) => change.folder !== path);
    },
    unlink: async (path) => {
      const content = await real.read(path);
      const { mode } = statSync(path);
      await real.unlink(path);
      contents.delete(path);
      names.push({
        folder: dirname(path),
        undo: () => {
          if (!existsSync(dirname(path)) || existsSync(path)) return;
          writeFileSync(path, content);
          chmodSync(path, mode);
        },
      });
    },
    unsynced: () => names.length + [...contents.values()].filter((content) => content.dirty).length,
    cutPower: (survives = () => false) => {
      let index = 0;
      const lost = () => !survives(index++);
      for (const content of contents.values()) {
        if (content.dirty && lost() && existsSync(content.path)) {
          const { mode } = statSync(content.path);
          chmodSync(content.path, 0o644);
          truncateSync(content.path, content.syncedBytes);
          chmodSync(content.path, mode);
        }
      }
      // Backwards, as the later names rest upon the earlier ones.
      for (const change of [...names].reverse()) if (lost()) change.undo();
      contents.clear();
      names = [];
    },
  };
}

function remove(path: string): void {
  rmSync(path, { recursive: true, force: true });
}
