/**
 * The engine dies at each step of each kind of write: changed, entered in the journal, kept. Whoever waited is told that
 * it stopped; the write is there whole once it was kept, and not by one row before.
 */
import { expect, test } from 'vitest';

import { temporaryFolder } from '../support/temporary-folder.ts';
import { exampleWrites, makeExampleLibrary } from './example-case.ts';
import { codeOf, openProgram } from './program-under-test.ts';
import { contentOf, expectSoundDatabase, expectWholeLibrary, tablesUnlike } from './whole-library.ts';

const steps = ['changed', 'journalled', 'kept'] as const;

/** One death after another: an engine's successor dies at the next. */
const deaths = Object.values(exampleWrites).flatMap(({ what }) =>
  steps.map((step) => `${what.replaceAll(' ', '-')}.${step}`),
);

test('an engine killed at each step of a mark, a finding, its class, the chain and the report’s plan', async () => {
  const folder = temporaryFolder();
  const example = await makeExampleLibrary(folder);
  const { caseId } = example;
  const program = openProgram(folder, (entry, start) => {
    const death = deaths[start - 1];
    return entry === 'engine' && death !== undefined ? `${death}:kill@1` : null;
  });
  await program.started;

  for (const [name, write] of Object.entries(exampleWrites)) {
    const before = contentOf(program.library);
    const linesNow = async () =>
      (await program.call('journal.list', { caseId, most: 50 })).filter(({ what }) => what === write.what)
        .length;
    const lines = await linesNow();
    const request = write.request(example, 'grit in every pad');
    for (const step of steps) {
      const at = `${name}, ${step}`;
      expect(codeOf(await program.answer(write.channel, request)), at).toBe('engine-stopped');
      // Answered by the next engine.
      expect(await linesNow(), at).toBe(step === 'kept' ? lines + 1 : lines);
      expect(tablesUnlike(before, contentOf(program.library)), at).toEqual(
        step === 'kept' ? write.tables : [],
      );
      expect((await program.call('journal.check', {})).brokenAt, at).toBeNull();
      expectSoundDatabase(program.library);
    }
    if (write.wordsOf) expect(await write.wordsOf(program, example), name).toBe('grit in every pad');

    // Asked again by somebody who was not told: refused as done, not done twice.
    const kept = contentOf(program.library);
    expect(codeOf(await program.answer(write.channel, request)), name).toBe('stale-revision');
    expect(tablesUnlike(kept, contentOf(program.library)), name).toEqual([]);
  }
  expect(program.engineStarts()).toBe(deaths.length + 1);
  await expectWholeLibrary(program, caseId);
});
