/**
 * The desktop runtime: where its program lies, and fetching it with its own package's installer. npm brings the package
 * without the program; on many machines the place it is fetched from cannot be reached.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { lastLines, runQuietly } from './child-process.mjs';
import { cacheFolder, inProject, say, timed } from './project.mjs';

const packageFolder = inProject('node_modules', 'electron');
const failurePath = join(cacheFolder, 'desktop-runtime-failure.json');
const rememberedFor = 24 * 60 * 60 * 1000;

/** A fetch that brings no byte for this long is given up; one that goes on may take its time. */
const longestSilence = 20_000;
const longestFetch = 15 * 60_000;

const programInRuntime = {
  darwin: 'Electron.app/Contents/MacOS/Electron',
  win32: 'electron.exe',
};

/** Absolute path of the runtime's program, or null where it is not on this machine. */
export function findDesktopRuntime() {
  const folder = process.env.ELECTRON_OVERRIDE_DIST_PATH ?? join(packageFolder, 'dist');
  const program = join(folder, programInRuntime[process.platform] ?? 'electron');
  return existsSync(program) ? program : null;
}

function sizeOf(path) {
  if (!existsSync(path)) return 0;
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return 0;
  if (!found.isDirectory()) return found.size;
  return readdirSync(path).reduce((sum, name) => sum + sizeOf(join(path, name)), 0);
}

/** Runs the runtime's own installer until it ends, or until no byte arrives any more. Returns why it failed, or null. */
async function runInstaller() {
  const landing = join(cacheFolder, 'desktop-runtime-landing');
  rmSync(landing, { recursive: true, force: true });
  mkdirSync(landing, { recursive: true });
  const giveUp = new AbortController();
  const begun = Date.now();
  let seen = { bytes: 0, at: begun };
  const watch = setInterval(() => {
    const bytes = sizeOf(landing) + sizeOf(join(packageFolder, 'dist'));
    if (bytes !== seen.bytes) seen = { bytes, at: Date.now() };
    if (Date.now() - seen.at > longestSilence) giveUp.abort('nothing arrived any more');
    if (Date.now() - begun > longestFetch) giveUp.abort('it took too long');
  }, 1000);
  const folder = { TMPDIR: landing, TMP: landing, TEMP: landing };
  try {
    const { code, output } = await runQuietly(process.execPath, [join(packageFolder, 'install.js')], {
      env: { ...process.env, ...folder, ELECTRON_GET_NO_PROGRESS: '1' },
      signal: giveUp.signal,
    });
    return code === 0 && findDesktopRuntime() !== null ? null : lastLines(output, 1);
  } catch (error) {
    if (error.name !== 'AbortError') throw error;
    return String(giveUp.signal.reason);
  } finally {
    clearInterval(watch);
    rmSync(landing, { recursive: true, force: true });
  }
}

function failedLately() {
  if (!existsSync(failurePath)) return false;
  const { at } = JSON.parse(readFileSync(failurePath, 'utf8'));
  return Date.now() - at < rememberedFor;
}

/**
 * Fetches the runtime. A failure is remembered for a day, so that a machine that cannot reach it waits only once.
 * @param {{retry: boolean}} how retry: try although it failed lately
 * @returns {Promise<string | null>} path of the runtime's program, or null where it cannot be had
 */
export async function fetchDesktopRuntime({ retry }) {
  if (!existsSync(packageFolder) || (!retry && (process.env.CI || failedLately()))) return null;
  const failure = await timed('Fetching the desktop runtime (tried once a day)', runInstaller);
  if (failure === null) {
    rmSync(failurePath, { force: true });
    return findDesktopRuntime();
  }
  say(`It could not be fetched: ${failure}. To try again before tomorrow: npm start -- --retry-desktop`);
  mkdirSync(cacheFolder, { recursive: true });
  writeFileSync(failurePath, JSON.stringify({ at: Date.now(), failure }));
  return null;
}

/** Why the runtime, though present, cannot open a window here; null where nothing speaks against it. */
export function whyNoWindow() {
  if (process.platform !== 'linux') return null;
  if (!process.env.DISPLAY && !process.env.WAYLAND_DISPLAY)
    return 'There is no display here for a desktop window.';
  if (process.getuid() === 0) {
    return (
      'The desktop runtime refuses to run as root, because its sandbox would be off.\n' +
      'For the desktop window, start Teardown Docket as an ordinary user.'
    );
  }
  return null;
}

/** Why the desktop specs cannot run on this machine; null where they can. */
export function whyNoDesktopSpecs() {
  return findDesktopRuntime() === null ? 'The desktop runtime is not on this machine.' : whyNoWindow();
}

/** Starts the desktop program from the built files of this checkout. */
export function startDesktop(program, args) {
  return spawn(program, [inProject(), ...args], { stdio: 'inherit' });
}
