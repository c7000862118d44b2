/**
 * What is searched is what is there: after every kind of write, after random work, and in libraries that were made
 * before the search was as it is.
 */
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { CaseId, CustodyEntryId, MarkId, PartyId } from '#shared-types/ids.ts';
import { imagePointSchema } from '#shared-types/points.ts';
import { filterNames } from '#shared-types/search.ts';

import { openLibrary, type Db } from '../../electron/database/open-library.ts';
import { programFolder } from '../../electron/processes/entry-table.ts';
import { engineForTest, engineOverWorld } from '../support/engine-for-test.ts';
import { migrationsFolder, testId, testInstant } from '../support/open-test-library.ts';
import { onePropertyLibrary } from '../support/property-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import type { EngineHere } from '../support/world-engine.ts';
import { carryOut, works, type Memory, type Step } from '../support/world-work.ts';
import { pourWorld } from '../support/world-through-repositories.ts';
import { makeWorld, turbochargerPack } from '../support/world.ts';

const said = `SELECT page, subject_row, title, body FROM (
  SELECT * FROM case_words UNION ALL SELECT * FROM photo_words UNION ALL SELECT * FROM finding_words
  UNION ALL SELECT * FROM party_words UNION ALL SELECT * FROM custody_words)
  WHERE title <> '' OR body <> '' ORDER BY page, subject_row`;

function expectWholeIndex(db: Db): void {
  // 1 as rank: compared with the content too. https://sqlite.org/fts5.html#the_integrity_check_command
  expect(() =>
    db.prepare("INSERT INTO search_text (search_text, rank) VALUES ('integrity-check', 1)").run(),
  ).not.toThrow();
  const documents = db
    .prepare('SELECT page, subject_row, title, body FROM search_document ORDER BY page, subject_row')
    .all();
  expect(documents.length).toBeGreaterThan(0);
  expect(documents).toEqual(db.prepare(said).all());
}

async function numbersOf(engine: EngineHere, text: string): Promise<string[]> {
  const { hits } = await engine.ask('search.cases', { text, tags: [] });
  return hits.map((hit) => hit.case.number);
}

async function onlyExcerpt(engine: EngineHere, text: string) {
  const { hits } = await engine.ask('search.cases', { text, tags: [] });
  expect(hits).toHaveLength(1);
  return hits[0]!.excerpts;
}

const oneCase = { cases: 2, findings: [1, 2], photos: [2, 2], marks: [0, 0] } as const;

