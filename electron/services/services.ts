/** Everything a handler may reach for. Built once by the engine; nothing here knows who carries the messages. */
import type { EngineConfig } from '../processes/engine-messages.ts';
import type { Db } from '../database/open-library.ts';
import type { DecoderPool } from '../images/decoder-pool.ts';
import type { PhotoStore } from '../files/photo-store.ts';
import type { JobBoard } from '../jobs/job-board.ts';
import type { Log } from '../log/log.ts';
import type { ReportMaker } from '../report/report-maker.ts';
import type { AppEvent } from '#shared-types/events.ts';
import type { LibraryName, SweepReport } from '#shared-types/library.ts';
import type { Instant } from '#shared-types/times.ts';
import type { DeliveryDesk } from './delivery-desk.ts';
import type { IntakeDesk } from './intake-desk.ts';
import type { PackShelf } from './pack-shelf.ts';

export type Services = {
  readonly config: EngineConfig;
  readonly schemaNumber: number;
  readonly db: Db;
  readonly now: () => Instant;
  /** A fresh UUID, to be branded by whoever asks. */
  readonly newId: () => string;
  readonly publish: (event: AppEvent) => void;
  readonly log: Log;
  readonly store: PhotoStore;
  readonly decoders: DecoderPool;
  readonly packs: PackShelf;
  readonly jobs: JobBoard;
  readonly intake: IntakeDesk;
  readonly deliveries: DeliveryDesk;
  readonly reports: ReportMaker;
  readonly openLibrary: (library: LibraryName) => void;
  /** What the sweep at start found; null until it has run. */
  readonly sweep: () => SweepReport | null;
};
