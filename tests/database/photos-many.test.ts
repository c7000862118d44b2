/** The same said of many photos, their order, and what is no longer shown: each whole or not at all. */
import { describe, expect, test } from 'vitest';

import type { Channel, RequestOf } from '#shared-types/api-contract.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import type { Photo } from '#shared-types/photo.ts';

import { engineOverWorld } from '../support/engine-for-test.ts';
import { libraryContent } from '../support/library-content.ts';
import { testId } from '../support/open-test-library.ts';
import type { EngineHere } from '../support/world-engine.ts';
import { turbochargerPack, type WorldCase } from '../support/world.ts';

const size = { cases: 2, findings: [2, 2], photos: [5, 5], marks: [6, 6] } as const;
const pack = turbochargerPack();
const shaft = { component: 'shaft', position: null };
const thrust = { component: 'thrust-bearing', position: null };

type Scene = { engine: EngineHere; here: WorldCase; elsewhere: WorldCase; photos: Photo[] };

async function scene(): Promise<Scene> {
  const { engine, world } = await engineOverWorld(31, size);
  const [here, elsewhere] = world.cases;
  if (!here || !elsewhere) throw new Error('the world has two cases');
  return { engine, here, elsewhere, photos: await engine.ask('photos.list', { caseId: here.id }) };
}

const atRevision = (photos: readonly Photo[]) =>
  photos.map(({ id, revision }) => ({ photoId: id, revision }));
const idsOf = (photos: readonly Photo[]) => photos.map(({ id }) => id);
const newestLines = (engine: EngineHere, most: number) => engine.ask('journal.list', { caseId: null, most });
const whatChanged = (engine: EngineHere, since: number) =>
  engine.events.slice(since).flatMap((event) => (event.name === 'case-changed' ? [event.payload.what] : []));

describe('many photos at once', () => {
  test('take stage, side, added and removed parts; the rest of each stays as it was', async () => {
    const { engine, here, photos } = await scene();
    const [one, other, third] = photos;
    await engine.ask('photos.change', {
      photoId: one!.id,
      revision: one!.revision,
      fields: { parts: [thrust, shaft], caption: 'as it lay' },
    });
    const asked = [{ photoId: one!.id, revision: one!.revision + 1 }, ...atRevision([other!, third!])];
    const [before] = await newestLines(engine, 1);
    const now = await engine.ask('photos.assign', {
      caseId: here.id,
      photos: asked,
      fields: { stage: 'cleaned', seenFrom: pack.sides[0]!.id },
      addParts: [shaft],
      removeParts: [thrust],
    });
    expect(now.map(({ id, stage, seenFrom }) => [id, stage, seenFrom])).toEqual(
      idsOf([one!, other!, third!]).map((id) => [id, 'cleaned', pack.sides[0]!.id]),
    );
    expect(now[0]).toMatchObject({ parts: [shaft], caption: 'as it lay' });
    for (const [at, was] of [other!, third!].entries()) {
      const kept = was.parts.filter(({ component }) => component !== 'thrust-bearing');
      expect(now[at + 1]).toMatchObject({ caption: was.caption, revision: was.revision + 1 });
      expect(now[at + 1]?.parts.filter((part) => part.component !== 'shaft')).toEqual(
        kept.filter((part) => part.component !== 'shaft'),
      );
      expect(now[at + 1]?.parts).toContainEqual(shaft);
    }
    const [line] = await newestLines(engine, 1);
    expect(line).toMatchObject({
      number: before!.number + 1,
      what: 'photos described',
      details: { photos: idsOf([one!, other!, third!]), fields: ['seenFrom', 'stage'] },
    });
  });

  test('what is left out stays; null takes it off', async () => {
    const { engine, here, photos } = await scene();
    const nothing = { caseId: here.id, addParts: [], removeParts: [] };
    const same = await engine.ask('photos.assign', {
      ...nothing,
      photos: atRevision(photos),
      fields: {},
    });
    expect(same).toEqual(photos.map((photo) => ({ ...photo, revision: photo.revision + 1 })));
    const bare = await engine.ask('photos.assign', {
      ...nothing,
      photos: atRevision(same),
      fields: { stage: null },
    });
    expect(bare.map(({ stage }) => stage)).toEqual(photos.map(() => null));
    expect(bare.map(({ seenFrom }) => seenFrom)).toEqual(photos.map(({ seenFrom }) => seenFrom));
  });
});

