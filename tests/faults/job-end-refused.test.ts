/** A job has ended and the database would not take it down, as on a full disk: nobody is told that it still runs. */
import { expect, test } from 'vitest';

import type { Db } from '../../electron/database/open-library.ts';
import { jobEnded } from '../support/exchanges.ts';
import { engineHere } from './engine-here.ts';
import { picture } from './small-pictures.ts';
import { expectWholeLibrary, rowsOf } from './whole-library.ts';

test('it is told as ended from then on, and written down when the next job begins', async () => {
  const held: Db[] = [];
  const engine = await engineHere({ onConnection: (db) => held.push(db) });
  const caseId = await engine.openCase();
  const paths = [await picture(1)];
  const [db] = held;
  // For this connection only, and for one thing only: a full disk refuses it sometimes, this always.
  db?.exec(`CREATE TEMP TRIGGER no_room BEFORE UPDATE OF ended_at ON main.job
    BEGIN SELECT RAISE(ABORT, 'no room for the end'); END`);
  const { id } = await engine.beginImport(caseId, paths);
  const ended = await jobEnded({ call: engine.answer }, id);
  expect(ended).toMatchObject({ state: 'done', done: 1, error: null, items: [{ outcome: 'added' }] });
  expect(ended.endedAt).not.toBeNull();
  expect(await engine.call('jobs.list', {})).toEqual([ended]);
  const states = 'SELECT state FROM job ORDER BY id';
  expect(rowsOf(engine.library, states)).toEqual([{ state: 'running' }]);

  db?.exec('DROP TRIGGER no_room');
  const next = await engine.importAll(caseId, paths);
  expect(next.items).toMatchObject([{ outcome: 'already-here' }]);
  expect(rowsOf(engine.library, states)).toEqual([{ state: 'done' }, { state: 'done' }]);
  expect(await engine.call('jobs.read', { jobId: id })).toEqual(ended);
  await expectWholeLibrary(engine, caseId);
});
