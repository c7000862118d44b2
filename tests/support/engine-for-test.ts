import { onTestFinished } from 'vitest';

import { openLibrary } from '../../electron/database/open-library.ts';
import { migrationsFolder, testInstant } from './open-test-library.ts';
import { temporaryFolder } from './temporary-folder.ts';
import { startEngineHere, type EngineHere } from './world-engine.ts';
import { pourWorld } from './world-through-repositories.ts';
import { makeWorld, type World, type WorldSize } from './world.ts';

/** An engine on a library of the running test's own, closed when the test ends. */
export async function engineForTest(folder = temporaryFolder()): Promise<EngineHere> {
  const engine = await startEngineHere(folder);
  onTestFinished(() => engine.close());
  return engine;
}

export type EngineOverWorld = { readonly engine: EngineHere; readonly world: World };

/** An engine on a library with a world in it: cases, photos, findings and marks have the ids of the plan. */
export async function engineOverWorld(seed: number, size: WorldSize): Promise<EngineOverWorld> {
  const { engine, world } = await openEngineOverWorld(temporaryFolder(), seed, size);
  onTestFinished(() => engine.close());
  return { engine, world };
}

/** For an engine that several tests of a file share: whoever opens it closes it. */
export async function openEngineOverWorld(
  folder: string,
  seed: number,
  size: WorldSize,
): Promise<EngineOverWorld> {
  const world = makeWorld(seed, size);
  const { db } = openLibrary({ folder, migrationsFolder, now: () => testInstant });
  pourWorld(db, world);
  db.close();
  return { engine: await startEngineHere(folder), world };
}
