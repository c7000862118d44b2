/**
 * Processes for the engine, started by its parent: only the desktop's main process may start utility processes,
 * so the engine asks and the parent relays. Messages are small (paths and sizes); bytes never pass here.
 */
import type { ChildPort, ExitReport, ProcessBroker } from './child-port.ts';
import type { FromEngine, ToEngine } from './engine-messages.ts';

type Child = {
  readonly receivers: ((message: unknown) => void)[];
  readonly exitReceivers: ((exit: ExitReport) => void)[];
};

/** The engine's end. */
export function createRelayedBroker(send: (message: FromEngine) => void): {
  broker: ProcessBroker;
  receive(message: Extract<ToEngine, { kind: 'child-message' | 'child-exit' }>): void;
  /**
   * The parent, and with it every child, is gone: nobody will tell of their ends any more. From now on a child that
   * is started or killed has ended at once.
   */
  loseParent(): void;
} {
  const children = new Map<number, Child>();
  let last = 0;
  let parentGone = false;

  const end = (child: number, exit: ExitReport) => {
    const ends = children.get(child);
    children.delete(child);
    for (const receive of ends?.exitReceivers ?? []) receive(exit);
  };
  const endUntold = (child: number) => {
    // Never within the call that started or killed it: who called has yet to hear of it by onExit.
    setImmediate(end, child, { code: null, signal: null });
  };

  return {
    broker: {
      start(entry): ChildPort {
        const child = (last += 1);
        const ends: Child = { receivers: [], exitReceivers: [] };
        children.set(child, ends);
        if (parentGone) endUntold(child);
        else send({ kind: 'child-start', child, entry });
        return {
          send: (message) => {
            send({ kind: 'child-send', child, message });
          },
          onMessage: (receive) => ends.receivers.push(receive),
          onExit: (receive) => ends.exitReceivers.push(receive),
          kill: () => {
            if (parentGone) endUntold(child);
            else send({ kind: 'child-kill', child });
          },
        };
      },
    },
    receive(message) {
      if (message.kind === 'child-exit') end(message.child, message.exit);
      else for (const receive of children.get(message.child)?.receivers ?? []) receive(message.message);
    },
    loseParent() {
      parentGone = true;
    },
  };
}

/** The parent's end: keeps the engine's children, and ends them with it. */
export function createRelay(
  broker: ProcessBroker,
  send: (message: ToEngine) => void,
): {
  receive(message: Extract<FromEngine, { kind: 'child-start' | 'child-send' | 'child-kill' }>): void;
  endAll(): void;
} {
  const children = new Map<number, ChildPort>();
  return {
    receive(message) {
      const { child } = message;
      if (message.kind === 'child-start') {
        const port = broker.start(message.entry);
        children.set(child, port);
        port.onMessage((said) => {
          send({ kind: 'child-message', child, message: said });
        });
        port.onExit((exit) => {
          children.delete(child);
          send({ kind: 'child-exit', child, exit });
        });
      } else if (message.kind === 'child-send') {
        children.get(child)?.send(message.message);
      } else {
        children.get(child)?.kill();
      }
    },
    endAll() {
      for (const port of children.values()) port.kill();
      children.clear();
    },
  };
}
