/** The printed report: how long it takes with plates to make and with plates kept, how large it is, how soon one sees it. */
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { PDFDocument } from 'pdf-lib';
import type { Page } from 'playwright';

import type { CaseDraft } from '#shared-types/case.ts';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

import { openProgramHouse } from '../browser/program-house.ts';
import { withComment } from '../support/pictures/with-comment.ts';
import { benchChanges } from '../support/world-through-engine.ts';
import { makeWorld } from '../support/world.ts';
import { startEngineProcess, type EngineProcess } from './engine-process.ts';
import { figure, medianAndWorst, share, timed, type Figure } from './figures.ts';
import { writePictures } from './pictures.ts';

const plateCounts = [30, 40] as const;
const manyPlates = 300;

const draft = (number: string): CaseDraft => ({
  number,
  unit: { maker: 'Halvard', model: 'R45', serial: 'SN-30771', partNumber: '' },
  customer: 'Skerry Line',
  claim: 'The nut came loose.',
  machineKind: 'turbocharger',
});

export async function measureReport(folder: string): Promise<Figure[]> {
  const pictures = join(folder, 'report-pictures');
  mkdirSync(pictures);
  const paths = await writePictures(pictures, Math.max(...plateCounts), 'twelve megapixels');
  const library = join(folder, 'report-library');
  const figures: Figure[] = [];
  const engine = await startEngineProcess(library);
  try {
    await engine.ask('analysts.add', { name: 'M. Sundgren', qualification: '' });
    for (const count of plateCounts) {
      const caseId = await caseWithPlates(engine, `${count} plates`, paths.slice(0, count));
      figures.push(...(await measureMaking(engine, library, caseId, count)));
    }
    figures.push(...peakOf(engine, `reports of ${plateCounts.join(' and ')} plates`));
  } finally {
    await engine.close();
  }
  figures.push(...(await measurePreview(library)));
  figures.push(...(await measureManyPlates(folder, paths)));
  return figures;
}

async function caseWithPlates(
  engine: EngineProcess,
  number: string,
  paths: readonly string[],
): Promise<CaseId> {
  const count = paths.length;
  const size = {
    cases: 1,
    findings: [20, 20],
    photos: [count, count],
    marks: [3 * count, 3 * count],
  } as const;
  const plan = makeWorld(81 + count, size).cases[0];
  if (!plan) throw new Error('no case in the plan');
  const { caseId } = await engine.ask('cases.open', draft(number));
  const tokens = [];
  for (const path of paths) tokens.push(await engine.takeIn(path));
  const { items } = await engine.done(await engine.ask('photos.import', { caseId, tokens }));
  const photoIds = new Map<PhotoId, PhotoId>();
  for (const [place, { id }] of plan.photos.entries()) {
    const photoId = items[place]?.photoId;
    if (photoId) photoIds.set(id, photoId);
  }
  await engine.ask('bench.commit', { caseId, changes: benchChanges(plan, photoIds) });
  return caseId;
}

const platesOf = (library: string) => join(library, 'plates');

async function make(engine: EngineProcess, caseId: CaseId) {
  const { document } = await engine.done(await engine.ask('reports.make', { caseId, paper: 'A4' }));
  if (document === null) throw new Error('no document was made');
  return document;
}

async function measureMaking(
  engine: EngineProcess,
  library: string,
  caseId: CaseId,
  count: number,
): Promise<Figure[]> {
  // The thread that lays out the pages is warm; the plates are not.
  await make(engine, caseId);
  rmSync(platesOf(library), { recursive: true });
  const cold = await timed(1, () => make(engine, caseId));
  const warm = await timed(5, () => make(engine, caseId));
  const { pages, bytes } = await make(engine, caseId);
  const alone = await timed(5, () => embeddedAlone(library, join(library, 'alone.pdf')));
  return [
    figure(`Report with ${count} plates, none of them kept (${pages} pages)`, share(cold, 0.5), 'ms'),
    ...medianAndWorst(`Report with ${count} plates, all of them kept`, warm, alone),
    figure(`Size of the report with ${count} plates`, bytes / 1e6, 'MB'),
  ];
}

