/** The engine: owns the library for as long as it runs, answers calls, and closes everything it opened. */
import { randomUUID } from 'node:crypto';
import { accessSync, constants, mkdirSync } from 'node:fs';
import { setImmediate } from 'node:timers/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';

import type { Envelope } from '#shared-types/errors.ts';
import type { AppEvent } from '#shared-types/events.ts';
import type { LibraryName, SweepReport } from '#shared-types/library.ts';
import type { Instant } from '#shared-types/times.ts';

import { lockLibrary } from '../database/library-lock.ts';
import { openLibrary, type Db, type OpenedLibrary } from '../database/open-library.ts';
import { findPictureOfHash, listPictureHashes } from '../database/repositories/blobs.ts';
import { asDiskError } from '../files/disk-error.ts';
import { createDurableFiles, type DurableFiles } from '../files/durable-files.ts';
import { createPhotoStore, type PhotoStore } from '../files/photo-store.ts';
import { createDecoderPool } from '../images/decoder-pool.ts';
import { openJobBoard } from '../jobs/job-board.ts';
import { openLog } from '../log/log.ts';
import type { ProcessBroker } from '../processes/child-port.ts';
import type { CarrierAsk, EngineConfig } from '../processes/engine-messages.ts';
import { shippedPath } from '../processes/entry-table.ts';
import { reachFaultPoint } from '../processes/fault-point.ts';
import { createReportMaker } from '../report/report-maker.ts';
import { openDeliveryDesk } from '../services/delivery-desk.ts';
import { openIntakeDesk } from '../services/intake-desk.ts';
import { openPackShelf } from '../services/pack-shelf.ts';
import { servePicture } from '../services/picture-shelf.ts';
import { plateBytesKept } from '../services/plate-shelf.ts';
import { fillSampleLibrary } from '../services/sample-cases.ts';
import type { Services } from '../services/services.ts';
import { answerCall, inEnvelope } from './answer-call.ts';

/** 'in good order' finishes the photo or report that is at work; 'at once' drops it, as nobody is left to wait for it. */
export type CloseHow = 'in good order' | 'at once';

export type Engine = {
  call(channel: string, request: unknown): Promise<Envelope<unknown>>;
  ask(ask: CarrierAsk): Promise<Envelope<unknown>>;
  /** Stops what is running, then lets go of the library. */
  close(how: CloseHow): Promise<void>;
};

export type EngineParts = {
  readonly config: EngineConfig;
  readonly broker: ProcessBroker;
  readonly publish: (event: AppEvent) => void;
  readonly openLibrary: (library: LibraryName) => void;
  /** Where a test puts files that fail, die or forget. */
  readonly files?: DurableFiles;
  /** Where a test puts migrations of its own. */
  readonly migrationsFolder?: string;
  /** Where a test takes hold of the connection: how large a database may grow is the connection's to say. */
  readonly onConnection?: (db: Db) => void;
};

/** How long one picture may take to decode before it is given up. */
const decodeLimitMilliseconds = 30_000;

