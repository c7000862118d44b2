/** An engine in the test's own process, with real decoder processes: its files and its database are at hand. */
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { onTestFinished } from 'vitest';

import { startEngine, type EngineParts } from '../../electron/engine/engine.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { workInLibrary, type LibraryWork } from './library-work.ts';
import { quickStart } from './quick-start.ts';

type TestedParts = Pick<EngineParts, 'files' | 'onConnection'>;

export type EngineHere = LibraryWork & { close(): Promise<void> };

export async function engineHere(parts: TestedParts = {}): Promise<EngineHere> {
  const engine = await engineIn(temporaryFolder(), parts);
  onTestFinished(engine.close);
  return engine;
}

/** On the library that openProgram() has in that folder too. Whoever starts it closes it. */
export async function engineIn(folder: string, parts: TestedParts = {}): Promise<EngineHere> {
  const library = join(folder, 'own');
  const engine = await startEngine({
    ...parts,
    config: { library: 'own', folder: library, carrier: 'loopback' },
    broker: createForkBroker({ environment: quickStart }),
    publish: () => undefined,
    openLibrary: () => undefined,
  });
  let closing: Promise<void> | null = null;
  return {
    ...workInLibrary({
      library,
      // As over a carrier, other work of this process goes on between question and answer.
      answer: (channel, request) => setImmediate().then(() => engine.call(channel, request)),
      ask: engine.ask,
    }),
    close: () => (closing ??= engine.close('in good order')),
  };
}
