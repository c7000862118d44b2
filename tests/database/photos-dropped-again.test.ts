/** Real pictures through the import: dropped twice, dropped again after being taken out, and two drops at once. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { describe, expect, test } from 'vitest';

import { engineForTest } from '../support/engine-for-test.ts';
import { markedJpeg, noisyJpeg } from '../support/pictures/marked-picture.ts';
import type { EngineHere } from '../support/world-engine.ts';
import { makeWorld } from '../support/world.ts';

const plan = makeWorld(51, { cases: 1, findings: [0, 0], photos: [0, 0], marks: [0, 0] });

async function caseWithFiles(files: Readonly<Record<string, Buffer>>) {
  const engine = await engineForTest();
  await engine.ask('analysts.add', plan.analyst);
  const { caseId } = await engine.ask('cases.open', plan.cases[0]!.draft);
  for (const [name, content] of Object.entries(files)) writeFileSync(join(engine.folder, name), content);
  const drop = async (...names: string[]) => {
    const tokens = [];
    for (const name of names) tokens.push(await engine.takeIn(join(engine.folder, name)));
    return engine.ask('photos.import', { caseId, tokens });
  };
  return { engine, caseId, drop };
}

const whatOf = async (engine: EngineHere) =>
  (await engine.ask('journal.list', { caseId: null, most: 1_000 })).map(({ what }) => what);

describe('a picture that had been taken out of the case', () => {
  test('is put back when it is dropped again, under whatever name, and the job says so', async () => {
    const { engine, caseId, drop } = await caseWithFiles({
      'nut.jpg': await markedJpeg(),
      'same-nut.jpg': await markedJpeg(),
    });
    const first = await engine.ended(await drop('nut.jpg'));
    expect(first.items).toMatchObject([{ outcome: 'added', putBack: false }]);
    const [photo] = await engine.ask('photos.list', { caseId });
    const described = await engine.ask('photos.change', {
      photoId: photo!.id,
      revision: 1,
      fields: { caption: 'the nut' },
    });

    const again = await engine.ended(await drop('same-nut.jpg'));
    expect(again.items).toMatchObject([{ outcome: 'already-here', photoId: photo!.id, putBack: false }]);

    await engine.ask('photos.take-out', {
      caseId,
      photos: [{ photoId: photo!.id, revision: 2 }],
      reason: 'not this nut',
    });
    const linesBefore = (await whatOf(engine)).length;
    const since = engine.events.length;
    const back = await engine.ended(await drop('same-nut.jpg'));
    expect(back.items).toMatchObject([
      { sourceName: 'same-nut.jpg', outcome: 'added', photoId: photo!.id, putBack: true, error: null },
    ]);
    expect(await engine.ask('photos.list', { caseId })).toEqual([{ ...described, revision: 4 }]);
    const [entry] = await engine.ask('photos.register', { caseId });
    expect(entry).toMatchObject({ takenOut: null, absences: [{ reason: 'not this nut' }] });
    const [line] = await engine.ask('journal.list', { caseId, most: 1 });
    expect(line).toMatchObject({
      what: 'photo put back',
      details: { photo: photo!.id },
    });
    expect((await whatOf(engine)).length).toBe(linesBefore + 1);
    expect(
      engine.events
        .slice(since)
        .filter(({ name }) => name === 'case-changed')
        .map(({ payload }) => payload),
    ).toEqual([{ caseId, what: 'photos' }]);
  });

  test('comes into another case as a photo of that case, and stays out of this one', async () => {
    const { engine, caseId, drop } = await caseWithFiles({ 'nut.jpg': await markedJpeg() });
    await engine.ended(await drop('nut.jpg'));
    const [photo] = await engine.ask('photos.list', { caseId });
    await engine.ask('photos.take-out', {
      caseId,
      photos: [{ photoId: photo!.id, revision: 1 }],
      reason: 'belongs to the other unit',
    });
    const other = await engine.ask('cases.open', { ...plan.cases[0]!.draft, number: 'the other' });
    const token = await engine.takeIn(join(engine.folder, 'nut.jpg'));
    const job = await engine.ask('photos.import', { caseId: other.caseId, tokens: [token] });
    expect((await engine.ended(job)).items).toMatchObject([{ outcome: 'added', putBack: false }]);
    expect(await engine.ask('photos.list', { caseId })).toEqual([]);
  });
});

describe('two drops, the second while the first is coming in', () => {
  test('stand one after the other in the case', async () => {
    const names = ['a1.jpg', 'a2.jpg', 'a3.jpg', 'b1.jpg', 'b2.jpg'];
    const files = await Promise.all(names.map(async (name, seed) => [name, await noisyJpeg(seed)] as const));
    const { engine, caseId, drop } = await caseWithFiles(Object.fromEntries(files));
    const first = await drop('a1.jpg', 'a2.jpg', 'a3.jpg');
    const second = await drop('b1.jpg', 'b2.jpg');
    await engine.ended(first);
    await engine.ended(second);
    const photos = await engine.ask('photos.list', { caseId });
    expect(photos.map(({ sourceName }) => sourceName)).toEqual(names);
  });
});