describe('a request about many photos', () => {
  type Refused<C extends Channel = Channel> = readonly [
    name: string,
    code: string,
    channel: C,
    request: (scene: Scene, foreign: PhotoId) => RequestOf<C>,
  ];
  const assign = ({ here, photos }: Scene, more: Partial<RequestOf<'photos.assign'>>) => ({
    caseId: here.id,
    photos: atRevision(photos),
    fields: { stage: 'cleaned' as const },
    addParts: [],
    removeParts: [],
    ...more,
  });
  const refused: readonly Refused[] = [
    [
      'that says something stale of one of them',
      'stale-revision',
      'photos.assign',
      (at) =>
        assign(at, {
          photos: [...atRevision(at.photos.slice(0, 4)), { photoId: at.photos[4]!.id, revision: 9 }],
        }),
    ],
    [
      'that names one of another case',
      'not-found',
      'photos.assign',
      (at, foreign) => assign(at, { photos: [...atRevision(at.photos), { photoId: foreign, revision: 2 }] }),
    ],
    [
      'that names a part the machine kind does not have',
      'term-unknown',
      'photos.assign',
      (at) => assign(at, { addParts: [{ component: 'propeller', position: null }] }),
    ],
    [
      'that names a side the machine kind does not have',
      'term-unknown',
      'photos.assign',
      (at) => assign(at, { fields: { seenFrom: 'from-below-deck' } }),
    ],
    [
      'for an order with one of another case',
      'not-found',
      'photos.reorder',
      ({ here, photos }, foreign) => ({ caseId: here.id, photoIds: [photos[0]!.id, foreign], before: null }),
    ],
    [
      'for an order before one of another case',
      'not-found',
      'photos.reorder',
      ({ here, photos }, foreign) => ({ caseId: here.id, photoIds: [photos[0]!.id], before: foreign }),
    ],
    [
      'for an order of one that never was',
      'not-found',
      'photos.reorder',
      ({ here }) => ({ caseId: here.id, photoIds: [testId<PhotoId>(5)], before: null }),
    ],
    [
      'to take out one of another case',
      'not-found',
      'photos.take-out',
      ({ here, photos }, foreign) => ({
        caseId: here.id,
        photos: [...atRevision(photos), { photoId: foreign, revision: 2 }],
        reason: 'wrong unit',
      }),
    ],
    [
      'to take out what was changed meanwhile',
      'stale-revision',
      'photos.take-out',
      ({ here, photos }) => ({
        caseId: here.id,
        photos: [...atRevision(photos.slice(1)), { photoId: photos[0]!.id, revision: 1 }],
        reason: 'wrong unit',
      }),
    ],
    [
      'without a reason to take them out',
      'request-invalid',
      'photos.take-out',
      ({ here, photos }) => ({ caseId: here.id, photos: atRevision(photos), reason: '  ' }),
    ],
    [
      'to put back what is there',
      'stale-revision',
      'photos.put-back',
      ({ photos }) => ({ photoId: photos[0]!.id, revision: photos[0]!.revision }),
    ],
  ];

  test.each(refused)('%s is refused whole: %s', async (_name, code, channel, request) => {
    const at = await scene();
    const foreign = at.elsewhere.photos[0]!.id;
    const before = libraryContent(at.engine.db);
    expect(await at.engine.refusalOf(channel, request(at, foreign))).toMatchObject({ code });
    expect(libraryContent(at.engine.db)).toEqual(before);
  });

  test('that would give one more than 20 parts is refused whole, and says of which', async () => {
    const { engine, here, photos } = await scene();
    const all = pack.components.flatMap((component) =>
      [null, ...component.positions].map((position) => ({ component: component.id, position })),
    );
    expect(all.length).toBeGreaterThan(20);
    const [first] = await engine.ask('photos.assign', {
      caseId: here.id,
      photos: atRevision(photos.slice(0, 1)),
      fields: {},
      addParts: all.slice(0, 20),
      removeParts: photos[0]!.parts,
    });
    expect(first?.parts.length).toBe(20);
    const before = libraryContent(engine.db);
    const refusal = await engine.refusalOf('photos.assign', {
      caseId: here.id,
      photos: [...atRevision(photos.slice(1)), ...atRevision([first!])],
      fields: { stage: 'cleaned' },
      addParts: [all[20]!],
      removeParts: [],
    });
    expect(refusal).toMatchObject({ code: 'parts-too-many', details: { name: first!.sourceName } });
    expect(libraryContent(engine.db)).toEqual(before);
  });

  test('is refused in a case that is no longer open', async () => {
    const { engine, here, photos } = await scene();
    const [out, ...rest] = photos;
    await engine.ask('photos.take-out', { caseId: here.id, photos: atRevision([out!]), reason: 'blurred' });
    const { revision } = await engine.ask('cases.read', { caseId: here.id });
    await engine.ask('cases.withdraw', { caseId: here.id, revision, reason: 'settled' });
    const before = libraryContent(engine.db);
    const caseId = here.id;
    const asked = atRevision(rest);
    const codes = [
      await engine.refusalOf('photos.assign', {
        caseId,
        photos: asked,
        fields: { stage: null },
        addParts: [],
        removeParts: [],
      }),
      await engine.refusalOf('photos.reorder', { caseId, photoIds: idsOf(rest), before: null }),
      await engine.refusalOf('photos.take-out', { caseId, photos: asked, reason: 'blurred' }),
      await engine.refusalOf('photos.put-back', { photoId: out!.id, revision: out!.revision + 1 }),
    ].map(({ code }) => code);
    expect(codes).toEqual(['case-closed', 'case-closed', 'case-closed', 'case-closed']);
    expect(libraryContent(engine.db)).toEqual(before);
  });
});

