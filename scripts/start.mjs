/**
 * npm start: opens Teardown Docket, as a desktop program where the desktop runtime is here or can be fetched, otherwise
 * the same program in a browser through this computer's loopback address.
 */
import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { buildStale } from './bundles.mjs';
import { endAs, waitFor } from './child-process.mjs';
import { fetchDesktopRuntime, findDesktopRuntime, startDesktop, whyNoWindow } from './desktop-runtime.mjs';
import { prepare } from './prepare.mjs';
import { inProject, Refusal, runScript, say } from './project.mjs';

const usage = `npm start -- [options]
  --library DIR     the folder that holds the library (otherwise the one of this user account)
  --host            open it in a browser, even where the desktop runtime is here
  --port N          with the browser: the port on 127.0.0.1 (otherwise a free one)
  --no-browser      print the address, open no browser
  --retry-desktop   try to fetch the desktop runtime again, though it failed within a day`;

function readOptions() {
  try {
    const { values } = parseArgs({
      options: {
        library: { type: 'string' },
        host: { type: 'boolean', default: false },
        port: { type: 'string' },
        'no-browser': { type: 'boolean', default: false },
        'retry-desktop': { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    });
    return values;
  } catch (error) {
    throw new Refusal(`${error.message}\n\n${usage}`, 2);
  }
}

/** npm runs scripts in the project's folder; a relative folder is meant from where the person stood. */
function libraryArguments(options) {
  if (options.library === undefined) return [];
  return ['--library', resolve(process.env.INIT_CWD ?? process.cwd(), options.library)];
}

/** The command that opens an address in this machine's browser, or null where there is none to be expected. */
function browserCommand(address) {
  if (process.env.CI) return null;
  if (process.platform === 'darwin') return ['open', [address]];
  if (process.platform === 'win32') return ['rundll32', ['url.dll,FileProtocolHandler', address]];
  return process.env.DISPLAY || process.env.WAYLAND_DISPLAY ? ['xdg-open', [address]] : null;
}

function openBrowser(address) {
  const opener = browserCommand(address);
  if (opener === null) return;
  const child = spawn(opener[0], opener[1], { stdio: 'ignore', detached: true });
  child.on('error', () => {
    say('No browser could be opened; open the address above yourself.');
  });
  child.unref();
}

/** Runs the loopback host and hands through what it writes; its first line holds the address. */
async function runHost(options) {
  const args = [inProject('electron', 'host', 'host-entry.ts'), ...libraryArguments(options)];
  if (options.port !== undefined) args.push('--port', options.port);
  const child = spawn(process.execPath, args, { stdio: ['inherit', 'pipe', 'inherit'] });
  let firstLine = '';
  child.stdout.setEncoding('utf8');
  child.stdout.on('data', (text) => {
    process.stdout.write(text);
    if (firstLine.includes('\n')) return;
    firstLine += text;
    const address = /(http:\/\/127\.0\.0\.1:\S+)\s*\n/.exec(firstLine)?.[1];
    if (address !== undefined && !options['no-browser']) openBrowser(address);
  });
  endAs(await waitFor(child));
}

/**
 * Path of the desktop runtime where it can open a window here; otherwise says why not and returns null. Nothing is
 * fetched for a machine that has no display for it.
 */
async function usableRuntime(options) {
  const hindrance = whyNoWindow();
  if (hindrance !== null) {
    say(`${hindrance}\nOpening the same program in a browser through this computer's loopback address.`);
    return null;
  }
  const program = findDesktopRuntime() ?? (await fetchDesktopRuntime({ retry: options['retry-desktop'] }));
  if (program === null) {
    say(
      'The desktop runtime is not here and cannot be fetched; ' +
        "opening the same program in a browser through this computer's loopback address.",
    );
  }
  return program;
}

await runScript(async () => {
  const options = readOptions();
  if (options.help) {
    process.stdout.write(`${usage}\n`);
    return;
  }
  await prepare({ build: ['page'] });
  const program = options.host ? null : await usableRuntime(options);
  if (program === null) return await runHost(options);
  await buildStale(['desktop']);
  endAs(await waitFor(startDesktop(program, libraryArguments(options))));
});
