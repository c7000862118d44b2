/** Child processes whose exit codes and signals pass through to whoever started us. */
import { spawn } from 'node:child_process';
import { constants } from 'node:os';

const forwarded = process.platform === 'win32' ? ['SIGINT', 'SIGTERM'] : ['SIGINT', 'SIGTERM', 'SIGHUP'];

/**
 * npm ends only the shell between itself and this process when it is told to stop; then nobody would end the child.
 * Calls back once when this process, started by npm, has lost its parent. Returns what ends the watch.
 */
function onOrphaned(callBack) {
  if (process.env.npm_lifecycle_event === undefined || process.platform === 'win32') return () => undefined;
  const parent = process.ppid;
  const watch = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(watch);
    callBack();
  }, 500);
  return () => clearInterval(watch);
}

/**
 * Waits for a child while passing signals on to it. Ctrl-C at a terminal reaches the whole foreground group by itself,
 * so an interrupt is passed on only where no terminal sends it.
 * @returns {Promise<{code: number | null, signal: string | null}>}
 */
export function waitFor(child) {
  const handlers = forwarded.map((signal) => {
    const handler = () => {
      if (signal === 'SIGINT' && process.stdin.isTTY) return;
      child.kill(signal);
    };
    process.on(signal, handler);
    return [signal, handler];
  });
  const endWatch = onOrphaned(() => child.kill('SIGTERM'));
  return new Promise((settle, refuse) => {
    child.on('error', refuse);
    child.on('close', (code, signal) => settle({ code, signal }));
  }).finally(() => {
    endWatch();
    for (const [signal, handler] of handlers) process.off(signal, handler);
  });
}

/** Ends this process the way the child ended: with its exit code, or by the same signal. */
export function endAs({ code, signal }) {
  if (signal === null) process.exit(code ?? 1);
  if (process.platform !== 'win32') process.kill(process.pid, signal);
  // Reached when the signal is one that this process survives, and always on Windows.
  process.exit(128 + (constants.signals[signal] ?? 0));
}

/**
 * Runs a command to its end and keeps what it wrote.
 * @returns {Promise<{code: number | null, signal: string | null, output: string}>} output: stdout and stderr as they came
 */
export async function runQuietly(command, args, options = {}) {
  const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'], ...options });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8');
    stream.on('data', (chunk) => {
      output += chunk;
    });
  }
  return { ...(await waitFor(child)), output };
}

/** The last lines of a program's output: where it says what went wrong. */
export function lastLines(output, count) {
  return output.trimEnd().split(/\r?\n/).slice(-count).join('\n');
}