/** @throws AppError disk-refused, disk-full, library-locked, library-newer, library-not-ours, library-damaged, migration-*, pack-invalid */
export async function startEngine(parts: EngineParts): Promise<Engine> {
  const { config, broker, publish } = parts;
  const now = () => new Date().toISOString() as Instant;
  makeOwnFolder(config.folder);
  const log = openLog(join(config.folder, 'log'), now);
  const lock = lockLibrary(config.folder, { program: `Teardown Docket (${config.carrier})`, since: now() });
  let opened: OpenedLibrary | null = null;
  try {
    opened = openLibrary({
      folder: config.folder,
      migrationsFolder: parts.migrationsFolder ?? shippedPath('migrations'),
      now,
    });
    const { db, schemaNumber } = opened;
    parts.onConnection?.(db);
    const store = createPhotoStore(config.folder, parts.files ?? createDurableFiles());
    await store.makeFolders();
    await store.clearIncoming();
    let sweep: SweepReport | null = null;
    const services: Services = {
      config,
      schemaNumber,
      db,
      now,
      newId: randomUUID,
      publish,
      log,
      store,
      decoders: createDecoderPool(broker, {
        size: Math.min(2, availableParallelism()),
        timeoutMs: decodeLimitMilliseconds,
      }),
      packs: openPackShelf(db, shippedPath('analysis', 'knowledge', 'packs')),
      jobs: openJobBoard({ db, now, newId: randomUUID, publish, log, ticks: () => performance.now() }),
      intake: openIntakeDesk(randomUUID),
      deliveries: openDeliveryDesk(join(config.folder, 'deliveries'), randomUUID),
      reports: createReportMaker(),
      openLibrary: parts.openLibrary,
      sweep: () => sweep,
    };
    if (config.library === 'samples') fillSampleLibrary(services);
    const sweeping = sweepStore(services, store)
      .then((report) => (sweep = report))
      .then(() => trimPlateCache(services));
    log.note('engine started', { schema: schemaNumber, closedCleanly: opened.closedCleanly });

    return {
      call: (channel, request) => answerCall(services, channel, request),
      ask: (ask) => inEnvelope(services, ask.ask, () => answerCarrier(services, ask)),
      async close(how) {
        services.jobs.stopAll();
        if (how === 'at once') {
          await services.decoders.close();
          await services.reports.close();
        }
        await services.jobs.idle();
        await sweeping;
        await services.decoders.close();
        await services.reports.close();
        db.close();
        lock.release();
        log.note('engine closed');
      },
    };
  } catch (error) {
    opened?.db.close();
    lock.release();
    throw error;
  }
}

/** @throws AppError disk-refused, disk-full naming the folder; the system's own error where the path is no folder */
function makeOwnFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
    accessSync(folder, constants.R_OK | constants.W_OK | constants.X_OK);
  } catch (error) {
    throw asDiskError(error, folder);
  }
}

/** Where the whole store is gone there are as many missing as there are photos, and nobody reads a million names. */
const mostNamedMissing = 1_000;
const namedAtOnce = 50;

/** Compares disk and library in the background; what it found is shown, and nothing is deleted. */
async function sweepStore(services: Services, store: PhotoStore): Promise<SweepReport | null> {
  try {
    const { db } = services;
    const { strays, missing: hashes } = await store.sweep((shelf) => listPictureHashes(db, shelf));
    const missing: SweepReport['missing'][number][] = [];
    for (const [place, sha256] of hashes.slice(0, mostNamedMissing).entries()) {
      // Nobody waits for their names.
      if (place % namedAtOnce === 0) await setImmediate();
      const picture = findPictureOfHash(db, sha256);
      if (picture !== null) missing.push(picture);
    }
    const missingCount = hashes.length;
    if (strays.length + missingCount > 0) {
      services.log.note('sweep', { strays: strays.length, missing: missingCount });
    }
    return { at: services.now(), strays, missing, missingCount };
  } catch (error) {
    services.log.fault('sweep', error);
    return null;
  }
}

/** In the background too: plates of old reports go, so that the cache does not grow for ever. */
async function trimPlateCache({ store, log }: Services): Promise<void> {
  try {
    const removed = await store.trimPlates(plateBytesKept);
    if (removed > 0) log.note('plates trimmed', { removed });
  } catch (error) {
    log.fault('plates', error);
  }
}

function answerCarrier(services: Services, ask: CarrierAsk): Promise<unknown> {
  switch (ask.ask) {
    case 'take-in': {
      const { path, name, bytes, temporary } = ask;
      const token = services.intake.register({ path, name, bytes, temporary });
      return Promise.resolve({ token, name, bytes });
    }
    case 'picture':
      return servePicture(services, ask.address);
    case 'document': {
      const document = services.deliveries.find(ask.token);
      reachFaultPoint('document.found');
      return Promise.resolve(document);
    }
  }
}
