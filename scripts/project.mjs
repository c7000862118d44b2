/** Where things are in this checkout, and how the scripts speak. Runs on Node 20 and needs no package. */
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');

/** Absolute path inside the checkout. */
export const inProject = (...parts) => join(root, ...parts);

/** Kept between runs, thrown away with the packages. */
export const cacheFolder = inProject('node_modules', '.cache', 'teardown-docket');

/** Something the person at the keyboard can act on: shown without a stack trace. */
export class Refusal extends Error {
  constructor(message, exitCode = 1) {
    super(message);
    this.name = 'Refusal';
    this.exitCode = exitCode;
  }
}

/** Progress goes to stderr, so that a script's stdout holds its answer and nothing else. */
export function say(line) {
  process.stderr.write(`${line}\n`);
}

/** Does one named thing and says so in one line with the seconds it took, also when it fails. */
export async function timed(label, work) {
  const begun = performance.now();
  process.stderr.write(`${label} … `);
  try {
    const result = await work();
    process.stderr.write(`${secondsSince(begun)} s\n`);
    return result;
  } catch (error) {
    process.stderr.write(`failed after ${secondsSince(begun)} s\n`);
    throw error;
  }
}

/** Seconds with one decimal since a performance.now() reading. */
export function secondsSince(begun) {
  return ((performance.now() - begun) / 1000).toFixed(1);
}

/** Runs a script's main function; a Refusal is shown as its message, anything else with its stack. */
export async function runScript(main) {
  try {
    await main();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    process.stderr.write(`\n${error.message}\n`);
    process.exitCode = error.exitCode;
  }
}
