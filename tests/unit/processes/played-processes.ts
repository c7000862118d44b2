/** A broker whose processes the test plays itself: it sees what each was sent, and says and ends what it likes. */
import type { ChildPort, ExitReport, ProcessBroker } from '../../../electron/processes/child-port.ts';
import type { EntryName } from '../../../electron/processes/entry-table.ts';

export type PlayedProcess = {
  readonly entry: EntryName;
  readonly sent: unknown[];
  readonly killed: () => boolean;
  say(message: unknown): void;
  /** Ends it; a process that was ended can still be made to say what was on its way. */
  end(exit?: ExitReport): void;
};

export function playedProcesses(): { broker: ProcessBroker; started: PlayedProcess[] } {
  const started: PlayedProcess[] = [];
  const start = (entry: EntryName): ChildPort => {
    const receivers: ((message: unknown) => void)[] = [];
    const exitReceivers: ((exit: ExitReport) => void)[] = [];
    const sent: unknown[] = [];
    let killed = false;
    started.push({
      entry,
      sent,
      killed: () => killed,
      say: (message) => {
        for (const receive of receivers) receive(message);
      },
      end: (exit = { code: null, signal: 'SIGKILL' }) => {
        for (const receive of exitReceivers.splice(0)) receive(exit);
      },
    });
    return {
      send: (message) => sent.push(structuredClone(message)),
      onMessage: (receive) => receivers.push(receive),
      onExit: (receive) => exitReceivers.push(receive),
      kill: () => {
        killed = true;
      },
    };
  };
  return { broker: { start }, started };
}
