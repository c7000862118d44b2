/** node scripts/run.mjs FILE [arguments]: makes everything ready, then runs a TypeScript file in this same process. */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { prepare } from './prepare.mjs';
import { inProject, Refusal, runScript } from './project.mjs';

await runScript(async () => {
  const [named, ...rest] = process.argv.slice(2);
  if (named === undefined) throw new Refusal('Usage: node scripts/run.mjs FILE [arguments]', 2);
  const file = resolve(inProject(), named);
  if (!existsSync(file)) throw new Refusal(`There is no file ${named}.`, 2);
  await prepare({ build: ['page'] });
  process.argv = [process.execPath, file, ...rest];
  await import(pathToFileURL(file).href);
});
