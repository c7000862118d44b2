/** Long work that the user stops: what was at work is finished or dropped whole, the rest is said not to be begun. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';

import type { TakenIn } from '#shared-types/carrier.ts';

import { jobEnded, valueOf } from '../support/exchanges.ts';
import { engineHere } from './engine-here.ts';
import { picture } from './small-pictures.ts';
import { expectWholeLibrary } from './whole-library.ts';

test('an import finishes the two photos at work, begins no other, and drops every upload', async () => {
  const engine = await engineHere();
  const caseId = await engine.openCase();
  const uploads = [];
  for (const number of [1, 2, 3, 4, 5]) uploads.push(await picture(number));
  const tokens = [];
  for (const path of uploads) {
    const file = { path, name: basename(path), bytes: statSync(path).size, temporary: true };
    tokens.push((valueOf(await engine.ask({ ask: 'take-in', ...file })) as TakenIn).token);
  }
  // The first two wait for decoders that are only being started.
  const { id } = await engine.call('photos.import', { caseId, tokens });
  await engine.call('jobs.stop', { jobId: id });
  const job = await jobEnded({ call: engine.answer }, id);
  expect(job).toMatchObject({ state: 'stopped', error: null, done: 5, total: 5 });
  expect(job.items.map(({ outcome }) => outcome)).toEqual([
    ...['added', 'added'],
    ...['not-begun', 'not-begun', 'not-begun'],
  ]);
  expect(uploads.filter(existsSync)).toEqual([]);
  expect(await expectWholeLibrary(engine, caseId)).toHaveLength(2);
});

test('a report is dropped where it is, and leaves no part of a document', async () => {
  const engine = await engineHere();
  const caseId = await engine.openCase();
  await engine.importAll(caseId, [await picture(1)]);
  const { id } = await engine.call('reports.make', { caseId, paper: 'A4' });
  await engine.call('jobs.stop', { jobId: id });
  const job = await jobEnded({ call: engine.answer }, id);
  expect(job).toMatchObject({ state: 'stopped', document: null, error: null });
  expect(readdirSync(join(engine.library, 'deliveries'))).toEqual([]);
  const again = await engine.call('reports.make', { caseId, paper: 'A4' });
  expect(await jobEnded({ call: engine.answer }, again.id)).toMatchObject({ state: 'done' });
});
