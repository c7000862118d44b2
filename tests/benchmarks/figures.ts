/** Figures as they are measured, as a table for the terminal and for docs/figures.md. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, totalmem } from 'node:os';
import { join } from 'node:path';

import { programFolder } from '../../electron/processes/entry-table.ts';

export type Figure = { readonly name: string; readonly value: string };

export type Times = { readonly median: number; readonly worst: number };

/** Runs the work again and again, one run after the other. @returns milliseconds */
export async function timed(runs: number, work: (run: number) => Promise<unknown>): Promise<Times> {
  const times: number[] = [];
  for (let run = 0; run < runs; run += 1) {
    const begun = performance.now();
    await work(run);
    times.push(performance.now() - begun);
  }
  times.sort((one, other) => one - other);
  return { median: times[Math.floor(times.length / 2)] ?? Number.NaN, worst: times.at(-1) ?? Number.NaN };
}

export const milliseconds = (time: number) => `${time < 10 ? time.toFixed(1) : time.toFixed(0)} ms`;
export const medianAndWorst = ({ median, worst }: Times) =>
  `${milliseconds(median)}, worst ${milliseconds(worst)}`;

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

export function printFigures(figures: readonly Figure[]): void {
  const width = Math.max(...figures.map(({ name }) => name.length));
  for (const { name, value } of figures) process.stdout.write(`${name.padEnd(width)}  ${value}\n`);
  process.stdout.write(`\n${machine()}; load before: ${loadBefore.toFixed(1)}\n`);
}

export function writeFigures(figures: readonly Figure[]): void {
  const measured = commit();
  const rows = figures.map(({ name, value }) => `| ${name} | ${value} | ${measured} |`);
  const busy =
    loadBefore > availableParallelism() / 2
      ? ' The machine was busy with other work: expect better figures on an idle one.'
      : '';
  const text = `# Figures

Written by \`npm run bench\`; never edited by hand. Times are of one run on one machine and promise nothing; they are
here to be compared with the next run on the same machine. Nothing in \`npm test\` asserts a time.

Measured on: ${machine()}. Load of the last minute before: ${loadBefore.toFixed(1)}.${busy}

| Figure | Value | Commit |
| --- | --- | --- |
${rows.join('\n')}

How they are measured: \`tests/benchmarks/\`. The engine runs as a process of its own, as in the program, and is asked
over its port; a time includes the way there and back. Pictures and worlds are generated from seeds.
`;
  writeFileSync(join(programFolder, 'docs', 'figures.md'), text);
}
