/**
 * npm test: everything that can be checked, one suite after another; the last line of stdout is the sum of all.
 * `npm test -- unit pdf` runs only those suites (`check` is one too), `npm test -- unit end-float` only the test files
 * with that in their path.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { buildStale } from './bundles.mjs';
import { runCheckSteps } from './check-steps.mjs';
import { waitFor } from './child-process.mjs';
import { requireDebianTools } from './debian-tools.mjs';
import { whyNoDesktopSpecs } from './desktop-runtime.mjs';
import { prepare } from './prepare.mjs';
import { inProject, Refusal, runScript, secondsSince } from './project.mjs';
import { suiteNames } from './test-suites.mjs';
import { failuresOf } from './test-failures.mjs';

/** Suites that look at built files; the others run from the sources. */
const bundlesFor = {
  browser: ['page'],
  contract: ['page', 'desktop'],
  faults: ['page'],
  electron: ['page', 'desktop'],
};

const print = (line) => process.stdout.write(`${line}\n`);
const asSum = ({ passed, failed, skipped }) => `${passed} passed, ${failed} failed, ${skipped} skipped`;

/** A test file outside every suite would never run. @throws {Refusal} naming such files */
function refuseStrayTests() {
  const stray = readdirSync(inProject('tests'), { recursive: true })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => /\.(test|spec)\.[cm]?[jt]sx?$/.test(path))
    .filter((path) => !suiteNames.includes(path.split('/')[0]) || !path.endsWith('.test.ts'));
  if (stray.length > 0) {
    throw new Refusal(`Test files that no suite runs:\n${stray.map((path) => `  tests/${path}`).join('\n')}`);
  }
}

/** Reads vitest's account of a suite. One that is missing, holds no test or reports a failure beyond them is a failure. */
function countSuite(reportPath, exitCode) {
  if (!existsSync(reportPath))
    return { passed: 0, failed: 1, skipped: 0, note: 'it crashed and left no report' };
  const report = JSON.parse(readFileSync(reportPath, 'utf8'));
  const count = {
    passed: report.numPassedTests,
    failed: report.numFailedTests,
    skipped: report.numPendingTests + report.numTodoTests,
  };
  const total = count.passed + count.failed + count.skipped;
  if (total === 0) return { ...count, failed: 1, note: 'it ran no test' };
  const filesBroken = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  ).length;
  if (filesBroken > 0) {
    return {
      ...count,
      failed: count.failed + filesBroken,
      note: `${filesBroken} test file(s) broke outside a test`,
    };
  }
  if (exitCode !== 0 && count.failed === 0)
    return { ...count, failed: 1, note: `vitest ended with ${exitCode}` };
  return count;
}

/** True when the bundles are there; a build that fails costs the suite that needs it, not the whole run. */
async function built(bundles) {
  try {
    await buildStale(bundles);
    return true;
  } catch (error) {
    process.stderr.write(`${error instanceof Refusal ? error.message : error.stack}\n`);
    return false;
  }
}

async function runSuite(name, filters) {
  const begun = performance.now();
  const reportPath = inProject('test-output', `${name}.json`);
  rmSync(reportPath, { force: true });
  if (!(await built(bundlesFor[name] ?? []))) {
    print(`${name}: FAILED in ${secondsSince(begun)} s – what it looks at could not be built`);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const vitest = inProject('node_modules', 'vitest', 'vitest.mjs');
  const args = [
    'run',
    '--project',
    name,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${reportPath}`,
  ];
  const child = spawn(process.execPath, [vitest, ...args, ...filters], {
    cwd: inProject(),
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  const { code } = await waitFor(child);
  const count = countSuite(reportPath, code);
  const note = count.note === undefined ? '' : ` – ${count.note}`;
  print(`${name}: ${asSum(count)} in ${secondsSince(begun)} s${note}`);
  return count;
}

async function runChecks() {
  const begun = performance.now();
  const count = { ...(await runCheckSteps()), skipped: 0 };
  print(`check: ${asSum(count)} in ${secondsSince(begun)} s`);
  return count;
}

/** Says at the end once more what failed: in a long run the account of the suite has scrolled away, or was cut. */
function sayWhatFailed(suites) {
  for (const name of suites) {
    const reportPath = inProject('test-output', `${name}.json`);
    if (!existsSync(reportPath)) continue;
    for (const failure of failuresOf(JSON.parse(readFileSync(reportPath, 'utf8')), inProject()))
      print(`FAILED ${failure}`);
  }
}

function sayWhatDidNotRun(counts) {
  const hindrance = whyNoDesktopSpecs();
  if (counts.electron === undefined || hindrance === null) return;
  print(`ATTENTION: THE DESKTOP SPECS DID NOT RUN (${counts.electron.skipped} skipped). ${hindrance}`);
}

await runScript(async () => {
  const asked = process.argv.slice(2);
  const known = ['check', ...suiteNames];
  const named = asked.filter((word) => known.includes(word));
  const filters = asked.filter((word) => !known.includes(word));
  const suites = named.length > 0 ? known.filter((name) => named.includes(name)) : known;
  if (filters.length > 0 && named.length === 0) {
    throw new Refusal(`There is no suite ${filters[0]}. There are: ${known.join(', ')}.`, 2);
  }

  requireDebianTools();
  refuseStrayTests();
  await prepare({ build: [] });
  mkdirSync(inProject('test-output'), { recursive: true });

  const counts = {};
  for (const name of suites)
    counts[name] = name === 'check' ? await runChecks() : await runSuite(name, filters);
  sayWhatFailed(suites);
  sayWhatDidNotRun(counts);

  const sum = { passed: 0, failed: 0, skipped: 0 };
  for (const count of Object.values(counts)) for (const kind of Object.keys(sum)) sum[kind] += count[kind];
  if (sum.failed > 0) process.exitCode = 1;
  print(asSum(sum));
});
