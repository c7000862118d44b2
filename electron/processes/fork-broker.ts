/** Starts the program's processes as children of a plain Node process: in the loopback host and in tests. */
import { fork } from 'node:child_process';
import type { ChildPort, ExitReport, ProcessBroker } from './child-port.ts';
import { entryEnvironment, entryPath, type EntryName } from './entry-table.ts';

type Variables = Readonly<Record<string, string>>;

export type ForkBrokerOptions = {
  /** Variables set in the children beside those of this process; a function is asked at every start. */
  readonly environment?: Variables | ((entry: EntryName) => Variables);
  /** Told of every process that starts, with its operating system's number. */
  readonly onStart?: (entry: EntryName, processNumber: number | undefined) => void;
};

/**
 * Children get a clean command line (no loader or inspector of this process), messages as JSON, no input or
 * output of their own, and this process's standard error.
 */
export function createForkBroker(options: ForkBrokerOptions = {}): ProcessBroker {
  const { environment } = options;
  return {
    start: (entry): ChildPort => {
      const variables = typeof environment === 'function' ? environment(entry) : environment;
      const child = fork(entryPath(entry), [], {
        env: { ...process.env, ...entryEnvironment[entry], ...variables },
        execArgv: [],
        // In a group of its own: Ctrl-C at a terminal, and its end, are the parent's to act on. A child learns of its
        // parent's end by the line between them.
        detached: true,
        windowsHide: true,
        serialization: 'json',
        stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
      });
      options.onStart?.(entry, child.pid);
      const listeners: ((exit: ExitReport) => void)[] = [];
      let exit: ExitReport | null = null;
      const ended = (report: ExitReport) => {
        if (exit !== null) return;
        exit = report;
        for (const listener of listeners) listener(report);
      };
      child.on('exit', (code, signal) => {
        ended({ code, signal });
      });
      // Emitted without a later exit when the process could not be started at all.
      child.on('error', () => {
        if (child.pid === undefined) ended({ code: null, signal: null });
      });
      return {
        send: (message) => {
          // With a callback a closed line is no thrown error; that the child is gone is told by onExit.
          if (child.connected) child.send(message as object, () => undefined);
        },
        onMessage: (receive) => {
          child.on('message', receive);
        },
        onExit: (receive) => {
          if (exit === null) listeners.push(receive);
          else receive(exit);
        },
        kill: () => {
          child.kill('SIGKILL');
        },
      };
    },
  };
}
