/**
 * Every process and worker the program starts, in one place, and the one function that finds their files:
 * unbuilt TypeScript in a checkout, bundles beside this one in a built or packaged program (in an asar too).
 */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const entries = {
  main: 'electron/main.ts',
  preload: 'electron/preload.ts',
  host: 'electron/host/host-entry.ts',
  engine: 'electron/engine/engine-entry.ts',
  decoder: 'electron/images/decoder-entry.ts',
  report: 'electron/report/report-worker-entry.ts',
} as const;
export type EntryName = keyof typeof entries;

/** glibc's allocator gives blocks larger than this back to the system as soon as they are free: pictures, pages. */
const large = String(4 * 1024 * 1024);
const givesBack = { MALLOC_MMAP_THRESHOLD_: large, MALLOC_TRIM_THRESHOLD_: large };

/**
 * Variables of a process beside those it inherits, for glibc's allocator; others pass over them. Decoders have one arena
 * instead of one a thread, each of which keeps what a large picture once needed: two decoders and the engine were
 * 809 MiB together over 20 pictures of 24 megapixels, and are 511 MiB so.
 */
export const entryEnvironment: Readonly<Partial<Record<EntryName, Readonly<Record<string, string>>>>> = {
  engine: givesBack,
  decoder: { MALLOC_ARENA_MAX: '1', ...givesBack },
};

const here = dirname(fileURLToPath(import.meta.url));

/** True where this code runs from a bundle in dist/electron rather than from the checkout. */
const built = import.meta.url.endsWith('.js');

/** The checkout, or the packaged application's root: two folders up from electron/processes and from dist/electron. */
export const programFolder = join(here, '..', '..');

/** Absolute path of a process's file. The preload only exists as a bundle. */
export function entryPath(name: EntryName): string {
  if (name === 'preload') return join(programFolder, 'dist', 'electron', 'preload.cjs');
  return built ? join(here, `${name}.js`) : join(programFolder, entries[name]);
}

/** Absolute path of something shipped beside the code: migrations, machine kinds, sample cases, the built page. */
export function shippedPath(...parts: readonly string[]): string {
  const path = join(programFolder, ...parts);
  // A native module or a worker cannot open a file inside an asar archive; what is unpacked lies beside it.
  const unpacked = path.replace(/app\.asar(?=[\\/])/, 'app.asar.unpacked');
  return unpacked !== path && existsSync(unpacked) ? unpacked : path;
}
