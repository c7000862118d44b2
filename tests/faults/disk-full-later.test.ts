/** The disk fills up after the photos are in: findings, classes, the chain, the report's plan and its plates. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import { createDurableFiles } from '../../electron/files/durable-files.ts';
import { jobEnded } from '../support/exchanges.ts';
import { engineHere } from './engine-here.ts';
import { exampleWrites, fillExampleCase } from './example-case.ts';
import { createFullDisk } from './full-disk.ts';
import { picture } from './small-pictures.ts';
import { fillUp, smallLibrary } from './small-library.ts';
import { contentOf, expectSoundDatabase, expectWholeLibrary, tablesUnlike } from './whole-library.ts';

/** More bytes than a page of the database holds, within the fewest characters that any of them may have. */
const longWords = '⌀'.repeat(2_000);

describe('a disk that is full for the database refuses whole, and takes as soon as there is room', () => {
  const writes = Object.entries(exampleWrites).filter(([, { wordsOf }]) => wordsOf !== null);

  test.each(writes)('%s', async (_name, write) => {
    const { engine, pages, limit } = await smallLibrary();
    const example = await fillExampleCase(engine, await picture(1));
    limit(pages());
    await fillUp(engine, example.caseId);
    const before = contentOf(engine.library);
    const request = write.request(example, longWords);
    // Page by page, so that it is refused at one place after another.
    let room = 0;
    for (;;) {
      limit(pages() + room);
      const answer = await engine.answer(write.channel, request);
      if (answer.ok) break;
      expect(answer.error).toMatchObject({
        code: 'disk-full',
        details: { what: 'the library' },
        retryable: true,
      });
      expect(tablesUnlike(before, contentOf(engine.library))).toEqual([]);
      expectSoundDatabase(engine.library);
      room += 1;
    }
    expect(room).toBeGreaterThan(0);
    expect(tablesUnlike(before, contentOf(engine.library))).toEqual(write.tables);
    expect(await write.wordsOf?.(engine, example)).toBe(longWords);
    await expectWholeLibrary(engine, example.caseId);
  });
});

test('a disk that is full for the plates fails the report by the picture’s name, and leaves nothing of a plate', async () => {
  const disk = createFullDisk(createDurableFiles());
  const engine = await engineHere({ files: disk.files });
  const { caseId } = await fillExampleCase(engine, await picture(1));
  const before = contentOf(engine.library);
  const plates = join(engine.library, 'plates');
  const report = async () => {
    const { id } = await engine.call('reports.make', { caseId, paper: 'A4' });
    return jobEnded({ call: engine.answer }, id);
  };
  const filesIn = (folder: string) =>
    existsSync(folder)
      ? readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
      : [];

  for (const step of ['syncFile', 'ensureFolder', 'syncFolder', 'rename'] as const) {
    disk.fill(step);
    expect(await report(), step).toMatchObject({
      state: 'failed',
      document: null,
      error: { code: 'disk-full', details: { what: 'face-1.jpg' }, retryable: true },
    });
    expect(disk.refusals(), step).toBe(1);
    expect(filesIn(plates), step).toEqual([]);
    expect(readdirSync(join(engine.library, 'incoming')), step).toEqual([]);
    expect(readdirSync(join(engine.library, 'deliveries')), step).toEqual([]);
    expect(tablesUnlike(before, contentOf(engine.library)), step).toEqual(['job']);
  }
  disk.free();
  expect(await report()).toMatchObject({ state: 'done' });
  expect(filesIn(plates)).toHaveLength(1);
  await expectWholeLibrary(engine, caseId);
});
