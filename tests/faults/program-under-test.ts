/** The program behind no carrier: engine and decoders as real processes, in a library folder of the test's own. */
import { statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { onTestFinished } from 'vitest';

import type { Channel, RequestOf, ResponseOf } from '#shared-types/api-contract.ts';
import type { TakenIn } from '#shared-types/carrier.ts';
import { AppError, type Envelope } from '#shared-types/errors.ts';
import type { AppEvent, EngineState } from '#shared-types/events.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

import { createEngineLink } from '../../electron/processes/engine-link.ts';
import type { CarrierAsk, ServedFile } from '../../electron/processes/engine-messages.ts';
import type { EntryName } from '../../electron/processes/entry-table.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';
import { exchanges, jobEnded, valueOf } from '../support/exchanges.ts';

/** The fault a process is started with, or null. `start` counts that kind of process: the first is 1. */
export type FaultAt = (entry: EntryName, start: number) => string | null;

export const noFault: FaultAt = () => null;

/** Only the first engine has the fault: whoever starts in its place is sound. */
export const inFirstEngine =
  (fault: string): FaultAt =>
  (entry, start) =>
    entry === 'engine' && start === 1 ? fault : null;

export type ProgramUnderTest = {
  readonly library: string;
  readonly events: readonly AppEvent[];
  /** How often the engine was started. */
  engineStarts(): number;
  engineStates(): EngineState[];
  /** Settles with the first event, past or to come, that fits. */
  event(fits: (event: AppEvent) => boolean): Promise<AppEvent>;
  state(wanted: EngineState): Promise<AppEvent>;
  readonly started: Promise<Envelope<null>>;
  answer(channel: Channel, request: unknown): Promise<Envelope<unknown>>;
  /** Throws the AppError of an answer that is none. */
  call<C extends Channel>(channel: C, request: RequestOf<C>): Promise<ResponseOf<C>>;
  ask<Value>(ask: CarrierAsk): Promise<Envelope<Value>>;
  picture(address: string): Promise<ServedFile>;
  openCase(number?: string): Promise<CaseId>;
  beginImport(caseId: CaseId, paths: readonly string[]): Promise<Job>;
  importAll(caseId: CaseId, paths: readonly string[]): Promise<Job>;
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
        return { TEARDOWN_DOCKET_FAULT: faultAt(entry, start) ?? '' };
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

  const program: ProgramUnderTest = {
    library,
    events,
    engineStarts: () => starts.get('engine') ?? 0,
    engineStates: () =>
      events.flatMap((event) => (event.name === 'engine-state' ? [event.payload.state] : [])),
    event: (fits) =>
      new Promise((resolve) => {
        const known = events.find(fits);
        if (known) {
          resolve(known);
          return;
        }
        const tell = (event: AppEvent) => {
          if (!fits(event)) return;
          waiting.delete(tell);
          resolve(event);
        };
        waiting.add(tell);
      }),
    state: (wanted) =>
      program.event((event) => event.name === 'engine-state' && event.payload.state === wanted),
    started: link.started,
    answer: link.call,
    call: async (channel, request) => valueOf(await link.call(channel, request)) as never,
    ask: link.ask,
    picture: async (address) => valueOf(await link.ask<ServedFile>({ ask: 'picture', address })),
    async openCase(number = '26-0147') {
      if ((await program.call('analysts.list', {})).length === 0) {
        await program.call('analysts.add', exchanges['analysts.add']({} as never));
      }
      const draft = { ...exchanges['cases.open']({} as never), number };
      return (await program.call('cases.open', draft)).caseId;
    },
    async beginImport(caseId, paths) {
      const tokens = [];
      for (const path of paths) {
        const name = basename(path);
        const file = { path, name, bytes: statSync(path).size, temporary: false };
        tokens.push(valueOf(await link.ask<TakenIn>({ ask: 'take-in', ...file })).token);
      }
      return program.call('photos.import', { caseId, tokens });
    },
    async importAll(caseId, paths) {
      const { id } = await program.beginImport(caseId, paths);
      return jobEnded({ call: link.call }, id);
    },
    close: link.close,
  };
  return program;
}

/** The error's code where the answer is one. */
export function codeOf(envelope: Envelope<unknown>): string | null {
  return envelope.ok ? null : AppError.fromShape(envelope.error).code;
}
