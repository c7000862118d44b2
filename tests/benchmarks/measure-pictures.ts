/** Import of photos as a telephone makes them, and the report on ten of them. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

import type { CaseDraft } from '#shared-types/case.ts';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';

import { makeWorld } from '../support/world.ts';
import { benchChanges } from '../support/world-through-engine.ts';
import { startEngineProcess, type EngineProcess } from './engine-process.ts';
import { medianAndWorst, milliseconds, timed, type Figure } from './figures.ts';
import { sharpAlone } from './sharp-alone.ts';
import { writeTwelveMegapixels } from './twelve-megapixels.ts';

const photoCount = 24;
const plateCount = 10;
/** Decoders at work in the engine: see startEngine(). */
const atOnce = 2;

const draft: CaseDraft = {
  number: 'import',
  unit: { maker: 'Halvard', model: 'R45', serial: 'SN-30771', partNumber: '' },
  customer: 'Skerry Line',
  claim: 'The nut came loose.',
  machineKind: 'turbocharger',
};

export async function measurePictures(folder: string): Promise<Figure[]> {
  const pictures = join(folder, 'pictures');
  mkdirSync(pictures);
  const paths = await writeTwelveMegapixels(pictures, photoCount);
  const alone = (await sharpAlone(paths, pictures, atOnce)) / photoCount;
  const engine = await startEngineProcess(join(folder, 'pictures-library'));
  try {
    await engine.ask('analysts.add', { name: 'M. Sundgren', qualification: '' });
    const { caseId } = await engine.ask('cases.open', draft);
    const begun = performance.now();
    await importAll(engine, caseId, paths);
    const each = (performance.now() - begun) / 1_000 / photoCount;
    const peak = engine.peakMemory();
    const mebibytes = peak === null ? 'not measured' : `${(peak / 2 ** 20).toFixed(0)} MiB`;
    return [
      { name: `Import of ${photoCount} photos of 12 megapixels`, value: `${(1 / each).toFixed(2)} photos/s` },
      { name: 'The same two copies by the image library alone', value: `${(1 / alone).toFixed(2)} photos/s` },
      { name: 'Import ratio: time a photo, import to image library alone', value: (each / alone).toFixed(2) },
      { name: 'Peak memory of engine and decoders in that import, summed', value: mebibytes },
      ...(await measureReport(engine, paths.slice(0, plateCount))),
    ];
  } finally {
    await engine.close();
  }
}

async function importAll(engine: EngineProcess, caseId: CaseId, paths: readonly string[]) {
  const tokens = [];
  for (const path of paths) tokens.push(await engine.takeIn(path));
  return engine.done(await engine.ask('photos.import', { caseId, tokens }));
}

async function measureReport(engine: EngineProcess, paths: readonly string[]): Promise<Figure[]> {
  const size = { cases: 1, findings: [20, 20], photos: [plateCount, plateCount], marks: [30, 30] } as const;
  const plan = makeWorld(81, size).cases[0];
  if (!plan) throw new Error('no case in the plan');
  const { caseId } = await engine.ask('cases.open', { ...draft, number: 'report' });
  const { items } = await importAll(engine, caseId, paths);
  const photoIds = new Map<PhotoId, PhotoId>();
  for (const [place, { id }] of plan.photos.entries()) {
    const photoId = items[place]?.photoId;
    if (photoId) photoIds.set(id, photoId);
  }
  await engine.ask('bench.commit', { caseId, changes: benchChanges(plan, photoIds) });
  const make = async () => {
    const job = await engine.done(await engine.ask('reports.make', { caseId, paper: 'A4' }));
    return job.document;
  };
  const first = await timed(1, make);
  const next = await timed(5, make);
  const document = await make();
  const result = `${String(document?.pages)} pages, ${((document?.bytes ?? 0) / 1e6).toFixed(1)} MB`;
  return [
    {
      name: `Report with ${plateCount} plates, first of a run (${result})`,
      value: milliseconds(first.median),
    },
    { name: `Report with ${plateCount} plates, 5 more`, value: medianAndWorst(next) },
  ];
}
