/**
 * Makes printed reports in a worker thread, one after the other. The thread is started by the first order; one that
 * stops halfway costs its order and no other, and the next order starts a new one.
 */
import { rm } from 'node:fs/promises';
import { Worker } from 'node:worker_threads';

import { AppError } from '#shared-types/errors.ts';

import { entryPath } from '../processes/entry-table.ts';
import {
  partFile,
  type MadeReport,
  type ReportOrder,
  type ReportPhase,
  type ReportWorkerMessage,
} from './report-order.ts';

export type { MadeReport, ReportOrder, ReportPhase } from './report-order.ts';

export type ReportMaker = {
  /**
   * Settles when `outFile` is whole and on the disk. Rejects with an AppError: `report-picture-missing`,
   * `report-stopped` (the thread died, or the layout failed), `disk-full`, `disk-refused`, `job-stopped`.
   */
  make(order: ReportOrder, watch?: ReportWatch): Promise<MadeReport>;
  /** Stops the thread; what is still waiting is rejected as `job-stopped`. */
  close(): Promise<void>;
};

export type ReportWatch = {
  readonly onPhase?: (phase: ReportPhase) => void;
  /** Aborting stops the order at once, even in the middle of the layout: it rejects as `job-stopped`. */
  readonly signal?: AbortSignal;
};

type Pending = {
  readonly order: ReportOrder;
  readonly watch: ReportWatch;
  readonly resolve: (made: MadeReport) => void;
  readonly reject: (error: AppError) => void;
};

/** `startWorker` stands here so that a thread that dies can be tried out. */
export function createReportMaker(
  startWorker: () => Worker = () => new Worker(entryPath('report')),
): ReportMaker {
  const waiting: Pending[] = [];
  let worker: Worker | null = null;
  let running: Pending | null = null;
  let closed = false;

  function next(): void {
    if (running !== null) return;
    const pending = waiting.shift();
    if (pending === undefined) return;
    running = pending;
    worker ??= started();
    worker.postMessage(pending.order);
  }

  function started(): Worker {
    const thread = startWorker();
    let reason = '';
    thread.on('message', (message: ReportWorkerMessage) => {
      if (thread === worker) receive(message);
    });
    thread.on('error', (error: unknown) => {
      reason = error instanceof Error ? error.message : String(error);
    });
    thread.on('messageerror', (error: Error) => {
      reason = error.message;
      void thread.terminate();
    });
    thread.on('exit', (code) => {
      if (thread !== worker) return;
      worker = null;
      const details = { reason: reason === '' ? `exit code ${code}` : reason };
      settle((pending) => cutShort(pending, new AppError('report-stopped', details, { retryable: true })));
    });
    return thread;
  }

  function receive(message: ReportWorkerMessage): void {
    if ('phase' in message) {
      running?.watch.onPhase?.(message.phase);
      return;
    }
    const { result } = message;
    settle((pending) => {
      if (result.ok) pending.resolve(result.value);
      else pending.reject(AppError.fromShape(result.error));
    });
  }

  function settle(tell: (pending: Pending) => void): void {
    const pending = running;
    running = null;
    if (pending !== null) tell(pending);
    next();
  }

  async function stopThread(): Promise<void> {
    const thread = worker;
    worker = null;
    await thread?.terminate();
  }

  function abort(pending: Pending): void {
    const place = waiting.indexOf(pending);
    if (place >= 0) {
      waiting.splice(place, 1);
      pending.reject(new AppError('job-stopped'));
    } else if (running === pending) {
      const stopping = stopThread();
      settle((stopped) => void stopping.then(() => cutShort(stopped, new AppError('job-stopped'))));
    }
  }

  return {
    make: (order, watch = {}) =>
      new Promise<MadeReport>((resolve, reject) => {
        if (closed || watch.signal?.aborted === true) {
          reject(new AppError('job-stopped'));
          return;
        }
        const pending: Pending = { order, watch, resolve, reject };
        watch.signal?.addEventListener('abort', () => abort(pending), { once: true });
        waiting.push(pending);
        next();
      }),
    close: async () => {
      closed = true;
      const left = waiting.splice(0);
      const stopped = running;
      running = null;
      await stopThread();
      if (stopped !== null) cutShort(stopped, new AppError('job-stopped'));
      for (const pending of left) pending.reject(new AppError('job-stopped'));
    },
  };
}

/** A thread that was cut short may leave the beginning of its file. */
function cutShort(pending: Pending, error: AppError): void {
  const reject = () => pending.reject(error);
  void rm(partFile(pending.order), { force: true }).then(reject, reject);
}
