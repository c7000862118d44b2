/**
 * A log of JSON lines for whoever has to find out what happened: never a case's text, never a photo's name.
 * Kept in two files; the older one is replaced when the newer one is full. A log that cannot be written, on a full disk
 * say, stops nobody's work: its lines go to standard error then.
 */
import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';

export type Log = {
  note(event: string, facts?: Readonly<Record<string, string | number | boolean | null>>): void;
  /** A fault of the program: what was thrown, with its stack. */
  fault(where: string, error: unknown): void;
};

const mostBytes = 1_000_000;

export function openLog(folder: string, now: () => string): Log {
  const file = join(folder, 'engine.log');
  const append = (text: string) => {
    mkdirSync(folder, { recursive: true });
    if (sizeOf(file) + text.length > mostBytes) renameSync(file, join(folder, 'engine.older.log'));
    appendFileSync(file, text);
  };
  const write = (line: Record<string, unknown>) => {
    const text = `${JSON.stringify({ at: now(), ...line })}\n`;
    try {
      append(text);
    } catch (error) {
      console.error(`The log could not be written (${String(error)}): ${text.trimEnd()}`);
    }
  };
  return {
    note: (event, facts = {}) => {
      write({ event, ...facts });
    },
    fault: (where, error) => {
      const thrown = error instanceof Error ? error : new Error(String(error));
      write({ event: 'fault', where, name: thrown.name, message: thrown.message, stack: thrown.stack ?? '' });
    },
  };
}

function sizeOf(file: string): number {
  return statSync(file, { throwIfNoEntry: false })?.size ?? 0;
}
