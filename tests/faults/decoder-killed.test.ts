/** A picture that kills whatever decodes it costs itself and nothing else. */
import { expect, test } from 'vitest';

import { temporaryFolder } from '../support/temporary-folder.ts';
import { openProgram } from './program-under-test.ts';
import { smallPictures } from './small-pictures.ts';
import { expectWholeLibrary, originalsOf, sha256Of } from './whole-library.ts';

test('a picture that kills its decoder fails by its name; the others land and the engine lives', async () => {
  const folder = temporaryFolder();
  const [first = '', hostile = '', third = ''] = await smallPictures(folder, 3);
  const program = openProgram(folder, (entry) =>
    entry === 'decoder' ? `decoder.decode:kill@${sha256Of(hostile)}` : null,
  );
  const caseId = await program.openCase();
  const job = await program.importAll(caseId, [first, hostile, third]);
  expect(job.state).toBe('done');
  expect(job.items).toMatchObject([
    { sourceName: 'face-1.jpg', outcome: 'added', error: null },
    { sourceName: 'face-2.jpg', outcome: 'failed', photoId: null, error: { code: 'picture-killed-decoder' } },
    { sourceName: 'face-3.jpg', outcome: 'added', error: null },
  ]);
  expect(job.items[1]?.error?.message).toContain('face-2.jpg');
  expect(await expectWholeLibrary(program, caseId)).toHaveLength(2);
  expect(originalsOf(program.library)).toEqual([first, third].map(sha256Of).sort());

  // Dropped once more it kills once more, and still nothing else.
  const again = await program.importAll(caseId, [hostile, first]);
  expect(again.items.map(({ outcome }) => outcome)).toEqual(['failed', 'already-here']);
  expect(program.engineStates()).toEqual(['ready']);
  expect(program.engineStarts()).toBe(1);
});