describe('words are found as soon as they are written, and no longer when they are not', () => {
  test('of the state received', async () => {
    const { engine, world } = await engineOverWorld(51, oneCase);
    const { id: caseId } = world.cases[0]!;
    const change = (revision: number, stateReceived: string) =>
      engine.ask('cases.change', { caseId, revision, fields: { stateReceived } });
    await change(2, 'crate of zirconwood, lid open');
    expect(await onlyExcerpt(engine, 'zirconwood')).toMatchObject([{ where: 'case' }]);
    await change(3, 'crate, lid open');
    expect(await numbersOf(engine, 'zirconwood')).toEqual([]);
    expectWholeIndex(engine.db);
  });

  test('of a party’s name and details, until it is removed', async () => {
    const { engine, world } = await engineOverWorld(52, oneCase);
    const { id: caseId, draft } = world.cases[1]!;
    const partyId = testId<PartyId>(1);
    const put = (revision: number | null, name: string, details: string) =>
      engine.ask('parties.put', {
        caseId,
        partyId,
        revision,
        fields: { name, roles: ['insures'], details },
      });
    await put(null, 'Zirkonia Mutual', 'their reference 771/Q');
    expect(await numbersOf(engine, 'zirkonia reference 771')).toEqual([draft.number]);
    expect(await onlyExcerpt(engine, 'zirkonia')).toMatchObject([{ where: 'party' }]);
    await put(1, 'Another Mutual', '');
    expect(await numbersOf(engine, 'zirkonia')).toEqual([]);
    expect(await numbersOf(engine, '"another mutual"')).toEqual([draft.number]);
    await engine.ask('parties.remove', { partyId, revision: 2 });
    expect(await numbersOf(engine, '"another mutual"')).toEqual([]);
    expectWholeIndex(engine.db);
  });

  test('of an item in custody, until its entry is struck', async () => {
    const { engine, world } = await engineOverWorld(53, oneCase);
    const { id: caseId, draft } = world.cases[0]!;
    const entryId = testId<CustodyEntryId>(1);
    await engine.ask('custody.add', {
      caseId,
      entryId,
      fields: {
        item: 'zircon sample bag',
        event: 'received',
        from: 'the carrier',
        to: 'M. Sundgren',
        at: { local: '2026-03-04T00:00:00', offsetMinutes: null, precision: 'day' },
        why: 'for the laboratory',
      },
    });
    expect(await numbersOf(engine, 'zircon laboratory')).toEqual([draft.number]);
    expect((await onlyExcerpt(engine, 'zircon'))[0]?.where).toBe('custody');
    await engine.ask('custody.strike', { entryId, revision: 1, reason: 'wrong bag' });
    expect(await numbersOf(engine, 'zircon')).toEqual([]);
    expectWholeIndex(engine.db);
  });

  test('of a text mark, on its photo; of a photo that was taken out, until it is put back', async () => {
    const { engine, world } = await engineOverWorld(54, oneCase);
    const { id: caseId, photos, draft } = world.cases[0]!;
    const markId = testId<MarkId>(1);
    const at = imagePointSchema.parse({ x: 4, y: 5 });
    const putMark = (revision: number | null, words: string) =>
      engine.ask('bench.commit', {
        caseId,
        changes: [
          {
            change: 'put-mark',
            revision,
            mark: {
              id: markId,
              photoId: photos[0]!.id,
              findingId: null,
              geometry: { kind: 'text', v: 1, at, words },
              order: 0,
            },
          },
        ],
      });
    await putMark(null, 'zirconia here');
    expect(await onlyExcerpt(engine, 'zirconia')).toMatchObject([
      { where: 'photo', photoId: photos[0]!.id, presence: null },
    ]);
    await putMark(1, 'alumina here');
    expect(await numbersOf(engine, 'zirconia')).toEqual([]);
    expect(await numbersOf(engine, 'alumina')).toEqual([draft.number]);

    const revisionOf = async () =>
      (await engine.ask('photos.register', { caseId })).find(({ photo }) => photo.id === photos[0]!.id)!.photo
        .revision;
    await engine.ask('photos.take-out', {
      caseId,
      photos: [{ photoId: photos[0]!.id, revision: await revisionOf() }],
      reason: 'shows another unit',
    });
    expect(await numbersOf(engine, 'alumina')).toEqual([]);
    expect(await numbersOf(engine, photos[0]!.name)).toEqual([]);
    await engine.ask('photos.put-back', { photoId: photos[0]!.id, revision: await revisionOf() });
    expect(await numbersOf(engine, 'alumina')).toEqual([draft.number]);
    expect(await numbersOf(engine, photos[0]!.name)).toEqual([draft.number]);
    await engine.ask('bench.commit', { caseId, changes: [{ change: 'remove-mark', markId, revision: 2 }] });
    expect(await numbersOf(engine, 'alumina')).toEqual([]);
    expectWholeIndex(engine.db);
  });

  test('of many captions of one case, page by page: not the words of one photo with those of the next', async () => {
    const { engine, world } = await engineOverWorld(55, {
      cases: 2,
      findings: [40, 40],
      photos: [150, 150],
      marks: [0, 0],
    });
    const [one, other] = world.cases;
    const caption = (id: (typeof one & object)['photos'][number]['id'], words: string) =>
      engine.ask('photos.change', { photoId: id, revision: 2, fields: { caption: words } });
    await caption(one!.photos[3]!.id, 'contour zirconia');
    await caption(one!.photos[4]!.id, 'rub seen');
    await caption(other!.photos[149]!.id, 'zirconia rub');
    expect(new Set(await numbersOf(engine, 'zirconia rub'))).toEqual(
      new Set([one!.draft.number, other!.draft.number]),
    );
    expect(await numbersOf(engine, '"zirconia rub"')).toEqual([other!.draft.number]);
    expectWholeIndex(engine.db);
  });
});

const step: fc.Arbitrary<Step> = fc.record({
  work: fc.constantFrom(...works),
  seed: fc.nat({ max: 0xffffffff }),
});

