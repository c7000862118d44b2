/**
 * npm run proof: carries out each break of breaks.ts in a copy of the tree and runs the test that must notice it. The
 * test has to be green before and red after. `npm run proof -- WORDS` does only the breaks that have the words in what
 * they break or in a path. Ends with 1 where a break stays green.
 */
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';

import type { Break } from './break.ts';
import { breaks } from './breaks.ts';

/** Suites that look at the built page; a break of its sources has to be in it. */
const suitesOfThePage = new Set(['browser', 'contract', 'faults']);
const sourcesOfThePage = /^(renderer|shared-types|analysis)\//;

const root = resolve(import.meta.dirname, '..', '..');
const leftOut = new Set(['node_modules', '.git', 'release', 'test-output']);

/** What vitest's JSON reporter says of a run, as far as it is looked at. */
type Report = { readonly numPassedTests: number; readonly numFailedTests: number };
type Verdict = 'red' | 'STAYS GREEN' | 'NOT GREEN BEFORE' | 'NOT FOUND ONCE';

/** Longest time for one test in milliseconds: some breaks let it wait for ever. */
const patience = 45_000;

/** The process that runs tests now; the leader of its group. */
let running: number | undefined;

function copyOfTree(): string {
  const copy = mkdtempSync(join(tmpdir(), 'docket-proof-'));
  // Some tests run as another user, who has to read the program.
  chmodSync(copy, 0o755);
  cpSync(root, copy, {
    recursive: true,
    filter: (source) => !leftOut.has(relative(root, source)),
  });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
  return copy;
}

/** As in `npm run build`, for the copy alone. A break that the bundler refuses is told as an error. */
function buildPage(copy: string): void {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  execFileSync(process.execPath, [vite, 'build', '--logLevel', 'error'], { cwd: copy, stdio: 'inherit' });
}

/** Runs the tests of one file that have the words in their name; in a process group that ends with it. */
async function runTests(copy: string, { file, test }: Break['reddens']): Promise<Report> {
  const report = join(copy, 'proof-report.json');
  rmSync(report, { force: true });
  const [suite = ''] = file.split('/');
  const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs');
  const asked = ['run', '--project', suite, `tests/${file}`, '-t', escaped(test)];
  const told = [`--testTimeout=${String(patience)}`, '--reporter=json', `--outputFile.json=${report}`];
  const child = spawn(process.execPath, [vitest, ...asked, ...told], {
    cwd: copy,
    detached: true,
    stdio: 'ignore',
  });
  running = child.pid;
  await once(child, 'exit');
  endGroup(child.pid);
  running = undefined;
  try {
    return JSON.parse(readFileSync(report, 'utf8')) as Report;
  } catch (error) {
    throw new Error(`vitest left no report of ${file}`, { cause: error });
  }
}

/** A break may leave processes behind that would never end. */
function endGroup(leader: number | undefined): void {
  if (leader === undefined || process.platform === 'win32') return;
  try {
    process.kill(-leader, 'SIGKILL');
  } catch (error) {
    // Nobody is left in it.
    if (!(error instanceof Error && 'code' in error && error.code === 'ESRCH')) throw error;
  }
}

const escaped = (words: string) => words.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');

async function prove(copy: string, one: Break, greenBefore: Map<string, boolean>): Promise<Verdict> {
  const path = join(copy, one.file);
  const sound = readFileSync(path, 'utf8');
  if (sound.split(one.find).length !== 2) return 'NOT FOUND ONCE';
  const key = `${one.reddens.file} ${one.reddens.test}`;
  if (!greenBefore.has(key)) {
    const before = await runTests(copy, one.reddens);
    greenBefore.set(key, before.numPassedTests > 0 && before.numFailedTests === 0);
  }
  if (greenBefore.get(key) !== true) return 'NOT GREEN BEFORE';
  const [suite = ''] = one.reddens.file.split('/');
  const shownByPage = suitesOfThePage.has(suite) && sourcesOfThePage.test(one.file);
  const write = (content: string) => {
    writeFileSync(path, content);
    if (shownByPage) buildPage(copy);
  };
  write(sound.replace(one.find, () => one.replace));
  try {
    return (await runTests(copy, one.reddens)).numFailedTests > 0 ? 'red' : 'STAYS GREEN';
  } finally {
    write(sound);
  }
}

const words = process.argv.slice(2).join(' ').toLowerCase();
const chosen = breaks.filter((one) =>
  [one.breaks, one.file, one.reddens.file].some((text) => text.toLowerCase().includes(words)),
);
const copy = copyOfTree();
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => process.exit(130));
process.on('exit', () => {
  endGroup(running);
  rmSync(copy, { recursive: true, force: true });
});
const greenBefore = new Map<string, boolean>();
let red = 0;
for (const [index, one] of chosen.entries()) {
  const verdict = await prove(copy, one, greenBefore);
  if (verdict === 'red') red += 1;
  const count = `${String(index + 1).padStart(3)}/${String(chosen.length)}`;
  console.log(`${count}  ${verdict.padEnd(16)}  ${one.breaks}`);
  console.log(`${' '.repeat(25 + String(chosen.length).length)}${one.file} -> ${one.reddens.file}`);
}
console.log(`${String(chosen.length)} breaks: ${String(red)} noticed, ${String(chosen.length - red)} not`);
process.exitCode = chosen.length > 0 && red === chosen.length ? 0 : 1;
