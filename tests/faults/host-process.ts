/** The program as the user starts it: host-entry.ts as a process, with engine and decoders below it. */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { onTestFinished } from 'vitest';

import { entryPath } from '../../electron/processes/entry-table.ts';
import { quickStart } from './quick-start.ts';

export type HostOptions = {
  readonly port?: string;
  readonly user?: { readonly uid?: number; readonly gid?: number };
  /** In a process group of its own, as a terminal puts what it starts. */
  readonly ownGroup?: boolean;
};

export type HostProcess = {
  readonly child: ChildProcess;
  /** The address it prints. Rejects when the program ends without one. */
  readonly address: Promise<string>;
  /**
   * Settles when the process has ended and every process that inherited its standard error has, too: nothing of the
   * program is left then.
   */
  readonly gone: Promise<{ code: number | null; signal: NodeJS.Signals | null; errors: string }>;
};

export function startHost(library: string, options: HostOptions = {}): HostProcess {
  const port = options.port === undefined ? [] : ['--port', options.port];
  const child = spawn(process.execPath, [entryPath('host'), '--library', library, ...port], {
    ...options.user,
    cwd: '/',
    detached: options.ownGroup ?? false,
    env: { ...process.env, ...quickStart },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let errors = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => (errors += text));
  const gone = once(child, 'close').then(([code, signal]) => ({
    code: code as number | null,
    signal: signal as NodeJS.Signals | null,
    errors,
  }));
  const address = new Promise<string>((resolve, reject) => {
    let said = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      const found = /http:\/\/127\.0\.0\.1:\S+/.exec(said)?.[0];
      if (found !== undefined) resolve(found);
    });
    void gone.then(({ code }) => {
      reject(new Error(`the host ended with ${String(code)} and printed no address: ${errors}`));
    });
  });
  address.catch(() => undefined);
  onTestFinished(async () => {
    child.kill('SIGTERM');
    await gone;
  });
  return { child, address, gone };
}

/** The lines that a trace of the program's insides would bring. */
export function traceLines(errors: string): string[] {
  return errors.split('\n').filter((line) => /^\s+at |Error:|node:internal/.test(line));
}
