/** The program behind no carrier: engine and decoders as real processes, in a library folder of the test's own. */
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

import { AppError, type Envelope } from '#shared-types/errors.ts';
import type { AppEvent, EngineState } from '#shared-types/events.ts';

import { createEngineLink } from '../../electron/processes/engine-link.ts';
import type { EntryName } from '../../electron/processes/entry-table.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';
import { workInLibrary, type LibraryWork } from './library-work.ts';
import { quickStart } from './quick-start.ts';

/** The fault a process is started with, or null. `start` counts that kind of process: the first is 1. */
export type FaultAt = (entry: EntryName, start: number) => string | null;

export const noFault: FaultAt = () => null;

/** Only the first engine has the fault: whoever starts in its place is sound. */
export const inFirstEngine =
  (fault: string): FaultAt =>
  (entry, start) =>
    entry === 'engine' && start === 1 ? fault : null;

export type ProgramUnderTest = LibraryWork & {
  readonly events: readonly AppEvent[];
  /** How often the engine was started. */
  engineStarts(): number;
  engineStates(): EngineState[];
  /** Settles with the first telling of that state, past or to come. */
  state(wanted: EngineState): Promise<AppEvent>;
  readonly started: Promise<Envelope<null>>;
  close(): Promise<void>;
};

export function openProgram(folder: string, faultAt: FaultAt = noFault): ProgramUnderTest {
  const events: AppEvent[] = [];
  const waiting = new Set<(event: AppEvent) => void>();
  const starts = new Map<EntryName, number>();
  const library = join(folder, 'own');
  const link = createEngineLink({
    broker: createForkBroker({
      environment: (entry) => {
        const start = (starts.get(entry) ?? 0) + 1;
        starts.set(entry, start);
        return { ...quickStart, TEARDOWN_DOCKET_FAULT: faultAt(entry, start) ?? '' };
      },
    }),
    folders: { own: library, samples: join(folder, 'samples') },
    carrier: 'loopback',
    library: 'own',
    publish: (event) => {
      events.push(event);
      for (const tell of [...waiting]) tell(event);
    },
  });
  onTestFinished(() => link.close());

  return {
    ...workInLibrary({ library, answer: link.call, ask: link.ask }),
    events,
    engineStarts: () => starts.get('engine') ?? 0,
    engineStates: () =>
      events.flatMap((event) => (event.name === 'engine-state' ? [event.payload.state] : [])),
    state: (wanted) =>
      new Promise((resolve) => {
        const tell = (event: AppEvent) => {
          if (event.name !== 'engine-state' || event.payload.state !== wanted) return;
          waiting.delete(tell);
          resolve(event);
        };
        waiting.add(tell);
        events.forEach(tell);
      }),
    started: link.started,
    close: link.close,
  };
}

/** The error's code where the answer is one. */
export function codeOf(envelope: Envelope<unknown>): string | null {
  return envelope.ok ? null : AppError.fromShape(envelope.error).code;
}
