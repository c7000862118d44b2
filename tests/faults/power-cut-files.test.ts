/**
 * The power is cut: what was written and not synced is gone. Before every step that the engine takes with its files,
 * what a cut would leave there is laid out as a library of its own, with as much of the database's log as was synced,
 * and opened.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import type { CaseId } from '#shared-types/ids.ts';

import type { Db } from '../../electron/database/open-library.ts';
import { createDurableFiles } from '../../electron/files/durable-files.ts';
import { jobEnded } from '../support/exchanges.ts';
import { libraryContent, type LibraryContent } from '../support/library-content.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { engineIn } from './engine-here.ts';
import { smallPictures } from './small-pictures.ts';
import { fingerprintOf, layOut, syncedCopies, type Remains } from './synced-copies.ts';
import {
  contentOf,
  expectSoundDatabase,
  expectWholeLibrary,
  originalsOf,
  sha256Of,
  sweepOf,
  tablesUnlike,
} from './whole-library.ts';
import { syncedLog } from './write-ahead-log.ts';

type Cut = { readonly before: string; readonly remains: Remains; readonly committed: LibraryContent };

const database = ['library.sqlite', 'library.sqlite-wal'] as const;

/** Brings two pictures in and prints them, and keeps what a cut would leave before each step. */
async function workRecorded(unsyncedNames: 'lost' | 'kept') {
  const folder = temporaryFolder();
  const pictures = await smallPictures(folder, 2);
  const library = join(folder, 'own');
  /** Those that leave the same are one. */
  const cuts = new Map<string, Cut>();
  let db: Db | null = null;
  const record = (before: string) => {
    if (!db?.open) return;
    const [main, log] = database.map((name) => readFileSync(join(library, name)));
    if (!main || !log) throw new Error('no database');
    const remains = new Map(disk.remains(unsyncedNames));
    remains.delete('library.sqlite-shm');
    remains.set(database[0], main);
    remains.set(database[1], syncedLog(log, Number(db.pragma('synchronous', { simple: true }))));
    cuts.set(fingerprintOf(remains), { before, remains, committed: libraryContent(db) });
  };
  const disk = syncedCopies(createDurableFiles(), library, record);
  const engine = await engineIn(folder, { files: disk.files, onConnection: (opened) => (db = opened) });
  try {
    const caseId = await engine.openCase();
    await engine.importAll(caseId, pictures);
    const { id } = await engine.call('reports.make', { caseId, paper: 'A4' });
    expect(await jobEnded({ call: engine.answer }, id)).toMatchObject({ state: 'done' });
    record('the end');
    return { library, pictures, caseId, cuts: [...cuts.values()] };
  } finally {
    await engine.close();
  }
}

/** Pictures made from originals, by their path in the library. */
function madePictures(library: string): string[] {
  return ['derived', 'plates'].flatMap((area) => {
    const folder = join(library, area);
    if (!existsSync(folder)) return [];
    return readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath.slice(library.length + 1), entry.name));
  });
}

type Work = Awaited<ReturnType<typeof workRecorded>>;

/** Answers how many photos the library has, and how many originals that are none of theirs. */
async function expectNothingHalf(work: Work, cut: Cut, folder: string) {
  const library = join(folder, 'own');
  layOut(cut.remains, library);
  // All that was committed, and so all that anybody was told, is there: before anything of this run is written.
  expect(tablesUnlike(cut.committed, contentOf(library)), cut.before).toEqual([]);
  for (const made of madePictures(library)) {
    const whole = readFileSync(join(work.library, made));
    expect(readFileSync(join(library, made)).equals(whole), `${made}, cut before ${cut.before}`).toBe(true);
  }
  const engine = await engineIn(folder);
  try {
    expectSoundDatabase(library);
    expect((await engine.call('journal.check', {})).brokenAt).toBeNull();
    const cases = await engine.call('cases.list', {});
    const photos = cases.length === 0 ? [] : await engine.call('photos.list', { caseId: work.caseId });
    for (const { sha256 } of photos) {
      const original = join(library, 'originals', sha256.slice(0, 2), sha256);
      expect(existsSync(original) ? sha256Of(original) : 'gone', cut.before).toBe(sha256);
    }
    for (const name of originalsOf(library)) {
      expect(sha256Of(join(library, 'originals', name.slice(0, 2), name)), cut.before).toBe(name);
    }
    expect((await sweepOf(engine)).missing).toEqual([]);
    expect(readdirSync(join(library, 'incoming'))).toEqual([]);
    return { photos: photos.length, strays: originalsOf(library).length - photos.length };
  } finally {
    await engine.close();
  }
}

async function dropAgain(folder: string, caseId: CaseId, pictures: readonly string[]): Promise<void> {
  const engine = await engineIn(folder);
  try {
    expect((await engine.importAll(caseId, pictures)).items.map(({ error }) => error)).toEqual([null, null]);
    expect(await expectWholeLibrary(engine, caseId)).toHaveLength(2);
  } finally {
    await engine.close();
  }
}

describe('after a power cut at any step of an import and a report', () => {
  test.each(['lost', 'kept'] as const)(
    'with the names that were not synced %s, everything is whole or absent, and comes in when dropped again',
    async (unsyncedNames) => {
      const work = await workRecorded(unsyncedNames);
      const seen = new Map<string, { photos: number; strays: number }>();
      for (const cut of work.cuts) {
        const folder = temporaryFolder();
        const found = await expectNothingHalf(work, cut, folder);
        if ((cut.committed.teardown_case ?? []).length === 0) continue;
        if (found.photos < 2 && !seen.has(JSON.stringify(found)))
          await dropAgain(folder, work.caseId, work.pictures);
        seen.set(JSON.stringify(found), found);
      }
      // The cuts were where they tell: before the first photo, after the last, and between an original and its row.
      const all = [...seen.values()];
      expect(Math.min(...all.map(({ photos }) => photos))).toBe(0);
      expect(Math.max(...all.map(({ photos }) => photos))).toBe(2);
      if (unsyncedNames === 'kept') expect(all.some(({ strays }) => strays > 0)).toBe(true);
    },
  );
});
