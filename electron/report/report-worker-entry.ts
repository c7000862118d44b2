/** The report's worker thread: takes one order at a time, writes its PDF, says how it went. */
import { dirname } from 'node:path';
import { parentPort } from 'node:worker_threads';

import { AppError, type ErrorShape } from '#shared-types/errors.ts';

import { createDurableFiles } from '../files/durable-files.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { finishPdf } from './finish-pdf.ts';
import {
  partFile,
  type MadeReport,
  type ReportOrder,
  type ReportPhase,
  type ReportWorkerMessage,
} from './report-order.ts';
import { checkPictures, namedPictures } from './report-pictures.ts';
import { writePdf } from './write-pdf.ts';

const port = parentPort;
if (port === null) throw new Error('the report worker runs as a worker thread');
const files = createDurableFiles();

port.on('message', (order: ReportOrder) => {
  void answer(order).then((message) => port.postMessage(message));
});

async function answer(order: ReportOrder): Promise<ReportWorkerMessage> {
  try {
    return { result: { ok: true, value: await make(order, (phase) => port?.postMessage({ phase })) } };
  } catch (error) {
    return { result: { ok: false, error: shapeOf(error) } };
  }
}

async function make(order: ReportOrder, begin: (phase: ReportPhase) => void): Promise<MadeReport> {
  begin('layingOut');
  await checkPictures(order);
  const pictures = namedPictures(order);
  const laidOut = await writePdf(order.model, Object.keys(pictures));
  reachFaultPoint('report.laid-out');
  begin('finishing');
  const { bytes, pages } = await finishPdf(laidOut, order.model, pictures);
  const part = partFile(order);
  try {
    await files.write(part, bytes);
    reachFaultPoint('report.written');
    await files.syncFile(part);
    await files.rename(part, order.outFile);
    await files.syncFolder(dirname(order.outFile));
  } catch (error) {
    if ((await files.stat(part)) !== null) await files.unlink(part);
    throw error;
  }
  return { pages, bytes: bytes.byteLength };
}

function shapeOf(error: unknown): ErrorShape {
  if (error instanceof AppError) return error.toShape();
  const reason = error instanceof Error ? error.message : String(error);
  return new AppError('report-stopped', { reason }, { retryable: true, cause: error }).toShape();
}
