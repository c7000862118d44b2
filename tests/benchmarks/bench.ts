/** npm run bench: measures what has to stay quick, prints them as lines of JSON and writes docs/figures.md. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { printFigures, writeFigures, type Figure } from './figures.ts';
import { measureCanvas } from './measure-canvas.ts';
import { measureLargeCase, measureSearch } from './measure-large-libraries.ts';
import { measurePhotoGrid } from './measure-photo-grid.ts';
import { measureImport } from './measure-import.ts';
import { measureLargeSearch } from './measure-search.ts';
import { measureStart } from './measure-start.ts';
import { measureReport } from './measure-report.ts';

const folder = mkdtempSync(join(tmpdir(), 'docket-bench-'));
try {
  const figures: Figure[] = [];
  for (const measure of [
    measureStart,
    measureImport,
    measureReport,
    measureLargeCase,
    measureSearch,
    measurePhotoGrid,
    measureCanvas,
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
