import type { LibraryOverview, ProgramDescription } from '#shared-types/library.ts';
import { sqliteVersion } from '../database/open-library.ts';
import { countCases } from '../database/repositories/cases.ts';
import { journalHead } from '../database/repositories/journal.ts';
import { countPhotos } from '../database/repositories/photos.ts';
import { programVersion } from '../processes/program-version.ts';
import type { Services } from './services.ts';

export function overview(services: Services): LibraryOverview {
  const { db, config } = services;
  return {
    library: config.library,
    folder: config.folder,
    schemaNumber: services.schemaNumber,
    cases: countCases(db),
    photos: countPhotos(db),
    journal: journalHead(db),
    sweep: services.sweep(),
  };
}

export function describeProgram(services: Services): ProgramDescription {
  return {
    version: programVersion(),
    sqlite: sqliteVersion(services.db),
    node: process.versions.node,
    carrier: services.config.carrier,
  };
}
