/**
 * Photos on their way into a case: copied and hashed, decoded outside this process, kept, and only then named by a
 * row. A picture that cannot be used is named with what to do, and the rest go on. Whatever stops the work in between,
 * each photo is whole or absent.
 */
import { AppError } from '#shared-types/errors.ts';
import type { BlobId, CaseId, IntakeToken, PhotoId } from '#shared-types/ids.ts';
import type { Job, JobItem } from '#shared-types/job.ts';
import { jobTexts } from '#shared-types/texts/jobs.ts';

import { addBlob, findBlobByHash } from '../database/repositories/blobs.ts';
import { readRemoval } from '../database/repositories/photo-register.ts';
import {
  addPhoto,
  findPhotoOfBlob,
  nextPhotoPlace,
  otherCasesWithBlob,
} from '../database/repositories/photos.ts';
import type { StagedOriginal } from '../files/photo-store.ts';
import type { JobHandle } from '../jobs/job-board.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { inParallel } from './in-parallel.ts';
import { discardIntake, type IntakeFile } from './intake-desk.ts';
import { recordPutBack } from './photo-work.ts';
import { decodeIntoStore } from './picture-shelf.ts';
import { recordWrite, refuseClosedCase } from './recorded-write.ts';
import type { Services } from './services.ts';
import { toldError } from './told-error.ts';
import { whoWorksHere } from './who-works-here.ts';

/** As many as there are decoders: each photo waits for one. */
const photosAtOnce = 2;

/** @throws AppError analyst-needed, not-found, case-closed, intake-gone: before anything is begun */
export function importPhotos(
  services: Services,
  request: { caseId: CaseId; tokens: readonly IntakeToken[] },
): Job {
  const { caseId } = request;
  whoWorksHere(services.db);
  refuseClosedCase(services, caseId);
  const files = request.tokens.map((token) => services.intake.take(token));
  return services.jobs.begin(
    { kind: 'photo-import', caseId, phase: jobTexts.phases.storing, total: files.length },
    async (job) => {
      await importFiles(services, { job, caseId, files });
      return null;
    },
  );
}

/** Also used to fill the sample library, whose files are the program's own. */
export async function importFiles(
  services: Services,
  work: { job: JobHandle; caseId: CaseId; files: readonly IntakeFile[] },
): Promise<void> {
  const { job, caseId, files } = work;
  // Decoded two at a time, but in the case in the order in which they were dropped.
  const firstPlace = takePlaces(services, caseId, files.length);
  await inParallel(files, photosAtOnce, async (file, place) => {
    try {
      if (job.signal.aborted) job.itemDone(place, { ...nothingOf(file), outcome: 'not-begun' });
      else await importFile(services, { job, caseId, file, place, photoPlace: firstPlace + place });
    } finally {
      await discardIntake(file);
    }
  });
  services.publish({ name: 'shelf-changed', payload: {} });
}

/** The first place that no import under way has either, by library and case. */
const promised = new WeakMap<Services['db'], Map<CaseId, number>>();

/** Places for so many photos after those there are and those on their way: what is dropped next comes next. */
function takePlaces({ db }: Services, caseId: CaseId, count: number): number {
  const ofCase = promised.get(db) ?? new Map<CaseId, number>();
  promised.set(db, ofCase);
  const first = Math.max(nextPhotoPlace(db, caseId), ofCase.get(caseId) ?? 0);
  ofCase.set(caseId, first + count);
  return first;
}

type OneFile = { job: JobHandle; caseId: CaseId; file: IntakeFile; place: number; photoPlace: number };

async function importFile(services: Services, one: OneFile): Promise<void> {
  try {
    await keepPicture(services, one);
  } catch (error) {
    if (!(error instanceof AppError)) services.log.fault('photo import', error);
    // A full or refusing disk fails every photo after this one too, each by its name.
    const told = toldError(error, one.file.name).toShape();
    one.job.itemDone(one.place, { ...nothingOf(one.file), outcome: 'failed', error: told });
  }
}

