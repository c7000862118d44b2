/**
 * The plates' part of the store: pictures in the size in which they are printed. All of it is cache; what is there can
 * be made again, so nothing here has to be durable but that a file is whole when it has its name.
 */
import { readdir, stat, unlink, utimes } from 'node:fs/promises';
import { join } from 'node:path';

import { plateKind } from '../images/derivative-kinds.ts';
import { systemCode } from './disk-error.ts';

export const plateFolder = 'plates';

/** What of a picture is printed, and how large, in pixels: the whole of it and as it is, until plates can be cut. */
export type PlateCut = { readonly width: number; readonly height: number };

const crop = 'whole';
const view = 'plain';

export function plateFileName(sha256: string, { width, height }: PlateCut): string {
  const { version, extension } = plateKind;
  return `${sha256}.plate-${version}.${crop}.${view}.${width}x${height}.${extension}`;
}

const plateForm = /^[0-9a-f]{64}\.plate-\d+\.[a-z0-9.x-]+\.jpg$/;

/** Marks the file as used now. Answers whether it is there. */
export async function touchIfThere(path: string): Promise<boolean> {
  try {
    const now = new Date();
    await utimes(path, now, now);
    return true;
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return false;
    throw error;
  }
}

/**
 * Removes what was not used for longest until `mostBytes` are left; files that are not named as plates stay. Answers
 * how many were removed.
 */
export async function trimPlates(folder: string, mostBytes: number): Promise<number> {
  const plates: { readonly path: string; readonly bytes: number; readonly usedAt: number }[] = [];
  for (const shelf of await namesIn(folder)) {
    for (const name of await namesIn(join(folder, shelf))) {
      if (!plateForm.test(name)) continue;
      const path = join(folder, shelf, name);
      const found = await stat(path);
      plates.push({ path, bytes: found.size, usedAt: found.mtimeMs });
    }
  }
  plates.sort((one, other) => one.usedAt - other.usedAt);
  let left = plates.reduce((sum, { bytes }) => sum + bytes, 0);
  let removed = 0;
  for (const { path, bytes } of plates) {
    if (left <= mostBytes) break;
    await unlink(path);
    left -= bytes;
    removed += 1;
  }
  return removed;
}

async function namesIn(folder: string): Promise<readonly string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if (systemCode(error) === 'ENOENT' || systemCode(error) === 'ENOTDIR') return [];
    throw error;
  }
}
