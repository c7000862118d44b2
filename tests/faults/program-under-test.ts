/** The program behind no carrier: engine and decoders as real processes, in a library folder of the test's own. */
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

import { AppError, type Envelope } from '#shared-types/errors.ts';
import type { AppEvent, EngineState } from '#shared-types/events.ts';
import type { Job } from '#shared-types/job.ts';

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
  /** Settles with the first event that is wanted, past or to come, from the one with that number on. */
  told(wanted: (event: AppEvent) => boolean, from?: number): Promise<AppEvent>;
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

  const told: ProgramUnderTest['told'] = (wanted, from = 0) =>
    new Promise((resolve) => {
      const tell = (event: AppEvent) => {
        if (!wanted(event)) return;
        waiting.delete(tell);
        resolve(event);
      };
      waiting.add(tell);
      events.slice(from).forEach(tell);
    });

  return {
    ...workInLibrary({ library, answer: link.call, ask: link.ask }),
    events,
    engineStarts: () => starts.get('engine') ?? 0,
    engineStates: () =>
      events.flatMap((event) => (event.name === 'engine-state' ? [event.payload.state] : [])),
    told,
    state: (wanted) => told((event) => event.name === 'engine-state' && event.payload.state === wanted),
    started: link.started,
    close: link.close,
  };
}

/**
 * How the job ended, also where the engine died over it. Waits for what is told, as asking on would take the processor
 * from the work.
 */
export async function endOf(program: ProgramUnderTest, begin: () => Promise<Job>): Promise<Job> {
  const from = program.events.length;
  const { id } = await begin();
  await program.told(
    (event) =>
      // Told by each engine but the first.
      event.name === 'resync' ||
      (event.name === 'job-changed' && event.payload.job.id === id && event.payload.job.endedAt !== null),
    from,
  );
  return program.call('jobs.read', { jobId: id });
}

/** The error's code where the answer is one. */
export function codeOf(envelope: Envelope<unknown>): string | null {
  return envelope.ok ? null : AppError.fromShape(envelope.error).code;
}