async function keepPicture(services: Services, one: OneFile): Promise<void> {
  const { store, db } = services;
  const staged = await store.stageOriginal(one.file.path, one.file.name);
  try {
    reachFaultPoint('import.staged', staged.sha256);
    if (!findBlobByHash(db, staged.sha256)) {
      await keepNewPicture(services, one, staged);
      return;
    }
    await store.keepOriginal(staged);
    linkKnownPicture(services, one, staged.sha256);
  } finally {
    await store.dropStaged(staged);
    reachFaultPoint('import.staged-dropped', staged.sha256);
  }
}

async function keepNewPicture(services: Services, one: OneFile, staged: StagedOriginal): Promise<void> {
  const { store, db } = services;
  const decoded = await decodeIntoStore(services, {
    path: staged.path,
    sourceName: one.file.name,
    sha256: staged.sha256,
  });
  reachFaultPoint('import.decoded', staged.sha256);
  await store.keepOriginal(staged);
  reachFaultPoint('import.original-kept', staged.sha256);
  // The same picture may have come in by the other lane while this one was decoded.
  if (findBlobByHash(db, staged.sha256)) {
    linkKnownPicture(services, one, staged.sha256);
    return;
  }
  const blobId = services.newId() as BlobId;
  recordPhoto(services, one, { blobId, sha256: staged.sha256, alsoIn: [] }, (at) => {
    addBlob(db, {
      id: blobId,
      sha256: staged.sha256,
      bytes: staged.bytes,
      mediaType: decoded.mediaType,
      width: decoded.width,
      height: decoded.height,
      orientation: decoded.orientation,
      displayWidth: decoded.displayWidth,
      displayHeight: decoded.displayHeight,
      takenAt: decoded.takenAt,
      camera: decoded.camera,
      declaredSynthetic: decoded.declaredSynthetic,
      gps: decoded.gps === null ? null : JSON.stringify(decoded.gps),
      storedAt: at,
    });
  });
  reachFaultPoint('import.recorded', staged.sha256);
}

function linkKnownPicture(services: Services, one: OneFile, sha256: string): void {
  const { db } = services;
  const blob = findBlobByHash(db, sha256);
  if (!blob) throw new Error(`picture ${sha256} is not in the library`);
  const here = findPhotoOfBlob(db, { caseId: one.caseId, blobId: blob.id });
  if (here !== null && readRemoval(db, here.id) === null) {
    one.job.itemDone(one.place, { ...nothingOf(one.file), outcome: 'already-here', photoId: here.id });
    return;
  }
  const alsoIn = otherCasesWithBlob(db, { caseId: one.caseId, blobId: blob.id });
  if (here === null) {
    recordPhoto(services, one, { blobId: blob.id, sha256, alsoIn }, () => undefined);
    return;
  }
  recordPutBack(services, { photoId: here.id, revision: here.revision }, () => {
    const done = { outcome: 'added', photoId: here.id, alsoIn, putBack: true } as const;
    one.job.itemDone(one.place, { ...nothingOf(one.file), ...done });
  });
}

/** The picture's row, the photo's, the job's line and the journal's: all or none. */
function recordPhoto(
  services: Services,
  one: OneFile,
  picture: { blobId: BlobId; sha256: string; alsoIn: string[] },
  before: (at: Parameters<typeof addPhoto>[1]['at']) => void,
): void {
  const id = services.newId() as PhotoId;
  recordWrite(services, {
    caseId: one.caseId,
    what: 'photo added',
    details: { photo: id, sha256: picture.sha256, sourceName: one.file.name, bytes: one.file.bytes },
    write: ({ at, by }) => {
      before(at);
      addPhoto(services.db, {
        id,
        caseId: one.caseId,
        blobId: picture.blobId,
        place: one.photoPlace,
        sourceName: one.file.name,
        at,
        by,
      });
      one.job.itemDone(one.place, {
        ...nothingOf(one.file),
        outcome: 'added',
        photoId: id,
        alsoIn: picture.alsoIn,
      });
    },
  });
  services.publish({ name: 'case-changed', payload: { caseId: one.caseId, what: 'photos' } });
}

function nothingOf(file: IntakeFile): JobItem {
  return { sourceName: file.name, outcome: 'failed', photoId: null, alsoIn: [], putBack: false, error: null };
}
