/** From the start of the program to a list of cases that can be used. */
import { join } from 'node:path';

import { startEngineProcess, type EngineProcess } from './engine-process.ts';
import { medianAndWorst, timed, type Figure } from './figures.ts';

const runs = 5;

/** Each start includes that of Node itself and the loading of the machine kind. */
export async function measureStart(folder: string): Promise<Figure[]> {
  const engines: EngineProcess[] = [];
  const start = async (run: number) => {
    engines.push(await startEngineProcess(join(folder, `start-${String(run)}`)));
  };
  const closeAll = () => Promise.all(engines.splice(0).map((engine) => engine.close()));
  const making = await timed(runs, start);
  await closeAll();
  const empty = await timed(runs, start);
  await closeAll();
  return [
    ...medianAndWorst('Start of the engine’s process, making a library', making),
    ...medianAndWorst('Start of the engine’s process on an empty library', empty),
  ];
}
