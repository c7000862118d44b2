/** The three checks of the source text: types, lint rules and format. All run, whichever fails. */
import { spawn } from 'node:child_process';
import { waitFor } from './child-process.mjs';
import { inProject, say, secondsSince } from './project.mjs';

const steps = {
  types: ['typescript/bin/tsc', '-b', '--pretty'],
  lint: ['eslint/bin/eslint.js', '--max-warnings', '0', '.'],
  format: ['prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.'],
};

/** Runs all three. @returns {Promise<{passed: number, failed: number}>} one count per check */
export async function runCheckSteps() {
  const count = { passed: 0, failed: 0 };
  for (const [name, [script, ...args]] of Object.entries(steps)) {
    const begun = performance.now();
    const child = spawn(process.execPath, [inProject('node_modules', script), ...args], {
      cwd: inProject(),
      stdio: ['ignore', 'inherit', 'inherit'],
    });
    const { code } = await waitFor(child);
    count[code === 0 ? 'passed' : 'failed'] += 1;
    say(`check ${name}: ${code === 0 ? 'passed' : 'FAILED'} in ${secondsSince(begun)} s`);
  }
  return count;
}
