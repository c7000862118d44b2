/** A folder of the library refuses writing while the program runs, until somebody puts its permissions right. */
import { chmodSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';

import type { Envelope, ErrorShape } from '#shared-types/errors.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

import { exchanges, jobEnded, valueOf } from '../support/exchanges.ts';
import { enterLoopbackHost } from '../support/loopback-client.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { engineIn } from './engine-here.ts';
import { startHost } from './host-process.ts';
import { smallPictures } from './small-pictures.ts';
import { expectSoundDatabase, expectWholeLibrary, originalsOf, sha256Of } from './whole-library.ts';

/** Root is refused nothing: the program is run as "nobody" (65534) then, and as this user otherwise. */
const user = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};

/** The program over the loopback host, with a case that has one photo. */
async function programOfNobody(pictureCount: number) {
  const folder = temporaryFolder();
  chmodSync(folder, 0o755);
  const pictures = await smallPictures(folder, pictureCount);
  const library = join(folder, 'own');
  mkdirSync(library);
  chmodSync(library, 0o777);
  const host = startHost(library, { user });
  const client = await enterLoopbackHost(await host.address);
  await client.call('analysts.add', exchanges['analysts.add']({} as never));
  const opened = await client.call('cases.open', exchanges['cases.open']({} as never));
  const { caseId } = valueOf(opened) as { caseId: CaseId };
  const ended = async (begun: Promise<Envelope<unknown>>) =>
    jobEnded(client, (valueOf(await begun) as Job).id);
  const bringIn = async (picture: string) => {
    const { token } = valueOf(await client.takeIn(picture));
    const [item] = (await ended(client.call('photos.import', { caseId, tokens: [token] }))).items;
    return item;
  };
  expect(await bringIn(pictures[0] ?? '')).toMatchObject({ outcome: 'added' });

  return {
    library,
    pictures,
    bringIn,
    report: () => ended(client.call('reports.make', { caseId, paper: 'A4' })),
    /** Takes the permission to write in the folder from everyone. Answers how to give it back. */
    refuse(name: string) {
      const refusing = join(library, name);
      if (!existsSync(refusing)) mkdirSync(refusing);
      chmodSync(refusing, 0o555);
      const giveBack = () => {
        chmodSync(refusing, 0o777);
      };
      onTestFinished(giveBack);
      return giveBack;
    },
    async expectWholeAfterwards(photos: number) {
      host.child.kill('SIGTERM');
      expect(await host.gone).toMatchObject({ code: 0, errors: '' });
      const engine = await engineIn(folder);
      onTestFinished(engine.close);
      expect(await expectWholeLibrary(engine, caseId)).toHaveLength(photos);
    },
  };
}

const refusal = (what: string): Partial<ErrorShape> => ({
  code: 'disk-refused',
  details: { what, reason: 'permission denied' },
  retryable: false,
});

test('the folder of the plates: the report fails by the picture’s name, and is made when the folder is right', async () => {
  const { library, pictures, report, refuse, expectWholeAfterwards } = await programOfNobody(1);
  const giveBack = refuse('plates');
  const what = basename(pictures[0] ?? '');
  expect(await report()).toMatchObject({ state: 'failed', document: null, error: refusal(what) });
  expect(readdirSync(join(library, 'plates'))).toEqual([]);
  expect(readdirSync(join(library, 'incoming'))).toEqual([]);
  expect(readdirSync(join(library, 'deliveries'))).toEqual([]);
  expectSoundDatabase(library);
  giveBack();
  expect(await report()).toMatchObject({ state: 'done', error: null });
  expect(readdirSync(join(library, 'plates'))).toHaveLength(1);
  await expectWholeAfterwards(1);
});

test('the folders of the photo store: each photo fails by its name, and comes in when the folder is right', async () => {
  const folders = ['incoming', 'derived', 'originals'];
  const { library, pictures, bringIn, refuse, expectWholeAfterwards } = await programOfNobody(4);
  for (const [index, name] of folders.entries()) {
    const picture = pictures[index + 1] ?? '';
    const there = originalsOf(library);
    const giveBack = refuse(name);
    expect(await bringIn(picture), name).toMatchObject({
      outcome: 'failed',
      photoId: null,
      error: refusal(basename(picture)),
    });
    expect(originalsOf(library), name).toEqual(there);
    expect(readdirSync(join(library, 'incoming')), name).toEqual([]);
    expectSoundDatabase(library);
    giveBack();
    expect(await bringIn(picture), name).toMatchObject({ outcome: 'added', error: null });
    expect(originalsOf(library), name).toContain(sha256Of(picture));
  }
  await expectWholeAfterwards(folders.length + 1);
});
