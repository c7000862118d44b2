/** The engine as the program runs it: a process of its own, with decoder processes, asked through a carrier's link. */
import { readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';

import type { Channel, RequestOf, ResponseOf } from '#shared-types/api-contract.ts';
import type { TakenIn } from '#shared-types/carrier.ts';
import { AppError, type Envelope } from '#shared-types/errors.ts';
import type { IntakeToken } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

import { createEngineLink } from '../../electron/processes/engine-link.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';

export type EngineProcess = {
  ask<C extends Channel>(channel: C, request: RequestOf<C>): Promise<ResponseOf<C>>;
  takeIn(path: string): Promise<IntakeToken>;
  /** @throws Error when it ends in another way than done */
  done(job: Job): Promise<Job>;
  /** Largest resident memory so far in bytes, summed over engine and decoders; null where the system does not tell. */
  peakMemory(): number | null;
  close(): Promise<void>;
};

export async function startEngineProcess(folder: string): Promise<EngineProcess> {
  const processes: number[] = [];
  const ended = new Map<string, Job>();
  const waiting = new Map<string, (job: Job) => void>();
  const link = createEngineLink({
    broker: createForkBroker({
      onStart: (_entry, pid) => processes.push(...(pid === undefined ? [] : [pid])),
    }),
    folders: { own: folder, samples: `${folder}-samples` },
    carrier: 'loopback',
    library: 'own',
    publish: (event) => {
      if (event.name !== 'job-changed') return;
      const { job } = event.payload;
      if (job.state === 'running' || job.state === 'waiting') return;
      ended.set(job.id, job);
      waiting.get(job.id)?.(job);
    },
  });
  valueOf(await link.started);

  return {
    ask: async (channel, request) => valueOf(await link.call(channel, request)) as ResponseOf<typeof channel>,
    takeIn: async (path) => {
      const bytes = statSync(path).size;
      const asked = { ask: 'take-in', path, name: basename(path), bytes, temporary: false } as const;
      return valueOf(await link.ask<TakenIn>(asked)).token;
    },
    done: async ({ id }) => {
      const job = ended.get(id) ?? (await new Promise<Job>((resolve) => waiting.set(id, resolve)));
      if (job.state !== 'done' || job.items.some(({ outcome }) => outcome === 'failed')) {
        throw new Error(`the job ended otherwise: ${JSON.stringify(job)}`);
      }
      return job;
    },
    peakMemory: () => sumOfPeaks(processes),
    close: () => link.close(),
  };
}

function valueOf<Value>(envelope: Envelope<Value>): Value {
  if (envelope.ok) return envelope.value;
  throw AppError.fromShape(envelope.error);
}

/** VmHWM of proc_pid_status(5): the peak of each process, though not all at the same moment. */
function sumOfPeaks(processes: readonly number[]): number | null {
  if (process.platform !== 'linux') return null;
  const kilobytes = processes.map((pid) => {
    const status = readFileSync(`/proc/${String(pid)}/status`, 'utf8');
    return Number(/^VmHWM:\s+(\d+) kB$/m.exec(status)?.[1] ?? Number.NaN);
  });
  return 1_024 * kilobytes.reduce((sum, each) => sum + each, 0);
}
