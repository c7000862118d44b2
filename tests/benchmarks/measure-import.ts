/**
 * Import of photos as a camera makes them, held against the least that could be done with them. Both take turns over
 * the same pictures, so that neither has the quieter machine.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import type { CaseDraft } from '#shared-types/case.ts';
import type { CaseId } from '#shared-types/ids.ts';

import { withComment } from '../support/pictures/with-comment.ts';
import { bareImport } from './bare-import.ts';
import { startEngineProcess, type EngineProcess } from './engine-process.ts';
import { figure, share, timeOf, type Figure } from './figures.ts';
import { writePictures } from './pictures.ts';

const photoCount = 100;
const inARound = 20;
/** Pictures that differ in more than a word of their file. */
const different = 10;
/** Decoders at work in the engine: see startEngine(). */
const atOnce = 2;

const draft: CaseDraft = {
  number: 'import',
  unit: { maker: 'Halvard', model: 'R45', serial: 'SN-30771', partNumber: '' },
  customer: 'Skerry Line',
  claim: 'The nut came loose.',
  machineKind: 'turbocharger',
};

export async function measureImport(folder: string): Promise<Figure[]> {
  const paths = await hundredPictures(join(folder, 'import-pictures'));
  const engine = await startEngineProcess(join(folder, 'import-library'));
  try {
    await engine.ask('analysts.add', { name: 'M. Sundgren', qualification: '' });
    const { caseId } = await engine.ask('cases.open', draft);
    const [bare, here]: [number[], number[]] = [[], []];
    for (let from = 0; from < photoCount; from += inARound) {
      const round = paths.slice(from, from + inARound);
      const to = join(folder, `bare-${String(from)}`);
      mkdirSync(to);
      bare.push((await timeOf(() => bareImport(round, to, atOnce))) / inARound);
      here.push((await timeOf(() => importAll(engine, caseId, round))) / inARound);
      rmSync(to, { recursive: true });
    }
    const peak = engine.peakMemory();
    const name = `Import of ${String(photoCount)} photos of 24 megapixels`;
    return [
      figure(
        `${name}: time a photo, median of ${String(here.length)} rounds`,
        share(here, 0.5),
        'ms',
        share(bare, 0.5),
      ),
      ...(peak === null
        ? []
        : [figure(`${name}: peak memory of engine and decoders, summed`, peak / 2 ** 20, 'MiB')]),
    ];
  } finally {
    await engine.close();
  }
}

async function hundredPictures(folder: string): Promise<string[]> {
  mkdirSync(folder);
  const first = await writePictures(folder, different, 'twenty-four megapixels');
  const more = Array.from({ length: photoCount - different }, (_, index) => {
    const file = join(folder, `IMG_${String(5_000 + index)}.jpg`);
    const original = readFileSync(first[index % different] ?? '');
    writeFileSync(file, withComment(original, `photo ${String(index)}`));
    return file;
  });
  return [...first, ...more];
}

async function importAll(engine: EngineProcess, caseId: CaseId, paths: readonly string[]) {
  const tokens = [];
  for (const path of paths) tokens.push(await engine.takeIn(path));
  return engine.done(await engine.ask('photos.import', { caseId, tokens }));
}
