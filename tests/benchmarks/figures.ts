/** Figures as they are measured, as a table for the terminal and for docs/figures.md. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, totalmem } from 'node:os';
import { join } from 'node:path';

import { programFolder } from '../../electron/processes/entry-table.ts';

/**
 * One figure as a machine reads it. `baseline` is what the least that could be done takes, in the same unit, where
 * there is one to hold it against; `ratio` is value to baseline.
 */
export type Figure = {
  readonly name: string;
  readonly value: number;
  readonly unit: 'ms' | 's' | 'MB' | 'MiB' | 'frames' | 'tasks';
  readonly baseline: number | null;
  readonly ratio: number | null;
};

/** Below that a clock of whole milliseconds tells nothing, and a ratio to it would be made of chance. */
const leastBaseline: Partial<Record<Figure['unit'], number>> = { ms: 0.2 };

export function figure(
  name: string,
  value: number,
  unit: Figure['unit'],
  baseline: number | null = null,
): Figure {
  const tells = baseline !== null && baseline >= (leastBaseline[unit] ?? 0);
  return {
    name,
    value: rounded(value),
    unit,
    baseline: baseline === null ? null : rounded(baseline),
    ratio: tells ? rounded(value / baseline) : null,
  };
}

const rounded = (value: number) => Math.round(value * 100) / 100;

/** The value that so great a share of them does not exceed: 0.5 for the median, 0.95 for the p95. */
export function share(values: readonly number[] | undefined, of: number): number {
  const sorted = [...(values ?? [])].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * of))] ?? Number.NaN;
}

/** Runs the work again and again, one run after the other. @returns milliseconds of each */
export async function timed(runs: number, work: (run: number) => Promise<unknown>): Promise<number[]> {
  const times: number[] = [];
  for (let run = 0; run < runs; run += 1) times.push(await timeOf(() => work(run)));
  return times;
}

/** Milliseconds. */
export async function timeOf(work: () => Promise<unknown>): Promise<number> {
  const begun = performance.now();
  await work();
  return performance.now() - begun;
}

/** The median and the worst of so many times. */
export function medianAndWorst(
  name: string,
  times: readonly number[],
  baseline?: readonly number[],
): Figure[] {
  const base = baseline === undefined ? null : share(baseline, 0.5);
  return [
    figure(`${name}, median of ${times.length}`, share(times, 0.5), 'ms', base),
    figure(`${name}, worst`, Math.max(...times), 'ms'),
  ];
}

/** Load over one minute before anything was measured: on a busy machine the figures say little. */
const loadBefore = loadavg()[0] ?? 0;

function machine(): string {
  const [first] = cpus();
  const memory = `${(totalmem() / 2 ** 30).toFixed(0)} GiB memory`;
  const cores = `${String(availableParallelism())} cores (${first?.model.trim() ?? 'unknown'})`;
  return `${cores}, ${memory}, ${process.platform} ${process.arch}, Node ${process.versions.node}`;
}

function git(...words: string[]): string {
  return execFileSync('git', words, { cwd: programFolder, encoding: 'utf8' }).trim();
}

/** The commit that was measured, with a word when the tree held more than it. */
function commit(): string {
  const changed = git('status', '--porcelain', '--', '.', ':!docs/figures.md') === '' ? '' : ' and changes';
  return git('rev-parse', '--short', 'HEAD') + changed;
}

/** A line of JSON for each, and one of the machine and the commit. */
export function printFigures(figures: readonly Figure[]): void {
  for (const one of figures) process.stdout.write(`${JSON.stringify(one)}\n`);
  process.stdout.write(`${JSON.stringify({ machine: machine(), loadBefore, commit: commit() })}\n`);
}

const written = (value: number | null, unit: string) => (value === null ? '–' : `${value} ${unit}`);

export function writeFigures(figures: readonly Figure[]): void {
  const rows = figures.map(
    ({ name, value, unit, baseline, ratio }) =>
      `| ${name} | ${written(value, unit)} | ${written(baseline, unit)} | ${ratio ?? '–'} |`,
  );
  const busy =
    loadBefore > availableParallelism() / 2
      ? ' The machine was busy with other work: expect better figures on an idle one.'
      : '';
  const text = `# Figures

Written by \`npm run bench\`, which prints the same as lines of JSON; never edited by hand. They are of one run on one
machine and promise nothing; they are here to be compared with the next run on the same machine. Nothing in \`npm test\`
asserts a time.

Commit: ${commit()}. Measured on: ${machine()}. Load of the last minute before: ${loadBefore.toFixed(1)}.${busy}

| Figure | Value | Baseline | Ratio |
| --- | --- | --- | --- |
${rows.join('\n')}

A baseline is the least that could be done for the same end: a copy of the file with its hash and the same pictures by
the same image library; the same SQL in the sqlite3 shell; the same JPEGs put on bare pages by the PDF library; the same
picture and strokes drawn on a bare canvas. How all of it is measured: \`tests/benchmarks/\`. The engine runs as a
process of its own, as in the program, and is asked over its port; a time includes the way there and back. Pictures and
worlds are generated from seeds.
`;
  writeFileSync(join(programFolder, 'docs', 'figures.md'), text);
}