/** The least that any report costs: its ready pictures, each on a page, with no word and no line. */
async function embeddedAlone(library: string, file: string): Promise<void> {
  const document = await PDFDocument.create();
  const names = readdirSync(platesOf(library), { recursive: true, encoding: 'utf8' });
  for (const name of names.filter((each) => each.endsWith('.jpg'))) {
    const picture = await document.embedJpg(readFileSync(join(platesOf(library), name)));
    const { width, height } = picture.scale(72 / 300);
    document.addPage([595.28, 841.89]).drawImage(picture, { x: 60, y: 100, width, height });
  }
  writeFileSync(file, await document.save());
}

/** From the last key to when the words stand on a page, in a browser, with all plates kept. */
async function measurePreview(library: string): Promise<Figure[]> {
  const house = await openProgramHouse(null, (own) => {
    cpSync(library, own, { recursive: true });
    return Promise.resolve();
  });
  try {
    const { page } = await house.open();
    await page.getByText('30 plates').first().click();
    await page.getByRole('link', { name: new RegExp(`^${shellTexts.station.report}`) }).click();
    await page.locator('[data-page="1"][data-drawn="true"]').waitFor();
    await page.getByRole('button', { name: reportScreenTexts.addTo['before-findings'] }).click();
    await page.keyboard.type('Method');
    await page.keyboard.press('Tab');
    await typed(page, 0);
    const times = await timed(7, (run) => typed(page, run + 1));
    return medianAndWorst('Words typed at the report, 30 plates kept, to when they stand on the page', times);
  } finally {
    await house.close();
  }
}

/** One character is typed last, so that the time begins at the last key. */
async function typed(page: Page, run: number): Promise<void> {
  await page.keyboard.type(`x${run}.`);
  await page.waitForFunction(
    (wanted) =>
      [...document.querySelectorAll('.pdf-page .only-read-out')].some((one) =>
        one.textContent.replace(/\s+/g, '').includes(wanted),
      ),
    `x${run}.`,
    { polling: 'raf' },
  );
}

/** The same pictures with a word more in each file: other photos to the library, as large to print. */
async function measureManyPlates(folder: string, paths: readonly string[]): Promise<Figure[]> {
  const pictures = join(folder, 'many-pictures');
  mkdirSync(pictures);
  const many = Array.from({ length: manyPlates }, (_, index) => {
    const original = readFileSync(paths[index % paths.length] ?? '');
    const file = join(pictures, `IMG_${5_000 + index}.jpg`);
    writeFileSync(file, withComment(original, `photo ${index}`));
    return file;
  });
  const library = join(folder, 'many-library');
  const engine = await startEngineProcess(library);
  try {
    await engine.ask('analysts.add', { name: 'M. Sundgren', qualification: '' });
    const caseId = await caseWithPlates(engine, 'many', many);
    const begun = performance.now();
    const { pages, bytes } = await make(engine, caseId);
    const cold = performance.now() - begun;
    const warm = await timed(1, () => make(engine, caseId));
    return [
      figure(`Report with ${manyPlates} plates, none of them kept (${pages} pages)`, cold, 'ms'),
      figure(`Report with ${manyPlates} plates, all of them kept`, share(warm, 0.5), 'ms'),
      figure(`Size of the report with ${manyPlates} plates`, bytes / 1e6, 'MB'),
      ...peakOf(engine, `importing ${manyPlates} photos and the report of ${manyPlates} plates`),
    ];
  } finally {
    await engine.close();
  }
}

function peakOf(engine: EngineProcess, work: string): Figure[] {
  const peak = engine.peakMemory();
  return peak === null
    ? []
    : [figure(`Peak memory of engine and decoders, summed: ${work}`, peak / 2 ** 20, 'MiB')];
}
