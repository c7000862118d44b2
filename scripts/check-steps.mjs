/** The three checks of the source text: types, lint rules and format. All run, whichever fails. */
import { spawn } from 'node:child_process';
import { waitFor } from './child-process.mjs';
import { inProject, say, secondsSince } from './project.mjs';

const steps = {
  types: ['typescript/bin/tsc', '-b', '--pretty'],
  format: ['prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.'],
  lint: ['eslint/bin/eslint.js', '--max-warnings', '0', '.'],
};

/** Two at a time: lint, which takes longest by far, beside the other two. */
const lanes = [['lint'], ['types', 'format']];

/** Runs all three. @returns {Promise<{passed: number, failed: number}>} one count per check */
export async function runCheckSteps() {
  const count = { passed: 0, failed: 0 };
  await Promise.all(
    lanes.map(async (names) => {
      for (const name of names) count[(await passes(name)) ? 'passed' : 'failed'] += 1;
    }),
  );
  return count;
}

/** What a check says is shown in one piece when it is done, so that two at once stay readable. */
async function passes(name) {
  const begun = performance.now();
  const [script, ...args] = steps[name];
  const child = spawn(process.execPath, [inProject('node_modules', script), ...args], {
    cwd: inProject(),
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const said = [];
  child.stdout.on('data', (chunk) => said.push(chunk));
  child.stderr.on('data', (chunk) => said.push(chunk));
  const { code } = await waitFor(child);
  process.stderr.write(Buffer.concat(said));
  say(`check ${name}: ${code === 0 ? 'passed' : 'FAILED'} in ${secondsSince(begun)} s`);
  return code === 0;
}
