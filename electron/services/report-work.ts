/** Makes the printed report of a case as a job whose document is a PDF. */
import { buildReportModel } from '#analysis/report/report-model.ts';
import { AppError } from '#shared-types/errors.ts';
import type { BlobId } from '#shared-types/ids.ts';
import type { FinishedDocument, Job } from '#shared-types/job.ts';
import type { ReportRequest } from '#shared-types/report.ts';
import { jobTexts } from '#shared-types/texts/jobs.ts';

import { readCase } from '../database/repositories/cases.ts';
import { readChain } from '../database/repositories/chain.ts';
import { listCustody } from '../database/repositories/custody.ts';
import { listFindings } from '../database/repositories/findings.ts';
import { journalHead } from '../database/repositories/journal.ts';
import { listMarks } from '../database/repositories/marks.ts';
import { listParties } from '../database/repositories/parties.ts';
import { listRegister } from '../database/repositories/photo-register.ts';
import { listPhotos } from '../database/repositories/photos.ts';
import { readReportPlan } from '../database/repositories/report-plans.ts';
import type { JobHandle } from '../jobs/job-board.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { inParallel } from './in-parallel.ts';
import { derivedCopy } from './picture-shelf.ts';
import { plateOf } from './plate-shelf.ts';
import type { Services } from './services.ts';
import { whoWorksHere } from './who-works-here.ts';

/** @throws AppError not-found, analyst-needed, report-empty: before anything is begun */
export function makeReport(services: Services, request: ReportRequest): Job {
  const order = gather(services, request);
  const { gathering } = jobTexts.phases;
  return services.jobs.begin({ kind: 'report', caseId: request.caseId, phase: gathering, total: 1 }, (job) =>
    print(services, order, job),
  );
}

type Gathered = ReturnType<typeof gather>;

function gather(services: Services, { caseId, paper }: ReportRequest) {
  const { db } = services;
  const teardownCase = readCase(db, caseId);
  const photos = listPhotos(db, caseId);
  const findings = listFindings(db, caseId);
  if (photos.length === 0 && findings.length === 0) throw new AppError('report-empty');
  const model = buildReportModel({
    isSample: services.config.library === 'samples',
    teardownCase,
    parties: listParties(db, caseId),
    custody: listCustody(db, caseId),
    photos,
    register: listRegister(db, caseId),
    marks: listMarks(db, caseId),
    findings,
    pack: services.packs.ofCase(teardownCase.pack),
    chain: readChain(db, caseId),
    plan: readReportPlan(db, caseId),
    analyst: whoWorksHere(db),
    paper,
    instant: services.now(),
    journal: journalHead(db),
  });
  return { caseId, number: teardownCase.number, photos, model };
}

async function print(services: Services, order: Gathered, job: JobHandle): Promise<FinishedDocument> {
  const pictures = await drawPlates(services, order, job);
  const thumbnails: Record<BlobId, string> = {};
  for (const photo of order.photos) {
    thumbnails[photo.blobId] = await derivedCopy(services, photo, 'thumbnail');
  }
  const fileName = reportFileName(order.number);
  const mediaType = 'application/pdf';
  const { token, file } = services.deliveries.begin({ fileName, mediaType });
  reachFaultPoint('report.gathered');
  const { pages, bytes } = await services.reports.make(
    { model: order.model, pictures, thumbnails, outFile: file },
    { signal: job.signal, onPhase: (phase) => job.phase(jobTexts.phases[phase]) },
  );
  reachFaultPoint('report.made');
  return { token, fileName, mediaType, bytes, pages };
}

/** As many as there are decoders. */
const platesAtOnce = 2;

/** Path of each plate's picture by its blob. Stops between two plates when the job is asked to. */
async function drawPlates(
  services: Services,
  { model, photos }: Gathered,
  job: JobHandle,
): Promise<Record<BlobId, string>> {
  const { plates } = model.plates;
  const pictures: Record<BlobId, string> = {};
  let done = 0;
  job.phase(jobTexts.phases.drawing);
  await inParallel(plates, platesAtOnce, async ({ blobId, photoNumber, pixels }) => {
    if (job.signal.aborted) throw new AppError('job-stopped');
    const photo = photos[photoNumber - 1];
    if (photo === undefined) throw new Error(`no photo ${String(photoNumber)} for a plate`);
    pictures[blobId] = await plateOf(services, photo, pixels);
    done += 1;
    job.counted(done, plates.length);
  });
  return pictures;
}

/** The case number may hold characters that no file name takes. */
export function reportFileName(number: string): string {
  return `report-${number.replaceAll(/[^\p{L}\p{N}._-]+/gu, '-')}.pdf`;
}
