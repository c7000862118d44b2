/** Fills the sample library: ordinary cases made through the same doors as anyone's, from files shipped with the program. */
import { statSync } from 'node:fs';
import { join } from 'node:path';

import { benchCommitSchema, type BenchChange } from '#shared-types/bench-change.ts';
import { chainCommitSchema, type ChainChange, type ChainNodeFields } from '#shared-types/chain.ts';
import type {
  CaseId,
  ChainLinkId,
  ChainNodeId,
  CustodyEntryId,
  FindingId,
  MarkId,
  PartyId,
  PhotoId,
} from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';
import { jobTexts } from '#shared-types/texts/jobs.ts';

import { countCases, readCase } from '../database/repositories/cases.ts';
import { listPhotos } from '../database/repositories/photos.ts';
import { readReportPlan } from '../database/repositories/report-plans.ts';
import { shippedPath } from '../processes/entry-table.ts';
import { commitAtBench } from './bench-work.ts';
import { changeCase, openCase } from './case-work.ts';
import { commitToChain } from './chain-work.ts';
import { enterCustody } from './custody-work.ts';
import { putParty } from './party-work.ts';
import { enterAnalyst } from './people-and-settings.ts';
import { importFiles } from './photo-import.ts';
import { changePhoto } from './photo-work.ts';
import { changeReportPlan } from './report-plan-work.ts';
import { readSample, type SampleCase } from './sample-case-file.ts';
import type { Services } from './services.ts';

const sampleFolders = ['ferry-auxiliary'] as const;

/** A sample case that is being set up: what the file names, by the ids that it has here. */
type SettingUp = {
  readonly caseId: CaseId;
  readonly sample: SampleCase;
  readonly photoOf: (file: string) => PhotoId;
  readonly findingIds: readonly FindingId[];
};

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
        const byFile = new Map(listPhotos(services.db, caseId).map((photo) => [photo.sourceName, photo.id]));
        const settingUp: SettingUp = {
          caseId,
          sample,
          photoOf: (file) => found(byFile.get(file)),
          findingIds: sample.findings.map(() => services.newId() as FindingId),
        };
        describePhotos(services, settingUp);
        tellTheClaim(services, settingUp);
        findAndMark(services, settingUp);
        drawTheChain(services, settingUp);
        const { revision } = readReportPlan(services.db, caseId);
        changeReportPlan(services, { caseId, revision, fields: sample.plan });
      }
      return null;
    },
  );
}

function intakeOf(folder: string, name: string) {
  const path = join(shippedPath('sample-cases', folder, 'photos'), name);
  return { path, name, bytes: statSync(path).size, temporary: false };
}

function describePhotos(services: Services, { caseId, sample }: SettingUp): void {
  const byFile = new Map(listPhotos(services.db, caseId).map((photo) => [photo.sourceName, photo]));
  for (const { file, fields } of sample.photos) {
    const { id, revision } = found(byFile.get(file));
    changePhoto(services, { photoId: id, revision, fields });
  }
}

function tellTheClaim(services: Services, { caseId, sample, photoOf }: SettingUp): void {
  const { told, seen, parties, custody } = sample;
  const { unit, revision } = readCase(services.db, caseId);
  const named = <Seen extends { photo: string | null }>({ photo, ...rest }: Seen) => ({
    ...rest,
    photoId: photo === null ? null : photoOf(photo),
  });
  const rotation = seen.rotation === null ? null : named(seen.rotation);
  const thread = seen.thread === null ? null : named(seen.thread);
  changeCase(services, { caseId, revision, fields: { ...told, unit: { ...unit, rotation, thread } } });
  for (const fields of parties) {
    putParty(services, { caseId, partyId: services.newId() as PartyId, revision: null, fields });
  }
  for (const fields of custody) {
    enterCustody(services, { caseId, entryId: services.newId() as CustodyEntryId, fields });
  }
}

function findAndMark(services: Services, { caseId, sample, photoOf, findingIds }: SettingUp): void {
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
        photoId: photoOf(photo),
        findingId: found(findingIds[finding]),
        geometry,
        order,
      },
    })),
  ];
  commitAtBench(services, benchCommitSchema.parse({ caseId, changes }));
}

function drawTheChain(services: Services, { caseId, sample, findingIds }: SettingUp): void {
  const { nodes, links } = sample.chain;
  if (nodes.length === 0) return;
  const nodeIds = new Map(nodes.map(({ name }) => [name, services.newId() as ChainNodeId]));
  const changes: ChainChange[] = [
    ...nodes.map(({ name, finding, ...node }): ChainChange => {
      const findingId = finding === null ? null : found(findingIds[finding]);
      // Which of its fields a kind of node may have is checked with the whole commit.
      const fields = { ...node, id: found(nodeIds.get(name)), findingId } as ChainNodeFields;
      return { change: 'put-node', node: fields, revision: null };
    }),
    ...links.map(({ cause, effect, ...link }): ChainChange => {
      const ends = { causeId: found(nodeIds.get(cause)), effectId: found(nodeIds.get(effect)) };
      return {
        change: 'put-link',
        link: { ...link, ...ends, id: services.newId() as ChainLinkId },
        revision: null,
      };
    }),
  ];
  commitToChain(services, chainCommitSchema.parse({ caseId, changes }));
}

function found<Value>(value: Value | undefined): Value {
  if (value === undefined)
    throw new Error('a sample case names a photo, a finding or a node that it does not have');
  return value;
}
