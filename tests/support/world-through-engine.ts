/** Makes a world by the calls a page would make: everything is checked, journalled and stored as for a user. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import type { BenchChange } from '#shared-types/bench-change.ts';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';

import { noisyJpeg } from './pictures/marked-picture.ts';
import type { World, WorldCase } from './world.ts';
import type { EngineHere } from './world-engine.ts';

/** Where a case of the world is now: cases and photos get their ids from the engine, findings and marks keep theirs. */
export type SettledCase = {
  readonly plan: WorldCase;
  readonly caseId: CaseId;
  /** By the id in the plan. */
  readonly photoIds: ReadonlyMap<PhotoId, PhotoId>;
};

/** @param pictures a folder for the pictures to be dropped */
export async function settleWorld(
  engine: EngineHere,
  world: World,
  pictures: string,
): Promise<SettledCase[]> {
  mkdirSync(pictures, { recursive: true });
  await engine.ask('analysts.add', world.analyst);
  const settled: SettledCase[] = [];
  for (const plan of world.cases) settled.push(await settleCase(engine, plan, pictures));
  return settled;
}

export async function settleCase(
  engine: EngineHere,
  plan: WorldCase,
  pictures: string,
): Promise<SettledCase> {
  const { caseId } = await engine.ask('cases.open', plan.draft);
  const photoIds = await dropPhotos(engine, plan, caseId, pictures);
  const changes = benchChanges(plan, photoIds);
  if (changes.length > 0) await engine.ask('bench.commit', { caseId, changes });
  const { outcome, conclusion } = plan;
  await engine.ask('cases.change', { caseId, revision: 1, fields: { outcome, conclusion } });
  return { plan, caseId, photoIds };
}

async function dropPhotos(engine: EngineHere, plan: WorldCase, caseId: CaseId, pictures: string) {
  const photoIds = new Map<PhotoId, PhotoId>();
  if (plan.photos.length === 0) return photoIds;
  const tokens = [];
  for (const photo of plan.photos) {
    const file = join(pictures, photo.name);
    writeFileSync(file, await noisyJpeg(photo.pictureSeed, photo));
    tokens.push(await engine.takeIn(file));
  }
  const job = await engine.ended(await engine.ask('photos.import', { caseId, tokens }));
  for (const [place, { id, fields }] of plan.photos.entries()) {
    const photoId = job.items[place]?.photoId;
    if (job.state !== 'done' || !photoId) throw new Error(`photo not imported: ${JSON.stringify(job)}`);
    photoIds.set(id, photoId);
    await engine.ask('photos.change', { photoId, revision: 1, fields });
  }
  return photoIds;
}

/** The whole bench of a case in one commit. */
export function benchChanges(plan: WorldCase, photoIds: ReadonlyMap<PhotoId, PhotoId>): BenchChange[] {
  return [
    ...plan.findings.map(({ id, fields }): BenchChange => ({
      change: 'put-finding',
      findingId: id,
      fields,
      revision: null,
    })),
    ...plan.marks.map((mark): BenchChange => {
      const photoId = photoIds.get(mark.photoId);
      if (photoId === undefined) throw new Error('a mark of the plan lies on no photo of it');
      return { change: 'put-mark', mark: { ...mark, photoId }, revision: null };
    }),
  ];
}
