/** Import of photos as a telephone makes them. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

import type { CaseDraft } from '#shared-types/case.ts';
import type { CaseId } from '#shared-types/ids.ts';

import { startEngineProcess, type EngineProcess } from './engine-process.ts';
import type { Figure } from './figures.ts';
import { sharpAlone } from './sharp-alone.ts';
import { writeTwelveMegapixels } from './twelve-megapixels.ts';

const photoCount = 24;
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
