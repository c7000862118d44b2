/**
 * Long work as rows: begun, told about while it runs, stopped on request, and ended in exactly one way.
 * Progress is told at most every tellEvery milliseconds, the beginning and the end always.
 */
import { AppError } from '#shared-types/errors.ts';
import type { AppEvent } from '#shared-types/events.ts';
import type { CaseId, JobId } from '#shared-types/ids.ts';
import type { FinishedDocument, Job, JobItem, JobKind } from '#shared-types/job.ts';
import { diskWhats } from '#shared-types/texts/disk.ts';
import type { Instant } from '#shared-types/times.ts';

import type { Db } from '../database/open-library.ts';
import {
  addJob,
  addJobItem,
  endJob,
  listJobs,
  markInterruptedJobs,
  readJob,
  writeJobProgress,
} from '../database/repositories/jobs.ts';
import type { Log } from '../log/log.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { toldError } from '../services/told-error.ts';

export type JobHandle = {
  readonly id: JobId;
  /** Aborted when the job is asked to stop. */
  readonly signal: AbortSignal;
  /** One more item is finished, as the row says from now on. Call it inside the transaction that finished it. */
  itemDone(place: number, item: JobItem): void;
  /** In words of jobTexts.phases. */
  phase(phase: string): void;
  /** How far the phase is, for work whose steps are no items of the job; told, and not kept in the row. */
  counted(done: number, total: number): void;
};

export type JobBoard = {
  /** Begins the work and answers at once; `work` may answer the document it made. */
  begin(
    order: { kind: JobKind; caseId: CaseId | null; phase: string; total: number },
    work: (job: JobHandle) => Promise<FinishedDocument | null>,
  ): Job;
  list(): Job[];
  read(id: JobId): Job;
  /** Asks a running job to stop after what it is doing now. */
  stop(id: JobId): Job;
  stopAll(): void;
  /** Settles when every job begun here has ended. */
  idle(): Promise<void>;
};

type Deps = {
  readonly db: Db;
  readonly now: () => Instant;
  readonly newId: () => string;
  readonly publish: (event: AppEvent) => void;
  readonly log: Log;
  /** Milliseconds of a clock that only runs forward. */
  readonly ticks: () => number;
};

const tellEvery = 120;

type Running = {
  readonly stop: AbortController;
  readonly beganAt: number;
  phase: string;
  /** Of the phase it is in, where its steps are counted and are no items. */
  counted: { readonly done: number; readonly total: number } | null;
  toldAt: number;
  ended: Promise<void>;
};

type Ending = Omit<Parameters<typeof endJob>[1], 'id'>;

/** Jobs that the last run of the engine left behind are marked as interrupted first. */
export function openJobBoard(deps: Deps): JobBoard {
  const { db } = deps;
  markInterruptedJobs(db, deps.now());
  const running = new Map<JobId, Running>();
  /** Ends that a full disk would not take: told from here until there is room for them. */
  const unwritten = new Map<JobId, Ending>();

  const asItStands = (job: Job): Job => {
    const ending = unwritten.get(job.id);
    if (ending) {
      const { at, ...how } = ending;
      return { ...job, ...how, endedAt: at };
    }
    const run = running.get(job.id);
    const seconds = run ? (deps.ticks() - run.beganAt) / 1000 : 0;
    const shown = run?.counted ? { ...job, ...run.counted } : job;
    return run && shown.done > 0 && seconds > 0.5 ? { ...shown, rate: shown.done / seconds } : shown;
  };
  const read = (id: JobId): Job => asItStands(readJob(db, id));
  const tell = (id: JobId) => {
    deps.publish({ name: 'job-changed', payload: { job: read(id) } });
  };

  function progressed(id: JobId, run: Running): void {
    writeJobProgress(db, { id, phase: run.phase });
    tellSoon(id, run);
  }

  function tellSoon(id: JobId, run: Running): void {
    const now = deps.ticks();
    if (now - run.toldAt < tellEvery) return;
    run.toldAt = now;
    // After the transaction that this may be part of: what it writes is told when it is there, or not at all.
    queueMicrotask(() => {
      tell(id);
    });
  }

  function handleOf(id: JobId, run: Running): JobHandle {
    return {
      id,
      signal: run.stop.signal,
      itemDone(place, item) {
        addJobItem(db, { jobId: id, place, item });
        progressed(id, run);
      },
      phase(next) {
        run.phase = next;
        run.counted = null;
        progressed(id, run);
      },
      counted(done, total) {
        run.counted = { done, total };
        tellSoon(id, run);
      },
    };
  }

  function end(id: JobId, ending: Ending): void {
    try {
      endJob(db, { id, ...ending });
      reachFaultPoint('job.ended');
      unwritten.delete(id);
    } catch (error) {
      deps.log.fault('job end', error);
      unwritten.set(id, ending);
    }
  }

  async function run(id: JobId, state: Running, work: Parameters<JobBoard['begin']>[1]): Promise<void> {
    const { signal } = state.stop;
    const nothing = { document: null, error: null };
    try {
      const document = await work(handleOf(id, state));
      end(id, { ...nothing, state: signal.aborted ? 'stopped' : 'done', at: deps.now(), document });
    } catch (error) {
      if (!(error instanceof AppError)) deps.log.fault('job', error);
      const told = toldError(error, diskWhats.library);
      const stopped = signal.aborted && told.code === 'job-stopped';
      const how = stopped ? nothing : { ...nothing, error: told.toShape() };
      end(id, { ...how, state: stopped ? 'stopped' : 'failed', at: deps.now() });
    } finally {
      running.delete(id);
      tell(id);
    }
  }

  return {
    begin(order, work) {
      for (const [id, ending] of unwritten) end(id, ending);
      const id = deps.newId() as JobId;
      addJob(db, { id, ...order, at: deps.now() });
      const now = deps.ticks();
      const state: Running = {
        stop: new AbortController(),
        beganAt: now,
        phase: order.phase,
        counted: null,
        toldAt: now,
        ended: Promise.resolve(),
      };
      running.set(id, state);
      const job = read(id);
      deps.publish({ name: 'job-changed', payload: { job } });
      state.ended = run(id, state, work).catch((error: unknown) => {
        deps.log.fault('job end', error);
      });
      return job;
    },
    list: () => listJobs(db, 20).map(asItStands),
    read,
    stop(id) {
      running.get(id)?.stop.abort();
      return read(id);
    },
    stopAll() {
      for (const { stop } of running.values()) stop.abort();
    },
    async idle() {
      while (running.size > 0) await Promise.all([...running.values()].map((one) => one.ended));
    },
  };
}
