import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';

import { describe, expect, it, onTestFinished } from 'vitest';

import { buildReportModel } from '#analysis/report/report-model.ts';
import { AppError } from '#shared-types/errors.ts';

import { entryPath } from '../../electron/processes/entry-table.ts';
import { createReportMaker, type ReportMaker, type ReportOrder } from '../../electron/report/report-maker.ts';
import { finishPdf } from '../../electron/report/finish-pdf.ts';
import { writePdf } from '../../electron/report/write-pdf.ts';
import { scratchFolder } from '../support/files/scratch-folder.ts';
import { qpdfCheck } from './pdf-tools.ts';
import { plainPicture } from './printed-report.ts';
import { blobId, photo, reportInput } from './report-case.ts';

function opened(maker: ReportMaker): ReportMaker {
  onTestFinished(() => maker.close());
  return maker;
}

function emptyOrder(folder: string, name: string): ReportOrder {
  return {
    model: buildReportModel(reportInput()),
    pictures: {},
    thumbnails: {},
    outFile: join(folder, name),
  };
}

async function errorOf(promise: Promise<unknown>): Promise<AppError> {
  const outcome = await promise.then(
    () => null,
    (error: unknown) => error,
  );
  if (outcome instanceof AppError) return outcome;
  throw new Error(`expected an AppError, got ${String(outcome)}`);
}

const realWorker = () => new Worker(entryPath('report'));
const dyingWorker = () =>
  new Worker(`require('node:worker_threads').parentPort.once('message', () => process.exit(7))`, {
    eval: true,
  });
const throwingWorker = () =>
  new Worker(
    `require('node:worker_threads').parentPort.once('message', () => { throw new Error('the layout ran wild'); })`,
    { eval: true },
  );
const silentWorker = () =>
  new Worker(`require('node:worker_threads').parentPort.on('message', () => undefined)`, { eval: true });

/** Hands out one worker after the other, the last again and again. */
function workersInTurn(...starts: readonly (() => Worker)[]): () => Worker {
  let turn = 0;
  return () => {
    const start = starts[Math.min(turn, starts.length - 1)] ?? realWorker;
    turn += 1;
    return start();
  };
}

