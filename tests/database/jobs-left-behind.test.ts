import { expect, test } from 'vitest';

import type { JobId } from '#shared-types/ids.ts';
import type { JobItem } from '#shared-types/job.ts';

import { openLibrary } from '../../electron/database/open-library.ts';
import { addJob, addJobItem, endJob, writeJobProgress } from '../../electron/database/repositories/jobs.ts';
import { engineForTest } from '../support/engine-for-test.ts';
import { migrationsFolder, testId, testInstant } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const item: JobItem = {
  sourceName: 'a.jpg',
  outcome: 'added',
  photoId: null,
  alsoIn: [],
  putBack: false,
  error: null,
};

test('jobs that the last run left running are told as interrupted, with what they had done; ended ones stay as they were', async () => {
  const folder = temporaryFolder();
  const { db } = openLibrary({ folder, migrationsFolder, now: () => testInstant });
  const [left, done] = [testId<JobId>(1), testId<JobId>(2)];
  for (const id of [left, done]) {
    addJob(db, { id, kind: 'photo-import', caseId: null, phase: 'importing', total: 2, at: testInstant });
    addJobItem(db, { jobId: id, place: 0, item });
    writeJobProgress(db, { id, phase: 'importing' });
  }
  addJobItem(db, { jobId: done, place: 1, item });
  writeJobProgress(db, { id: done, phase: 'importing' });
  endJob(db, { id: done, state: 'done', at: testInstant, document: null, error: null });
  db.close();

  const engine = await engineForTest(folder);
  const interrupted = await engine.ask('jobs.read', { jobId: left });
  expect(interrupted).toMatchObject({ state: 'interrupted', done: 1, total: 2, items: [item] });
  expect(interrupted.endedAt).not.toBeNull();
  expect(await engine.ask('jobs.read', { jobId: done })).toMatchObject({
    state: 'done',
    done: 2,
    endedAt: testInstant,
  });
  expect((await engine.ask('jobs.list', {})).map(({ id }) => id)).toEqual([done, left]);
});
