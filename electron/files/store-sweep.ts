import { join } from 'node:path';
import type { DurableFiles } from './durable-files.ts';

export type StoreSweep = {
  /** Paths within the store, "/" between their parts, of what nothing names. */
  readonly strays: string[];
  /** SHA-256 of originals that the library names and the disk has not got. */
  readonly missing: string[];
};

type SweepBounds = {
  /** Originals added since the store was opened: the library may not have named them yet when it was asked. */
  readonly addedHere: ReadonlySet<string>;
  /** Names of files on their way in, which are no strays. */
  isPart(name: string): boolean;
};

/** Names of the shelves on which originals stand: the first two hex digits of their SHA-256. */
const shelves = Array.from({ length: 256 }, (_, number) => number.toString(16).padStart(2, '0'));

/**
 * Looks at names only: whether an original still has its content is for a check that reads it. Removes nothing. Goes
 * shelf by shelf, so that a library of a million pictures keeps nobody waiting.
 *
 * @param knownOn SHA-256 of every original that the library names on a shelf
 */
export async function sweepOriginals(
  folder: string,
  files: DurableFiles,
  knownOn: (shelf: string) => Iterable<string>,
  bounds: SweepBounds,
): Promise<StoreSweep> {
  const originals = join(folder, 'originals');
  const strays: string[] = [];
  const missing: string[] = [];
  const there = await files.list(originals);
  for (const shelf of [...there, ...shelves.filter((name) => !there.includes(name))]) {
    const isFolder = (await files.stat(join(originals, shelf)))?.folder ?? false;
    if (!isFolder && there.includes(shelf)) strays.push(`originals/${shelf}`);
    const left = new Set(shelves.includes(shelf) ? knownOn(shelf) : []);
    for (const name of isFolder ? await files.list(join(originals, shelf)) : []) {
      const inPlace = name.slice(0, 2) === shelf;
      if (inPlace && left.delete(name)) continue;
      if (!inPlace || !bounds.addedHere.has(name)) strays.push(`originals/${shelf}/${name}`);
    }
    missing.push(...left);
  }
  for (const name of await files.list(join(folder, 'incoming'))) {
    if (!bounds.isPart(name)) strays.push(`incoming/${name}`);
  }
  return { strays, missing };
}