describe('the report maker', () => {
  it('makes orders one after the other in one thread, and tells their phases', async () => {
    const folder = scratchFolder();
    let started = 0;
    const maker = opened(
      createReportMaker(() => {
        started += 1;
        return realWorker();
      }),
    );
    const phases: string[] = [];
    const made = await Promise.all(
      ['one.pdf', 'two.pdf', 'three.pdf'].map((name) =>
        maker.make(emptyOrder(folder, name), { onPhase: (phase) => phases.push(`${name} ${phase}`) }),
      ),
    );
    expect(started).toBe(1);
    expect(made.map(({ pages }) => pages)).toEqual([2, 2, 2]);
    expect(phases).toEqual([
      'one.pdf layingOut',
      'one.pdf finishing',
      'two.pdf layingOut',
      'two.pdf finishing',
      'three.pdf layingOut',
      'three.pdf finishing',
    ]);
    expect(readFileSync(join(folder, 'one.pdf')).equals(readFileSync(join(folder, 'three.pdf')))).toBe(true);
  });

  it.each([
    ['exits', dyingWorker, 'exit code 7'],
    ['throws', throwingWorker, 'the layout ran wild'],
  ])('rejects the order whose thread %s, and makes the next in a new one', async (_, worker, reason) => {
    const folder = scratchFolder();
    const maker = opened(createReportMaker(workersInTurn(worker, realWorker)));
    const failing = maker.make(emptyOrder(folder, 'lost.pdf'));
    const waiting = maker.make(emptyOrder(folder, 'made.pdf'));
    const error = await errorOf(failing);
    expect(error.toShape()).toMatchObject({ code: 'report-stopped', details: { reason }, retryable: true });
    expect((await waiting).pages).toBe(2);
    await qpdfCheck(join(folder, 'made.pdf'));
    expect(existsSync(join(folder, 'lost.pdf'))).toBe(false);
  });

  it('stops an order in the middle when asked to, and goes on with the next', async () => {
    const folder = scratchFolder();
    const maker = opened(createReportMaker(workersInTurn(silentWorker, realWorker)));
    const stop = new AbortController();
    const stopped = maker.make(emptyOrder(folder, 'stopped.pdf'), { signal: stop.signal });
    const next = maker.make(emptyOrder(folder, 'next.pdf'));
    // What a thread leaves that is stopped while it writes.
    writeFileSync(join(folder, 'stopped.pdf.part'), 'half a report');
    stop.abort();
    expect((await errorOf(stopped)).code).toBe('job-stopped');
    expect((await next).pages).toBe(2);
    expect(readdirSync(folder)).toEqual(['next.pdf']);
  });

  it('rejects what is running and what waits when it is closed, and takes nothing more', async () => {
    const folder = scratchFolder();
    const maker = createReportMaker(silentWorker);
    const orders = ['one.pdf', 'two.pdf'].map((name) => errorOf(maker.make(emptyOrder(folder, name))));
    await maker.close();
    expect((await Promise.all(orders)).map((error) => error.code)).toEqual(['job-stopped', 'job-stopped']);
    expect((await errorOf(maker.make(emptyOrder(folder, 'three.pdf')))).code).toBe('job-stopped');
  });

  it('names the photo whose picture is not given, not there or no JPEG', async () => {
    const folder = scratchFolder();
    const model = buildReportModel(reportInput({ photos: [photo(1), photo(2)], register: [] }));
    const good = await plainPicture(join(folder, 'good.jpg'), 160, 120);
    const text = join(folder, 'text.jpg');
    writeFileSync(text, 'no picture at all');
    const maker = opened(createReportMaker());
    const outFile = join(folder, 'report.pdf');
    for (const second of [{}, { [blobId(2)]: join(folder, 'gone.jpg') }, { [blobId(2)]: text }]) {
      const pictures = { [blobId(1)]: good, ...second };
      const error = await errorOf(maker.make({ model, pictures, thumbnails: {}, outFile }));
      expect(error.code).toBe('report-picture-missing');
      expect(error.details.number).toBe(2);
    }
    expect(existsSync(outFile)).toBe(false);
    // The thread has survived all that.
    expect(
      (
        await maker.make({
          model,
          pictures: { [blobId(1)]: good, [blobId(2)]: good },
          thumbnails: {},
          outFile,
        })
      ).pages,
    ).toBeGreaterThan(2);
  });

  it('leaves nothing behind where the file cannot be put', async () => {
    const folder = scratchFolder();
    const maker = opened(createReportMaker());
    await maker.make(emptyOrder(folder, 'taken'));
    // A file stands where a folder would have to be.
    const error = await errorOf(maker.make(emptyOrder(join(folder, 'taken'), 'report.pdf')));
    expect(error.code).toBe('report-stopped');
    expect(readdirSync(folder)).toEqual(['taken']);
  });
});

describe('what the layout may read', () => {
  it('is refused a file that was not given, even one a model names', async () => {
    const folder = scratchFolder();
    const secret = await plainPicture(join(folder, 'secret.jpg'), 160, 120);
    const model = buildReportModel(reportInput({ photos: [photo(1)], register: [] }));
    const [plate] = model.plates.plates;
    if (plate === undefined) throw new Error('the model has no plate');
    const naming = (name: string) => ({
      ...model,
      plates: { ...model.plates, plates: [{ ...plate, blobId: name as typeof plate.blobId }] },
    });
    for (const name of [secret, 'http://127.0.0.1:9/picture.jpg']) {
      await expect(writePdf(naming(name), [blobId(1)])).rejects.toThrow(/denied by resource access policy/);
    }
  });

  it('is no picture: one that was not given when the document is finished is named', async () => {
    const model = buildReportModel(reportInput({ photos: [photo(1)], register: [] }));
    const laidOut = await writePdf(model, [blobId(1)]);
    await expect(finishPdf(laidOut, model, {})).rejects.toThrow(`was not given: ${blobId(1)}`);
  });
});
