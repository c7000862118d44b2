/** Whatever is moved, taken out and put back: every photo keeps one place of its own, and only what was moved moves. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { PhotoId } from '#shared-types/ids.ts';

import { engineOverWorld } from '../support/engine-for-test.ts';
import { onePropertyLibrary } from '../support/property-library.ts';
import type { EngineHere } from '../support/world-engine.ts';

const count = 7;
const size = { cases: 1, findings: [0, 0], photos: [count, count], marks: [0, 0] } as const;

type Places = { readonly ids: readonly PhotoId[]; readonly places: readonly number[] };

/** All photos of the library in the order of their places, those taken out too. */
function placesOf({ db }: EngineHere): Places {
  const rows = db
    .prepare<[], { uuid: PhotoId; place: number }>('SELECT uuid, place FROM photo ORDER BY place, id')
    .all();
  return { ids: rows.map(({ uuid }) => uuid), places: rows.map(({ place }) => place) };
}

const step = fc.oneof(
  fc.record({
    do: fc.constant('move' as const),
    which: fc.uniqueArray(fc.nat({ max: count - 1 }), { minLength: 1, maxLength: count }),
    before: fc.option(fc.nat({ max: count - 1 })),
  }),
  fc.record({
    do: fc.constantFrom('take out' as const, 'put back' as const),
    photo: fc.nat({ max: count - 1 }),
  }),
);

describe('the order of a case’s photos', () => {
  test('stays an order of all of them, whatever is done', async () => {
    const seen = new Set<string>();
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 6, maxLength: 16, size: 'max' }), async (steps) => {
        await using library = await onePropertyLibrary(41, size);
        const { engine, world } = library;
        const caseId = world.cases[0]!.id;
        const first = placesOf(engine);
        const all = first.ids;
        const out = new Set<PhotoId>();
        for (const one of steps) {
          const before = placesOf(engine);
          if (one.do === 'move') {
            const moved = one.which.map((at) => all[at]!).filter((id) => !out.has(id));
            const target = one.before === null ? null : all[one.before]!;
            if (moved.length === 0 || (target !== null && out.has(target))) continue;
            await engine.ask('photos.reorder', { caseId, photoIds: moved, before: target });
            const { ids } = placesOf(engine);
            const at = ids.indexOf(moved[0]!);
            expect(ids.slice(at, at + moved.length)).toEqual(moved);
            const still = (id: PhotoId) => !moved.includes(id);
            expect(ids.filter(still)).toEqual(before.ids.filter(still));
            if (target === null) expect(ids.at(-1)).toBe(moved.at(-1));
            else if (still(target)) expect(ids[at + moved.length]).toBe(target);
            else seen.add('before one that moves');
            if (out.size > 0) seen.add('moved among those taken out');
          } else {
            const id = all[one.photo]!;
            if (out.has(id) === (one.do === 'take out')) continue;
            const register = await engine.ask('photos.register', { caseId });
            const { revision } = register.find(({ photo }) => photo.id === id)!.photo;
            if (one.do === 'put back') {
              await engine.ask('photos.put-back', { photoId: id, revision });
              out.delete(id);
            } else {
              await engine.ask('photos.take-out', {
                caseId,
                photos: [{ photoId: id, revision }],
                reason: 'x',
              });
              out.add(id);
            }
            seen.add(one.do);
            expect(placesOf(engine)).toEqual(before);
          }
          const now = placesOf(engine);
          expect(now.places).toEqual(first.places);
          expect([...now.ids].sort()).toEqual([...all].sort());
          const shown = (await engine.ask('photos.list', { caseId })).map(({ id }) => id);
          expect(shown).toEqual(now.ids.filter((id) => !out.has(id)));
        }
        const register = await engine.ask('photos.register', { caseId });
        expect(register.map(({ photo }) => photo.id)).toEqual(all);
      }),
      { numRuns: 12, seed: 20261125 },
    );
    // A property that never got this far would have shown nothing.
    expect([...seen].sort()).toEqual([
      'before one that moves',
      'moved among those taken out',
      'put back',
      'take out',
    ]);
  });

  test('is told in one line, and moves nothing in another case', async () => {
    const { engine, world } = await engineOverWorld(42, { ...size, cases: 2 });
    const [here, elsewhere] = world.cases;
    const there = await engine.ask('photos.list', { caseId: elsewhere!.id });
    const [before] = await engine.ask('journal.list', { caseId: null, most: 1 });
    const photoIds = [here!.photos[5]!.id, here!.photos[2]!.id];
    const target = here!.photos[0]!.id;
    await engine.ask('photos.reorder', { caseId: here!.id, photoIds, before: target });
    const [line] = await engine.ask('journal.list', { caseId: null, most: 1 });
    expect(line).toMatchObject({
      number: before!.number + 1,
      caseId: here!.id,
      what: 'photos put in order',
      details: { photos: photoIds, before: target },
    });
    const [one, two, three] = await engine.ask('photos.list', { caseId: here!.id });
    expect([one!.id, two!.id, three!.id]).toEqual([...photoIds, target]);
    expect(await engine.ask('photos.list', { caseId: elsewhere!.id })).toEqual(there);
  });

  test('gives what comes in next its place after all there are, those taken out too', async () => {
    const { engine, world } = await engineOverWorld(43, size);
    const [here] = world.cases;
    const photos = await engine.ask('photos.list', { caseId: here!.id });
    const last = photos.at(-1)!;
    await engine.ask('photos.take-out', {
      caseId: here!.id,
      photos: [{ photoId: last.id, revision: last.revision }],
      reason: 'blurred',
    });
    await engine.ask('photos.reorder', { caseId: here!.id, photoIds: [photos[0]!.id], before: null });
    // Moved to the end: after the one taken out, which comes back before it.
    await engine.ask('photos.put-back', { photoId: last.id, revision: last.revision + 1 });
    const now = await engine.ask('photos.list', { caseId: here!.id });
    expect(now.slice(-2).map(({ id }) => id)).toEqual([last.id, photos[0]!.id]);
  });
});
