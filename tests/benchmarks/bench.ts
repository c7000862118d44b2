/** npm run bench: measures what has to stay quick, prints a table and writes docs/figures.md. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { startEngineProcess, type EngineProcess } from './engine-process.ts';
import { medianAndWorst, printFigures, timed, writeFigures, type Figure } from './figures.ts';
import { measureLargeCase, measureSearch } from './measure-large-libraries.ts';
import { measurePhotoGrid } from './measure-photo-grid.ts';
import { measurePictures } from './measure-pictures.ts';
import { measureLargeSearch } from './measure-search.ts';
import { measureReport } from './measure-report.ts';

/** Each start includes that of Node itself and the loading of the machine kind. */
async function measureStart(folder: string): Promise<Figure[]> {
  const engines: EngineProcess[] = [];
  const start = async (run: number) => {
    engines.push(await startEngineProcess(join(folder, `start-${String(run)}`)));
  };
  const closeAll = () => Promise.all(engines.splice(0).map((engine) => engine.close()));
  const making = await timed(5, start);
  await closeAll();
  const empty = await timed(5, start);
  await closeAll();
  return [
    { name: 'Start of the engine’s process, making a library, median of 5', value: medianAndWorst(making) },
    { name: 'Start of the engine’s process on an empty library, median of 5', value: medianAndWorst(empty) },
  ];
}

const folder = mkdtempSync(join(tmpdir(), 'docket-bench-'));
try {
  const figures: Figure[] = [];
  for (const measure of [
    measureStart,
    measurePictures,
    measureReport,
    measureLargeCase,
    measureSearch,
    measurePhotoGrid,
    measureLargeSearch,
  ]) {
    process.stderr.write(`${measure.name} …\n`);
    figures.push(...(await measure(folder)));
  }
  printFigures(figures);
  writeFigures(figures);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
