/** The engine dies in the middle of its work, at every point that has a name: afterwards each thing is whole or absent. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { CaseId, FindingId, PhotoId } from '#shared-types/ids.ts';

import { exampleFinding, jobEnded } from '../support/exchanges.ts';
import { makeTemporaryFolder, removeFolder, temporaryFolder } from '../support/temporary-folder.ts';
import { codeOf, inFirstEngine, openProgram } from './program-under-test.ts';
import { smallPictures } from './small-pictures.ts';
import { expectWholeLibrary, originalsOf, rowsOf, sweepOf } from './whole-library.ts';

let folder: string;
let pictures: string[];

beforeAll(async () => {
  folder = makeTemporaryFolder();
  pictures = await smallPictures(folder, 3);
});
afterAll(() => {
  removeFolder(folder);
});

const importPoints = [
  'import.staged',
  'picture.thumbnail-kept',
  'import.decoded',
  'import.original-kept',
  'photo-added.changed',
  'import.recorded',
] as const;

/** The first death and the last: with two photos at work at a time, one before any is done and one after most are. */
const deaths = importPoints.flatMap((point) => [1, 3].map((nth) => [point, nth] as const));

describe('an engine killed in an import of three photos', () => {
  test.each(deaths)('at %s, time %i', async (point, nth) => {
    const program = openProgram(temporaryFolder(), inFirstEngine(`${point}:kill@${nth}`));
    const caseId = await program.openCase();
    const job = await program.beginImport(caseId, pictures);
    await program.state('restarting');

    const interrupted = await jobEnded({ call: program.answer }, job.id);
    expect(interrupted).toMatchObject({ state: 'interrupted', total: 3, error: null });
    expect(program.engineStates()).toEqual(['ready', 'restarting', 'ready']);
    expect(program.events.at(-1)).toEqual({ name: 'resync', payload: {} });

    const photos = await expectWholeLibrary(program, caseId);
    expect(interrupted.items.map(({ outcome }) => outcome)).toEqual(photos.map(() => 'added'));
    const known = photos.map(({ sha256 }) => sha256);
    const { strays, missing } = await sweepOf(program);
    const unknown = originalsOf(program.library).filter((name) => !known.includes(name));
    expect(strays).toEqual(unknown.map((name) => `originals/${name.slice(0, 2)}/${name}`));
    expect(missing).toEqual([]);
    expect(readdirSync(join(program.library, 'incoming'))).toEqual([]);

    const again = await program.importAll(caseId, pictures);
    expect(again.state).toBe('done');
    expect(again.items.filter(({ outcome }) => outcome === 'already-here')).toHaveLength(photos.length);
    expect(again.items.filter(({ outcome }) => outcome === 'added')).toHaveLength(3 - photos.length);
    expect(await expectWholeLibrary(program, caseId)).toHaveLength(3);
    expect(originalsOf(program.library)).toHaveLength(3);
  });
});

describe('an engine killed while the library is made', () => {
  test('leaves one that opens', async () => {
    const program = openProgram(temporaryFolder(), inFirstEngine('library.migrated:kill@1'));
    const caseId = await program.openCase();
    expect(program.engineStarts()).toBe(2);
    await expectWholeLibrary(program, caseId);
  });
});

const findingId = 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a01' as FindingId;

function commitOf(caseId: CaseId, photoId: PhotoId) {
  const geometry = { kind: 'arrow', v: 1, tail: { x: 10, y: 12 }, tip: { x: 60, y: 40 } } as const;
  const id = 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a02';
  return {
    caseId,
    changes: [
      { change: 'put-finding', findingId, fields: exampleFinding, revision: null },
      { change: 'put-mark', revision: null, mark: { id, photoId, findingId, geometry, order: 0 } },
    ],
  };
}

/** A case with one photo, and then a commit during which the engine dies. */
async function dieInCommit(point: string) {
  const program = openProgram(temporaryFolder(), inFirstEngine(`${point}:kill@1`));
  const caseId = await program.openCase();
  const { items } = await program.importAll(caseId, pictures.slice(0, 1));
  const photoId = items[0]?.photoId as PhotoId;
  const commit = program.answer('bench.commit', commitOf(caseId, photoId));
  const behindIt = program.answer('cases.list', {});
  const answers = await Promise.all([commit, behindIt]);
  const asked = program.answer('bench.read', { caseId });
  return { program, caseId, photoId, answers, bench: await asked };
}

describe('an engine killed in a commit at the bench', () => {
  test('before the end of its transaction leaves nothing of it, and tells whoever waited', async () => {
    const { program, caseId, photoId, answers, bench } = await dieInCommit('bench.changed');
    expect(answers.map(codeOf)).toEqual(['engine-stopped', 'engine-stopped']);
    // Asked between the death and the next start: kept, and answered by the next engine.
    expect(bench).toEqual({ ok: true, value: { marks: [], findings: [] } });
    expect(rowsOf(program.library, "SELECT number FROM journal WHERE what = 'bench'")).toEqual([]);
    expect(rowsOf(program.library, 'SELECT id FROM finding_number')).toEqual([]);
    expect(await program.answer('bench.commit', commitOf(caseId, photoId))).toMatchObject({ ok: true });
    await expectWholeLibrary(program, caseId);
  });

  test('after it leaves all of it', async () => {
    const { program, caseId, answers, bench } = await dieInCommit('bench.kept');
    expect(answers.map(codeOf)).toEqual(['engine-stopped', 'engine-stopped']);
    expect(bench).toMatchObject({ value: { marks: [{ findingId }], findings: [{ id: findingId }] } });
    expect(rowsOf(program.library, "SELECT number FROM journal WHERE what = 'bench'")).toHaveLength(1);
    await expectWholeLibrary(program, caseId);
  });
});
