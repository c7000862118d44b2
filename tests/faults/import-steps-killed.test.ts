/**
 * The engine dies at each step that a photo takes on its way into a case: in the copy, between sync, seal and name, in
 * the transaction of its rows, and after it. One picture a step, each dropped once more at the end.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

import { temporaryFolder } from '../support/temporary-folder.ts';
import { endOf, openProgram } from './program-under-test.ts';
import { smallPictures } from './small-pictures.ts';
import { expectSoundDatabase, expectWholeLibrary, originalsOf, sha256Of } from './whole-library.ts';

/** What is there after each death: nothing, an original that nothing names, or the whole photo. */
const steps = [
  ['original.piece-copied', 'nothing'],
  ['copy.synced', 'nothing'],
  ['original.synced', 'nothing'],
  ['original.sealed', 'nothing'],
  ['original.named', 'stray'],
  ['photo-added.begun', 'stray'],
  ['photo-added.journalled', 'stray'],
  ['import.staged-dropped', 'photo'],
  ['job.ended', 'photo'],
] as const;

test('an engine killed at every step of an import, one after the other', async () => {
  const folder = temporaryFolder();
  const pictures = await smallPictures(folder, steps.length);
  const program = openProgram(folder, (entry, start) => {
    const step = steps[start - 1];
    return entry === 'engine' && step ? `${step[0]}:kill@1` : null;
  });
  const caseId = await program.openCase();
  const recorded: string[] = [];
  const stored: string[] = [];
  for (const [index, [step, left]] of steps.entries()) {
    const picture = pictures[index] ?? '';
    const sha256 = sha256Of(picture);
    const job = await endOf(program, () => program.beginImport(caseId, [picture]));
    expect(program.engineStarts(), step).toBe(index + 2);

    if (left !== 'nothing') stored.push(sha256);
    if (left === 'photo') recorded.push(sha256);
    expect(job.state, step).toBe(step === 'job.ended' ? 'done' : 'interrupted');
    expect(
      job.items.map(({ outcome }) => outcome),
      step,
    ).toEqual(left === 'photo' ? ['added'] : []);
    const photos = await program.call('photos.list', { caseId });
    expect(
      photos.map((photo) => photo.sha256),
      step,
    ).toEqual(recorded);
    expect(originalsOf(program.library), step).toEqual([...stored].sort());
    for (const name of stored) {
      expect(sha256Of(join(program.library, 'originals', name.slice(0, 2), name)), step).toBe(name);
    }
    expect(readdirSync(join(program.library, 'incoming')), step).toEqual([]);
    expect((await program.call('journal.check', {})).brokenAt, step).toBeNull();
    expectSoundDatabase(program.library);
  }

  const again = await endOf(program, () => program.beginImport(caseId, pictures));
  expect(again.items.map(({ outcome }) => outcome)).toEqual(
    steps.map(([, left]) => (left === 'photo' ? 'already-here' : 'added')),
  );
  expect(await expectWholeLibrary(program, caseId)).toHaveLength(steps.length);
  expect(originalsOf(program.library)).toEqual(pictures.map(sha256Of).sort());
});