test('after random work the columns that filters and tags are answered from say what the cases say', async () => {
  const pack = turbochargerPack();
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 10, maxLength: 24, size: 'max' }), async (work) => {
      await using library = await onePropertyLibrary(24, {
        cases: 2,
        findings: [1, 3],
        photos: [0, 2],
        marks: [0, 3],
      });
      const { engine } = library;
      // They are read now, and have to follow from here on.
      await engine.ask('search.known-tags', {});
      const memory: Memory = { removed: [] };
      for (const one of work) {
        await carryOut(engine, pack, memory, one);
        if (one.seed % 3 === 0) await engine.ask('search.known-tags', {});
      }
      const asker = testId(3);
      const counts = await engine.ask('search.counts', { text: '', tags: [], asker });
      const shelf = await engine.ask('cases.list', {});
      const findings = await Promise.all(
        shelf.map(async ({ id }) => (await engine.ask('bench.read', { caseId: id })).findings),
      );
      const cases = shelf.map((one, place) => ({ one, findings: findings[place]! }));
      const count = (values: (each: (typeof cases)[number]) => readonly string[]) => {
        const sums = new Map<string, number>();
        for (const each of cases) {
          for (const value of new Set(values(each))) sums.set(value, (sums.get(value) ?? 0) + 1);
        }
        sums.delete('');
        return sums;
      };
      const expected = {
        component: count((each) => each.findings.map(({ component }) => component)),
        kind: count((each) => each.findings.map(({ kind }) => kind)),
        // What is not there has no class.
        class: count((each) =>
          each.findings.flatMap((finding) => (finding.presence === 'present' ? [finding.class] : [])),
        ),
        presence: count((each) => each.findings.map(({ presence }) => presence)),
        model: count(({ one }) => [one.unit.model]),
        customer: count(({ one }) => [one.customer]),
        outcome: count(({ one }) => [one.outcome]),
      };
      for (const name of filterNames) {
        if (name === 'period') continue;
        const told = counts![name].values.map(({ value, cases: sum }) => [value, sum] as const);
        expect(new Map(told), name).toEqual(expected[name]);
      }
      for (const { one } of cases) {
        if (one.unit.serial !== '') expect(await numbersOf(engine, one.unit.serial)).toContain(one.number);
      }
    }),
    { numRuns: 8, seed: 20260406 },
  );
});

describe('a library from before', () => {
  /** The migrations up to this number. */
  function earlierMigrations(upTo: number): string {
    const folder = join(temporaryFolder(), 'migrations');
    mkdirSync(folder);
    for (const name of readdirSync(migrationsFolder)) {
      if (Number(name.slice(0, 4)) <= upTo) cpSync(join(migrationsFolder, name), join(folder, name));
    }
    return folder;
  }

  test('with a world in it is found in as if it had been made today', async () => {
    const world = makeWorld(56, { cases: 9, findings: [0, 40], photos: [0, 70], marks: [0, 30] });
    const now = () => testInstant;
    const [before, today] = [temporaryFolder(), temporaryFolder()];
    const old = openLibrary({ folder: before, migrationsFolder: earlierMigrations(2), now }).db;
    // Today's writer fills a column that came later still.
    old.exec('ALTER TABLE blob ADD COLUMN declared_synthetic TEXT');
    pourWorld(old, world);
    old.exec('ALTER TABLE blob DROP COLUMN declared_synthetic');
    old.close();
    const fresh = openLibrary({ folder: today, migrationsFolder, now }).db;
    pourWorld(fresh, world);
    const documents = (db: Db) =>
      db.prepare('SELECT page, subject_row, title, body FROM search_document ORDER BY 1, 2').all();
    const expected = documents(fresh);
    fresh.close();

    const engine = await engineForTest(before);
    expect(documents(engine.db)).toEqual(expected);
    expectWholeIndex(engine.db);
    const [first] = world.cases;
    expect(await numbersOf(engine, first!.draft.unit.serial)).toContain(first!.draft.number);
    const { id: caseId } = first!;
    await engine.ask('cases.change', { caseId, revision: 2, fields: { conclusion: 'zirconia in the oil' } });
    expect(await numbersOf(engine, 'zirconia')).toEqual([first!.draft.number]);
    expectWholeIndex(engine.db);
  });

  test('frozen when the structure was the first: every word of its cases finds them', async () => {
    const folder = join(temporaryFolder(), 'library');
    const frozen = join(programFolder, 'tests', 'fixtures', 'library-0001');
    cpSync(join(frozen, 'originals'), join(folder, 'originals'), { recursive: true });
    writeFileSync(
      join(folder, 'library.sqlite'),
      gunzipSync(readFileSync(join(frozen, 'library.sqlite.gz'))),
    );
    const engine = await engineForTest(folder);
    expectWholeIndex(engine.db);
    const cases = await engine.ask('cases.list', {});
    expect(cases.length).toBeGreaterThan(2);
    for (const { number, claim, customer, unit } of cases) {
      const words = `${claim} ${customer}`.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');
      expect(words.length).toBeGreaterThan(0);
      for (const word of words) expect(await numbersOf(engine, word)).toContain(number);
      expect(await numbersOf(engine, unit.serial.replaceAll(/[- ]/g, '').toLowerCase())).toContain(number);
    }
    const caption = cases.find(({ number }) => number === '26-0147')!;
    const { hits } = await engine.ask('search.cases', { text: '"front pads after cleaning"', tags: [] });
    expect(hits.map((hit) => hit.case.id)).toEqual([caption.id satisfies CaseId]);
  });
});
