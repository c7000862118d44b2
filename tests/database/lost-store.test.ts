/** A library whose store is gone, as on a disk that is not there: all of it is counted, a thousand are named. */
import { setImmediate } from 'node:timers/promises';

import { expect, test } from 'vitest';

import { openLibrary } from '../../electron/database/open-library.ts';
import { migrationsFolder, testInstant } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { startEngineHere } from '../support/world-engine.ts';
import { pourWorld } from '../support/world-through-repositories.ts';
import { makeWorld } from '../support/world.ts';

test('is told in a number, with the names of the first thousand', async () => {
  const folder = temporaryFolder();
  const { db } = openLibrary({ folder, migrationsFolder, now: () => testInstant });
  pourWorld(db, makeWorld(11, { cases: 4, findings: [0, 0], photos: [300, 300], marks: [0, 0] }));
  db.close();
  const engine = await startEngineHere(folder);
  try {
    let sweep = null;
    while (sweep === null) {
      // The engine is in this very process: its turn has to come.
      await setImmediate();
      ({ sweep } = await engine.ask('library.overview', {}));
    }
    expect(sweep.missingCount).toBe(1_200);
    expect(new Set(sweep.missing.map(({ sha256 }) => sha256)).size).toBe(1_000);
  } finally {
    await engine.close();
  }
});
