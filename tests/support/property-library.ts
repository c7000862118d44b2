/** A library for one run of a property: made, and gone again, however the run ends. */
import { openEngineOverWorld, type EngineOverWorld } from './engine-for-test.ts';
import { makeTemporaryFolder, removeFolder } from './temporary-folder.ts';
import type { WorldSize } from './world.ts';

export type PropertyLibrary = EngineOverWorld & AsyncDisposable;

export async function onePropertyLibrary(seed: number, size: WorldSize): Promise<PropertyLibrary> {
  const folder = makeTemporaryFolder();
  const opened = await openEngineOverWorld(folder, seed, size);
  return {
    ...opened,
    [Symbol.asyncDispose]: async () => {
      await opened.engine.close();
      removeFolder(folder);
    },
  };
}
