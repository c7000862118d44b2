/** Fills the sample library: ordinary cases made through the same doors as anyone's, from files shipped with the program. */
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

import { analystDraftSchema } from '#shared-types/analyst.ts';
import { benchCommitSchema, type BenchChange } from '#shared-types/bench-change.ts';
import { caseDraftSchema } from '#shared-types/case.ts';
import { findingFieldsSchema } from '#shared-types/finding.ts';
import type { CaseId, FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';
import { markGeometrySchema } from '#shared-types/mark.ts';
import { photoFieldsSchema } from '#shared-types/photo.ts';
import { z } from '#shared-types/schema.ts';
import { jobTexts } from '#shared-types/texts/jobs.ts';

import { countCases } from '../database/repositories/cases.ts';
import { listPhotos } from '../database/repositories/photos.ts';
import { shippedPath } from '../processes/entry-table.ts';
import { commitAtBench } from './bench-work.ts';
import { openCase } from './case-work.ts';
import { enterAnalyst } from './people-and-settings.ts';
import { importFiles } from './photo-import.ts';
import { changePhoto } from './photo-work.ts';
import type { Services } from './services.ts';

/** A sample case as shipped: marks name their photo by file and their finding by its place in the list. */
export const sampleCaseSchema = z.strictObject({
  analyst: analystDraftSchema,
  draft: caseDraftSchema,
  photos: z.array(z.strictObject({ file: z.string(), fields: photoFieldsSchema })).min(1),
  findings: z.array(findingFieldsSchema),
  marks: z.array(
    z.strictObject({ photo: z.string(), finding: z.int().min(0), geometry: markGeometrySchema }),
  ),
});
export type SampleCase = z.infer<typeof sampleCaseSchema>;

const sampleFolders = ['ferry-auxiliary'] as const;

/** Begins the job where the sample library is still empty; null where there is nothing to do. */
export function fillSampleLibrary(services: Services): Job | null {
  if (countCases(services.db) > 0) return null;
  const samples = sampleFolders.map((folder) => ({ folder, sample: readSample(folder) }));
  const photos = samples.reduce((sum, { sample }) => sum + sample.photos.length, 0);
  return services.jobs.begin(
    { kind: 'sample-cases', caseId: null, phase: jobTexts.phases.settingUp, total: photos },
    async (job) => {
      for (const { folder, sample } of samples) {
        enterAnalyst(services, sample.analyst);
        const { caseId } = openCase(services, sample.draft);
        const files = sample.photos.map(({ file }) => intakeOf(folder, file));
        await importFiles(services, { job, caseId, files });
        describeAndMark(services, caseId, sample);
      }
      return null;
    },
  );
}

export function readSample(folder: string): SampleCase {
  const text = readFileSync(shippedPath('sample-cases', folder, 'case.json'), 'utf8');
  return sampleCaseSchema.parse(JSON.parse(text));
}

function intakeOf(folder: string, name: string) {
  const path = join(shippedPath('sample-cases', folder), name);
  return { path, name, bytes: statSync(path).size, temporary: false };
}

function describeAndMark(services: Services, caseId: CaseId, sample: SampleCase): void {
  const byFile = new Map(listPhotos(services.db, caseId).map((photo) => [photo.sourceName, photo]));
  for (const { file, fields } of sample.photos) {
    const photo = byFile.get(file);
    if (photo) changePhoto(services, { photoId: photo.id, revision: photo.revision, fields });
  }
  const findingIds = sample.findings.map(() => services.newId() as FindingId);
  const changes: BenchChange[] = [
    ...sample.findings.map((fields, index): BenchChange => ({
      change: 'put-finding',
      findingId: found(findingIds[index]),
      fields,
      revision: null,
    })),
    ...sample.marks.map(({ photo, finding, geometry }, order): BenchChange => ({
      change: 'put-mark',
      revision: null,
      mark: {
        id: services.newId() as MarkId,
        photoId: found<PhotoId>(byFile.get(photo)?.id),
        findingId: found(findingIds[finding]),
        geometry,
        order,
      },
    })),
  ];
  commitAtBench(services, benchCommitSchema.parse({ caseId, changes }));
}

function found<Value>(value: Value | undefined): Value {
  if (value === undefined) throw new Error('a sample case names a photo or finding that it does not have');
  return value;
}
