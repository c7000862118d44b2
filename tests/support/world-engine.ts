/** The engine in the test's own process, on a real library, with real decoder processes: what a page could ask. */
import { statSync } from 'node:fs';
import { basename } from 'node:path';

import type { Channel, RequestOf, ResponseOf } from '#shared-types/api-contract.ts';
import type { TakenIn } from '#shared-types/carrier.ts';
import { AppError, type ErrorShape } from '#shared-types/errors.ts';
import type { AppEvent } from '#shared-types/events.ts';
import type { IntakeToken } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

import type { Db } from '../../electron/database/open-library.ts';
import { startEngine } from '../../electron/engine/engine.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';

export type EngineHere = {
  readonly folder: string;
  readonly events: readonly AppEvent[];
  /** The engine's own connection: for looking into the database, never for writing past the engine. */
  readonly db: Db;
  /** @throws AppError what the engine refuses with */
  ask<C extends Channel>(channel: C, request: RequestOf<C>): Promise<ResponseOf<C>>;
  /** What the engine says no with. @throws Error when it does not say no */
  refusalOf<C extends Channel>(channel: C, request: RequestOf<C>): Promise<ErrorShape>;
  takeIn(path: string): Promise<IntakeToken>;
  /** The job as it ends. */
  ended(job: Job): Promise<Job>;
  close(): Promise<void>;
};

/** @param broker what starts the decoders, where it is not the ordinary one */
export async function startEngineHere(
  folder: string,
  broker = createForkBroker(),
  library: 'own' | 'samples' = 'own',
): Promise<EngineHere> {
  const connections: Db[] = [];
  const events: AppEvent[] = [];
  const watchers = new Set<() => void>();
  const engine = await startEngine({
    config: { library, folder, carrier: 'loopback' },
    broker,
    publish: (event) => {
      events.push(event);
      for (const tell of watchers) tell();
    },
    openLibrary: () => undefined,
    onConnection: (connection) => connections.push(connection),
  });
  const [db] = connections;
  if (!db) throw new Error('the engine showed no connection');

  const ask: EngineHere['ask'] = async (channel, request) => {
    const envelope = await engine.call(channel, request);
    if (!envelope.ok) throw AppError.fromShape(envelope.error);
    return envelope.value as ResponseOf<typeof channel>;
  };

  const ended = async (begun: Job): Promise<Job> => {
    for (;;) {
      const next = Promise.withResolvers<void>();
      watchers.add(next.resolve);
      const job = await ask('jobs.read', { jobId: begun.id });
      if (job.state !== 'running' && job.state !== 'waiting') {
        watchers.delete(next.resolve);
        return job;
      }
      await next.promise;
      watchers.delete(next.resolve);
    }
  };

  return {
    folder,
    events,
    db,
    ask,
    ended,
    refusalOf: async (channel, request) => {
      const envelope = await engine.call(channel, request);
      if (envelope.ok) throw new Error(`${channel} was not refused`);
      return envelope.error;
    },
    takeIn: async (path) => {
      const name = basename(path);
      const envelope = await engine.ask({
        ask: 'take-in',
        path,
        name,
        bytes: statSync(path).size,
        temporary: false,
      });
      if (!envelope.ok) throw AppError.fromShape(envelope.error);
      return (envelope.value as TakenIn).token;
    },
    close: () => engine.close('in good order'),
  };
}
