/** npm run check: types, lint rules and format of everything. */
import { runCheckSteps } from './check-steps.mjs';
import { prepare } from './prepare.mjs';
import { runScript } from './project.mjs';

await runScript(async () => {
  await prepare({ build: [] });
  const { failed } = await runCheckSteps();
  if (failed > 0) process.exitCode = 1;
});