describe('a photo taken out of the case', () => {
  test('is gone from list, bench and full text, keeps its line with reason, hand and hour, and comes back', async () => {
    const { engine, here, photos } = await scene();
    const caseId = here.id;
    const { id: photoId, revision } = photos.find(({ id }) =>
      here.marks.some((mark) => mark.photoId === id),
    )!;
    const marked = await engine.ask('photos.change', {
      photoId,
      revision,
      fields: { caption: 'quernstone' },
    });
    const marksBefore = (await engine.ask('bench.read', { caseId })).marks;
    const found = engine.db
      .prepare(`SELECT count(*) FROM search_text WHERE search_text MATCH 'quernstone'`)
      .pluck();
    expect(found.get()).toBe(1);
    const lines = (await newestLines(engine, 1))[0]!.number;

    let since = engine.events.length;
    await engine.ask('photos.take-out', { caseId, photos: atRevision([marked]), reason: ' another unit ' });
    expect(whatChanged(engine, since)).toEqual(['photos', 'bench']);
    expect(idsOf(await engine.ask('photos.list', { caseId }))).toEqual(
      idsOf(photos).filter((id) => id !== marked.id),
    );
    const bench = await engine.ask('bench.read', { caseId });
    expect(bench.marks).toEqual(marksBefore.filter(({ photoId }) => photoId !== marked.id));
    expect(found.get()).toBe(0);

    const register = await engine.ask('photos.register', { caseId });
    expect(register.map(({ photo }) => photo.id)).toEqual(idsOf(photos));
    const line = register.find(({ photo }) => photo.id === marked.id)!;
    const [journal] = await newestLines(engine, 1);
    expect(line.takenOut).toEqual({ at: journal!.at, by: 'M. Sundgren', reason: 'another unit' });
    expect(line.photo).toEqual({ ...marked, revision: marked.revision + 1 });
    expect(journal).toMatchObject({
      number: lines + 1,
      what: 'photos taken out',
      details: { photos: [marked.id] },
    });

    since = engine.events.length;
    const back = await engine.ask('photos.put-back', { photoId: marked.id, revision: line.photo.revision });
    expect(back).toEqual({ ...marked, revision: marked.revision + 2 });
    expect(whatChanged(engine, since)).toEqual(['photos', 'bench']);
    expect(idsOf(await engine.ask('photos.list', { caseId }))).toEqual(idsOf(photos));
    expect((await engine.ask('bench.read', { caseId })).marks).toEqual(marksBefore);
    expect(found.get()).toBe(1);
    const [last] = await newestLines(engine, 1);
    expect(last).toMatchObject({
      number: lines + 2,
      what: 'photo put back',
      details: { photo: marked.id },
    });
    const again = await engine.ask('photos.register', { caseId });
    const { takenOut, absences } = again.find(({ photo }) => photo.id === marked.id)!;
    expect(takenOut).toBeNull();
    expect(absences).toEqual([{ ...line.takenOut, backAt: last!.at, backBy: 'M. Sundgren' }]);
    for (const sql of ['DELETE FROM photo_absence', "UPDATE photo_absence SET reason = 'none'"]) {
      expect(() => engine.db.prepare(sql).run()).toThrow('stays on record');
    }
  });

  test('without marks is no news for the bench', async () => {
    const { engine, here, photos } = await scene();
    const bare = photos.find(({ id }) => !here.marks.some(({ photoId }) => photoId === id))!;
    const since = engine.events.length;
    await engine.ask('photos.take-out', { caseId: here.id, photos: atRevision([bare]), reason: 'blurred' });
    expect(whatChanged(engine, since)).toEqual(['photos']);
  });

  test('is neither described, moved, assigned, marked nor taken out again', async () => {
    const { engine, here, photos } = await scene();
    const caseId = here.id;
    const mark = here.marks[0]!;
    const out = photos.find(({ id }) => id === mark.photoId)!;
    const other = photos.find(({ id }) => id !== out.id)!;
    await engine.ask('photos.take-out', { caseId, photos: atRevision([out]), reason: 'blurred' });
    const photo = { photoId: out.id, revision: out.revision + 1 };
    const put = (change: Partial<typeof mark>, revision: number | null) => ({
      caseId,
      changes: [{ change: 'put-mark' as const, mark: { ...mark, findingId: null, ...change }, revision }],
    });
    const before = libraryContent(engine.db);
    const refusals = [
      await engine.refusalOf('photos.change', { ...photo, fields: { caption: 'blurred' } }),
      await engine.refusalOf('photos.assign', {
        caseId,
        photos: [photo],
        fields: {},
        addParts: [shaft],
        removeParts: [],
      }),
      await engine.refusalOf('photos.reorder', { caseId, photoIds: [out.id], before: null }),
      await engine.refusalOf('photos.reorder', { caseId, photoIds: [other.id], before: out.id }),
      await engine.refusalOf('photos.take-out', { caseId, photos: [photo], reason: 'blurred' }),
      await engine.refusalOf('bench.commit', put({ id: testId(70) }, null)),
      await engine.refusalOf('bench.commit', put({ order: 3 }, 1)),
      await engine.refusalOf('bench.commit', put({ photoId: other.id }, 1)),
      await engine.refusalOf('bench.commit', {
        caseId,
        changes: [{ change: 'remove-mark', markId: mark.id, revision: 1 }],
      }),
    ];
    expect(refusals.map(({ code }) => code)).toEqual(refusals.map(() => 'photo-taken-out'));
    expect(refusals[0]!.message).toContain(out.sourceName);
    expect(libraryContent(engine.db)).toEqual(before);
  });

  test('does not hold a finding: it can be removed, and its marks there come back without one', async () => {
    const { engine, here, photos } = await scene();
    const caseId = here.id;
    const { marks, findings } = await engine.ask('bench.read', { caseId });
    const held = findings.find(({ id }) => marks.some(({ findingId }) => findingId === id))!;
    const ofIt = marks.filter(({ findingId }) => findingId === held.id);
    const remove = {
      caseId,
      changes: [{ change: 'remove-finding' as const, findingId: held.id, revision: held.revision }],
    };
    expect((await engine.refusalOf('bench.commit', remove)).code).toBe('finding-in-use');
    const under = photos.filter(({ id }) => ofIt.some(({ photoId }) => photoId === id));
    await engine.ask('photos.take-out', { caseId, photos: atRevision(under), reason: 'another unit' });
    // In sight or not, it stays what it is until it is removed.
    expect((await engine.ask('bench.read', { caseId })).findings).toEqual(findings);
    await engine.ask('bench.commit', remove);
    for (const { id, revision } of under) {
      await engine.ask('photos.put-back', { photoId: id, revision: revision + 1 });
    }
    const after = await engine.ask('bench.read', { caseId });
    expect(after.findings).toEqual(findings.filter(({ id }) => id !== held.id));
    expect(after.marks).toEqual(
      marks.map((mark) =>
        mark.findingId === held.id ? { ...mark, findingId: null, revision: mark.revision + 1 } : mark,
      ),
    );
  });
});
