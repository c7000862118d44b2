/** Utility processes behind the same port as forked ones. Only the desktop's main process can start them. */
import { utilityProcess } from 'electron';

import type { ChildPort, ProcessBroker } from '../processes/child-port.ts';
import { entryEnvironment, entryPath } from '../processes/entry-table.ts';

export function createUtilityBroker(): ProcessBroker {
  return {
    start(entry): ChildPort {
      const child = utilityProcess.fork(entryPath(entry), [], {
        serviceName: `Teardown Docket ${entry}`,
        stdio: 'inherit',
        env: { ...process.env, ...entryEnvironment[entry] },
      });
      return {
        send: (message) => {
          child.postMessage(message);
        },
        onMessage: (receive) => child.on('message', receive),
        onExit: (receive) =>
          child.once('exit', (code) => {
            receive({ code, signal: null });
          }),
        kill: () => child.kill(),
      };
    },
  };
}
