import { join } from 'node:path';
import type { DurableFiles } from './durable-files.ts';

export type KnownOriginal = { readonly sha256: string; readonly sourceName: string };

export type StoreSweep = {
  /** Paths within the store, "/" between their parts, of what nothing names. */
  readonly strays: string[];
  /** Originals that the library names and the disk has not got. */
  readonly missing: KnownOriginal[];
};

type SweepBounds = {
  /** Originals added since the store was opened: the library may not have named them yet when it was asked. */
  readonly addedHere: ReadonlySet<string>;
  /** Names of files on their way in, which are no strays. */
  isPart(name: string): boolean;
};

/** Looks at names only: whether an original still has its content is for a check that reads it. Removes nothing. */
export async function sweepOriginals(
  folder: string,
  files: DurableFiles,
  known: Iterable<KnownOriginal>,
  bounds: SweepBounds,
): Promise<StoreSweep> {
  const expected = new Map<string, KnownOriginal>();
  for (const original of known) expected.set(original.sha256, original);
  const strays: string[] = [];
  const found = new Set<string>();
  for (const shelf of await files.list(join(folder, 'originals'))) {
    const isFolder = (await files.stat(join(folder, 'originals', shelf)))?.folder ?? false;
    if (!isFolder) {
      strays.push(`originals/${shelf}`);
      continue;
    }
    for (const name of await files.list(join(folder, 'originals', shelf))) {
      const inPlace = name.slice(0, 2) === shelf;
      if (inPlace && expected.has(name)) found.add(name);
      else if (!inPlace || !bounds.addedHere.has(name)) strays.push(`originals/${shelf}/${name}`);
    }
  }
  for (const name of await files.list(join(folder, 'incoming'))) {
    if (!bounds.isPart(name)) strays.push(`incoming/${name}`);
  }
  const missing = [...expected.values()].filter((original) => !found.has(original.sha256));
  return { strays, missing };
}
