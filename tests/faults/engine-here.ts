/** An engine in the test's own process, with real decoder processes: its files and its database are at hand. */
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { onTestFinished } from 'vitest';

import { startEngine, type EngineParts } from '../../electron/engine/engine.ts';
import { createForkBroker } from '../../electron/processes/fork-broker.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { workInLibrary, type LibraryWork } from './library-work.ts';
import { quickStart } from './quick-start.ts';

export async function engineHere(
  parts: Pick<EngineParts, 'files' | 'onConnection'> = {},
): Promise<LibraryWork> {
  const folder = join(temporaryFolder(), 'own');
  const engine = await startEngine({
    ...parts,
    config: { library: 'own', folder, carrier: 'loopback' },
    broker: createForkBroker({ environment: quickStart }),
    publish: () => undefined,
    openLibrary: () => undefined,
  });
  onTestFinished(() => engine.close('in good order'));
  return workInLibrary({
    library: folder,
    // As over a carrier, other work of this process goes on between question and answer.
    answer: (channel, request) => setImmediate().then(() => engine.call(channel, request)),
    ask: engine.ask,
  });
}
