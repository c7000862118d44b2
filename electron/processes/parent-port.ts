/**
 * The child's end of the line to its parent, the same for a forked Node process and for a desktop utility process.
 * The latter is recognised by its shape, so that nothing here imports the desktop runtime.
 */
import type { ParentPort } from './child-port.ts';

type UtilityParentPort = {
  postMessage(message: unknown): void;
  on(event: 'message', receive: (event: { readonly data: unknown }) => void): void;
};

function utilityParentPort(): UtilityParentPort | null {
  const found = (process as { parentPort?: UtilityParentPort | null }).parentPort;
  return found ?? null;
}

/** Throws an Error in a process that was not started through a ProcessBroker. */
export function parentPort(): ParentPort {
  const utility = utilityParentPort();
  if (utility !== null) {
    return {
      send: (message) => {
        utility.postMessage(message);
      },
      onMessage: (receive) => {
        utility.on('message', (event) => {
          receive(event.data);
        });
      },
    };
  }
  if (process.send === undefined) throw new Error('This process has no parent to talk to.');
  const send = process.send.bind(process);
  return {
    send: (message) => {
      // A parent that is gone cannot be told; whenParentGone is how a child learns of it.
      if (process.connected) send(message);
    },
    onMessage: (receive) => {
      process.on('message', receive);
    },
  };
}

/**
 * Calls `act` when the parent of a forked process is gone, however it ended.
 * A utility process is ended by the desktop runtime together with its parent: there, `act` is never called.
 */
export function whenParentGone(act: () => void): void {
  if (utilityParentPort() === null) process.on('disconnect', act);
}
