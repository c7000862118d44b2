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

/**
 * Variables of a process beside those it inherits. Decoders: one arena of glibc's allocator instead of one a thread.
 * Each arena keeps what a large picture once needed, which made two decoders and the engine 809 MiB together over
 * 20 pictures of 24 megapixels; so they are 511 MiB. Other allocators pass over it.
 */
export const entryEnvironment: Readonly<Partial<Record<EntryName, Readonly<Record<string, string>>>>> = {
  decoder: { MALLOC_ARENA_MAX: '1' },
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
