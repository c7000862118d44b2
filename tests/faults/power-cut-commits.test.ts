/**
 * The power is cut while the database commits: of its log, what was synced is there, and of a commit that was on its
 * way any part of it. No write is told as done before it is safe, and none is there by half.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

import type { Db } from '../../electron/database/open-library.ts';
import { checkJournal } from '../../electron/database/repositories/journal.ts';
import { libraryContent, type LibraryContent } from '../support/library-content.ts';
import { openTestLibrary } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { engineIn } from './engine-here.ts';
import { exampleWrites, fillExampleCase } from './example-case.ts';
import { smallPictures } from './small-pictures.ts';
import { layOut } from './synced-copies.ts';
import { expectSoundDatabase, tablesUnlike } from './whole-library.ts';
import { commitsIn, syncedLog } from './write-ahead-log.ts';

const database = ['library.sqlite', 'library.sqlite-wal'] as const;

type Recorded = {
  /** The database's file before the writes, and after all of them went into it from the log. */
  readonly main: Buffer;
  readonly mainAfterwards: Buffer;
  readonly log: Buffer;
  /** How much of the log was synced when each write was answered, and what the library said then. */
  readonly answered: readonly { readonly logged: number; readonly content: LibraryContent }[];
};

/** One write of each kind after another; answers the log, and what the library said when each was answered. */
async function writesRecorded(): Promise<Recorded> {
  const folder = temporaryFolder();
  const [picture = ''] = await smallPictures(folder, 1);
  const library = join(folder, 'own');
  const logNow = () => readFileSync(join(library, database[1]));
  await (await engineIn(folder)).close();
  const main = readFileSync(join(library, database[0]));
  const held: Db[] = [];
  const engine = await engineIn(folder, { onConnection: (opened) => held.push(opened) });
  const [db] = held;
  if (!db) throw new Error('the engine opened no database');
  const answered: Recorded['answered'][number][] = [];
  const note = () => {
    const synced = syncedLog(logNow(), Number(db.pragma('synchronous', { simple: true })));
    answered.push({ logged: synced.length, content: libraryContent(db) });
  };
  let log: Buffer;
  try {
    const example = await fillExampleCase(engine, picture);
    note();
    for (const { channel, request } of Object.values(exampleWrites)) {
      const asked = request(example, 'grit in every pad');
      expect(await engine.answer(channel, asked)).toMatchObject({ ok: true });
      note();
    }
    log = logNow();
  } finally {
    await engine.close();
  }
  return { main, mainAfterwards: readFileSync(join(library, database[0])), log, answered };
}

function libraryWith(main: Buffer, log: Buffer) {
  const folder = temporaryFolder();
  layOut(new Map(database.map((name, index) => [name, index === 0 ? main : log])), folder);
  const db = openTestLibrary(folder);
  expect(checkJournal(db).brokenAt).toBeNull();
  expectSoundDatabase(folder);
  return libraryContent(db);
}

test('all that was answered is there, of a commit half on the disk nothing, and of one half in the database all', async () => {
  const { main, mainAfterwards, log, answered } = await writesRecorded();
  const commits = commitsIn(log);
  expect(commits.length).toBeGreaterThan(answered.length);
  for (const { logged, content } of answered) {
    expect(tablesUnlike(content, libraryWith(main, log.subarray(0, logged)))).toEqual([]);
  }
  for (const { from, to, frameBytes } of commits) {
    const before = libraryWith(main, log.subarray(0, from));
    const cutShort = log.subarray(0, to - Math.floor(frameBytes / 2));
    expect(tablesUnlike(before, libraryWith(main, cutShort))).toEqual([]);
    // A disk writes in any order: the end of the commit is there, and its beginning is not.
    const headless = Buffer.from(log.subarray(0, to)).fill(0, from, from + frameBytes - 8);
    expect(tablesUnlike(before, libraryWith(main, headless))).toEqual([]);
  }

  // The log goes into the database when the program ends: of that, too, any part may have been written.
  const pageBytes = main.readUInt16BE(16);
  const last = answered.at(-1)?.content ?? {};
  for (const pages of [1, 8, Math.floor(main.length / pageBytes / 2), main.length / pageBytes]) {
    const partly = Buffer.concat([
      mainAfterwards.subarray(0, pages * pageBytes),
      main.subarray(pages * pageBytes),
    ]);
    expect(tablesUnlike(last, libraryWith(partly, log))).toEqual([]);
  }
});
