/**
 * A child process as seen by whoever uses it. The loopback host forks Node children, the desktop shell starts
 * utility processes; both offer this, so that engine and decoders never know which of the two they live in.
 */
import type { EntryName } from './entry-table.ts';

export type ExitReport = { readonly code: number | null; readonly signal: string | null };

export type ChildPort = {
  send(message: unknown): void;
  onMessage(receive: (message: unknown) => void): void;
  /** Called once, also when the process was killed or could not be started. */
  onExit(receive: (exit: ExitReport) => void): void;
  kill(): void;
};

/** Starts killable processes: the only way to get one. */
export type ProcessBroker = { start(entry: EntryName): ChildPort };

/** The other end: what runs inside the child talks to its parent through this. */
export type ParentPort = {
  send(message: unknown): void;
  onMessage(receive: (message: unknown) => void): void;
};
