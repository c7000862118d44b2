/** npm run build: the page and the desktop program, anew. `npm run build -- page` builds one of the two. */
import { build, bundleNames } from './bundles.mjs';
import { prepare } from './prepare.mjs';
import { Refusal, runScript } from './project.mjs';

await runScript(async () => {
  const asked = process.argv.slice(2);
  const unknown = asked.filter((name) => !bundleNames.includes(name));
  if (unknown.length > 0) {
    throw new Refusal(
      `Not something that is built: ${unknown.join(', ')}. There are: ${bundleNames.join(', ')}.`,
      2,
    );
  }
  await prepare({ build: [] });
  for (const name of asked.length > 0 ? asked : bundleNames) await build(name);
});
