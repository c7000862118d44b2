/** The packages: whether those in node_modules are the ones the lock names, and installing them where they are not. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { lastLines, runQuietly } from './child-process.mjs';
import { inProject, Refusal, timed } from './project.mjs';

const stampPath = inProject('node_modules', '.teardown-docket-lock');
const dependencyFields = [
  'dependencies',
  'devDependencies',
  'optionalDependencies',
  'overrides',
  'allowScripts',
];

const sha256 = (text) => createHash('sha256').update(text).digest('hex');

/** Two lines: the hash of the lock, and the hash of what package.json asks for. */
function wantedStamp() {
  const lock = readFileSync(inProject('package-lock.json'), 'utf8');
  const asked = JSON.parse(readFileSync(inProject('package.json'), 'utf8'));
  const declared = JSON.stringify(dependencyFields.map((field) => asked[field] ?? null));
  return `${sha256(lock)}\n${sha256(declared)}\n`;
}

function readJson(path) {
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : null;
}

/**
 * True where npm itself, run by hand, has already installed exactly what the lock names: npm ends an install by writing
 * the list of what lies in node_modules. Packages for other systems may be missing from it.
 */
function installedByHand() {
  const lock = readJson(inProject('package-lock.json'))?.packages;
  const installed = readJson(inProject('node_modules', '.package-lock.json'))?.packages;
  if (!lock || !installed) return false;
  const asked = readJson(inProject('package.json'));
  const sameRequest = ['dependencies', 'devDependencies', 'optionalDependencies'].every(
    (field) => JSON.stringify(asked[field] ?? {}) === JSON.stringify(lock[''][field] ?? {}),
  );
  const noneForeign = Object.entries(installed).every(
    ([path, entry]) => lock[path]?.version === entry.version && lock[path]?.integrity === entry.integrity,
  );
  const noneMissing = Object.entries(lock).every(
    ([path, entry]) => path === '' || path in installed || entry.optional || entry.devOptional,
  );
  return sameRequest && noneForeign && noneMissing;
}

export function packagesAreCurrent() {
  const wanted = wantedStamp();
  if (existsSync(stampPath) && readFileSync(stampPath, 'utf8') === wanted) return true;
  if (!installedByHand()) return false;
  writeFileSync(stampPath, wanted);
  return true;
}

/** How to start npm: with the Node that npm itself runs under where npm started us, for ours may lie in node_modules. */
function npmCommand() {
  const { npm_execpath: script, npm_node_execpath: node } = process.env;
  if (script?.endsWith('.js') && existsSync(script)) {
    return { command: node && existsSync(node) ? node : process.execPath, before: [script], shell: false };
  }
  return { command: 'npm', before: [], shell: process.platform === 'win32' };
}

async function runNpm(args) {
  const { command, before, shell } = npmCommand();
  try {
    return await runQuietly(command, [...before, ...args], { cwd: inProject(), shell });
  } catch (error) {
    if (error.code !== 'ENOENT') throw error;
    throw new Refusal('npm is not on this machine. It comes with Node.js: https://nodejs.org');
  }
}

/** Installs what the lock names. @throws {Refusal} with npm's last words when it fails */
export async function installPackages() {
  const args = ['ci', '--no-audit', '--no-fund', '--include=dev', '--include=optional'];
  const { code, signal, output } = await timed('Installing packages (npm ci)', () => runNpm(args));
  if (/\bcode EUSAGE\b/.test(output)) {
    throw new Refusal(
      'package.json and package-lock.json do not name the same packages. Bring the lock in step with: npm install',
    );
  }
  if (code !== 0) {
    const how = signal === null ? `exit code ${code}` : `signal ${signal}`;
    throw new Refusal(
      `The packages could not be installed: npm ci ended with ${how}.\n\n${lastLines(output, 15)}`,
    );
  }
  mkdirSync(dirname(stampPath), { recursive: true });
  writeFileSync(stampPath, wantedStamp());
}
