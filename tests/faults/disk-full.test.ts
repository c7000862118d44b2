/**
 * The disk fills up, in the photo store's files or in the database: what does not fit is refused by its name, nothing
 * is half there, and the work goes on as soon as there is room. The engine runs in this process, its decoders do not.
 */
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test, vi } from 'vitest';

import type { Envelope } from '#shared-types/errors.ts';
import type { Job } from '#shared-types/job.ts';

import { createDurableFiles } from '../../electron/files/durable-files.ts';
import { jobEnded } from '../support/exchanges.ts';
import { engineHere } from './engine-here.ts';
import { createFullDisk } from './full-disk.ts';
import { bigCommit, fillUp, smallLibrary } from './small-library.ts';
import { codeOf } from './program-under-test.ts';
import { picture } from './small-pictures.ts';
import { expectSoundDatabase, expectWholeLibrary, originalsOf, rowsOf } from './whole-library.ts';

describe('a disk that is full for the photo store', () => {
  async function storeOnFullDisk() {
    const disk = createFullDisk(createDurableFiles());
    const engine = await engineHere({ files: disk.files });
    return { disk, engine, caseId: await engine.openCase() };
  }

  // Everything that the store does while one photo comes in; it writes nothing but by copying.
  test.each(['ensureFolder', 'copyHashing', 'syncFile', 'rename', 'syncFolder'] as const)(
    'at the step %s',
    async (step) => {
      const { disk, engine, caseId } = await storeOnFullDisk();
      const paths = [await picture(1), await picture(2)];
      disk.fill(step);
      const refused = await engine.importAll(caseId, paths);
      expect(disk.refusals()).toBeGreaterThanOrEqual(2);
      expect(refused.state).toBe('done');
      expect(refused.items).toMatchObject(
        ['face-1.jpg', 'face-2.jpg'].map((what) => ({
          outcome: 'failed',
          photoId: null,
          error: { code: 'disk-full', details: { what }, retryable: true },
        })),
      );
      expect(await engine.call('photos.list', { caseId })).toEqual([]);
      expectSoundDatabase(engine.library);
      expect(readdirSync(join(engine.library, 'incoming'))).toEqual([]);

      disk.free();
      const landed = await engine.importAll(caseId, paths);
      expect(landed.items.map(({ outcome }) => outcome)).toEqual(['added', 'added']);
      expect(await expectWholeLibrary(engine, caseId)).toHaveLength(2);
    },
  );

  test('for everything, with photos there already: they stay, and are served', async () => {
    const { disk, engine, caseId } = await storeOnFullDisk();
    await engine.importAll(caseId, [await picture(1)]);
    disk.fill('every');
    const { items } = await engine.importAll(caseId, [await picture(2), await picture(3)]);
    expect(items.map(({ error }) => error?.code)).toEqual(['disk-full', 'disk-full']);
    expect(await expectWholeLibrary(engine, caseId)).toHaveLength(1);
    expect(originalsOf(engine.library)).toHaveLength(1);
  });
});

describe('a disk that is full for the database', () => {
  test('refuses a commit whole, and takes the same commit when there is room', async () => {
    const { engine, pages, limit } = await smallLibrary();
    const caseId = await engine.openCase();
    limit(pages() + 12);
    const answers: Envelope<unknown>[] = [];
    while (answers.every((answer) => codeOf(answer) === null)) {
      answers.push(await engine.answer('bench.commit', bigCommit(caseId, answers.length + 1)));
    }
    const last = answers.length;
    expect(last).toBeGreaterThan(1);
    const refused = answers.at(-1);
    expect(refused).toMatchObject({ ok: false, error: { code: 'disk-full', retryable: true } });
    expect(JSON.stringify(refused)).toContain('the library could not be written');
    const numbers = async () => (await engine.call('bench.read', { caseId })).findings.map((f) => f.number);
    const before = Array.from({ length: last - 1 }, (_, index) => index + 1);
    expect(await numbers()).toEqual(before);
    const lines = "SELECT number FROM journal WHERE what = 'bench'";
    expect(rowsOf(engine.library, lines)).toHaveLength(last - 1);
    expectSoundDatabase(engine.library);

    limit(pages() + 1_000);
    expect(codeOf(await engine.answer('bench.commit', bigCommit(caseId, last)))).toBeNull();
    expect(await numbers()).toEqual([...before, last]);
    await expectWholeLibrary(engine, caseId);
  });

  test('page by page refuses an import at one place after another, and never leaves half of one', async () => {
    const { engine, pages, limit } = await smallLibrary();
    const caseId = await engine.openCase();
    // Long names, so that a few rows fill a page.
    const paths: string[] = [];
    for (let number = 1; number <= 12; number += 1) {
      paths.push(await picture(number, `${'front face of the thrust collar '.repeat(7)}${number}.jpg`));
    }
    const refusals = new Set<string>();
    limit(pages());
    await fillUp(engine, caseId);
    let last: Job | null = null;
    for (const room of [0, 1, 2, 3, 4, 5, 6, 7, 8, 10_000]) {
      limit(pages() + room);
      const begun = await engine.answer('photos.import', { caseId, tokens: await engine.takeIn(paths) });
      if (begun.ok) {
        last = await jobEnded({ call: engine.answer }, (begun.value as Job).id);
        for (const { error } of last.items) if (error) refusals.add(`photo ${error.code}`);
        if (last.error) refusals.add(`job ${last.error.code}`);
      } else refusals.add(`call ${begun.error.code}`);
      expectSoundDatabase(engine.library);
    }
    expect(last).toMatchObject({ state: 'done', error: null });
    expect([...refusals].sort()).toEqual(['job disk-full', 'photo disk-full']);
    expect(await expectWholeLibrary(engine, caseId)).toHaveLength(paths.length);
    const jobs = await engine.call('jobs.list', {});
    expect(jobs.filter(({ state }) => state === 'running')).toEqual([]);
    expect(rowsOf(engine.library, "SELECT uuid FROM job WHERE state = 'running'")).toEqual([]);
  });

  test('and for the log: calls are answered all the same, and the lines go to standard error', async () => {
    const spoken: unknown[] = [];
    const said = vi.spyOn(console, 'error').mockImplementation((line) => spoken.push(line));
    onTestFinished(() => {
      said.mockRestore();
    });
    const { engine, pages, limit } = await smallLibrary();
    const caseId = await engine.openCase();
    const log = join(engine.library, 'log', 'engine.log');
    rmSync(log);
    mkdirSync(log);
    limit(pages());
    const answers: Envelope<unknown>[] = [];
    while (answers.every((answer) => codeOf(answer) === null)) {
      answers.push(await engine.answer('bench.commit', bigCommit(caseId, answers.length + 1)));
    }
    expect(codeOf(answers.at(-1) ?? { ok: true, value: null })).toBe('disk-full');
    expect(spoken.join('\n')).toContain('SqliteError');
  });
});
