/** Cases by what was written in them: words, phrases, in which order, and whatever is typed. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import type { FindingId } from '#shared-types/ids.ts';
import { hitsAPage } from '#shared-types/search.ts';

import { engineForTest, engineOverWorld } from '../support/engine-for-test.ts';
import { exampleFinding } from '../support/exchanges.ts';
import { testId } from '../support/open-test-library.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import { startEngineHere, type EngineHere } from '../support/world-engine.ts';
import { draft, enterThreeCases, found } from './three-cases.ts';

/** For a test that writes more; the others share one engine, whose library they leave as it is. */
const threeCases = async () => enterThreeCases(await engineForTest());

let folder: string;
let engine: EngineHere;
beforeAll(async () => {
  folder = makeTemporaryFolder();
  engine = await enterThreeCases(await startEngineHere(folder));
});
afterAll(async () => {
  await engine.close();
  removeFolder(folder);
});

describe('words', () => {
  test.each([
    ['a word of the claim', 'whistle', ['26-0148']],
    ['whatever its case', 'WHISTLE', ['26-0148']],
    ['the beginning of a word', 'whis', ['26-0148']],
    ['not the end of one', 'histle', []],
    ['the singular also begins the plural', 'nut', ['26-0147', '25-0471']],
    ['two words, both', 'nut loose', ['26-0147']],
    ['two words, one of them nowhere', 'nut whistle', []],
    ['words of different places in one case: customer and finding', 'müllerstrand thrust', ['26-0147']],
    ['a finding by the word for its kind, not by its id', 'worn away', ['26-0147']],
    ['a finding’s own note', 'grooves', ['26-0147']],
    ['with umlauts or without', 'mullerstrand', ['26-0147']],
    ['umlauts written as letter and mark, as some file names have them', 'mu\u0308llerstrand', ['26-0147']],
    ['letters of other languages', 'żegluga', ['25-0471']],
    ['joined by a hyphen, in this order', 'r45-1180', ['26-0148', '26-0147']],
    ['quotes and brackets round a word are nothing', '“white” (blue)', ['26-0147']],
  ])('%s', async (_name, text, numbers) => {
    expect(new Set(await found(engine, text))).toEqual(new Set(numbers));
  });

  test('of a caption, as soon as it is written and no longer when it is not', async () => {
    const { engine, world } = await engineOverWorld(41, {
      cases: 1,
      findings: [0, 0],
      photos: [1, 1],
      marks: [0, 0],
    });
    const photo = world.cases[0]!.photos[0]!;
    const number = world.cases[0]!.draft.number;
    const describePhoto = (revision: number, caption: string) =>
      engine.ask('photos.change', { photoId: photo.id, revision, fields: { caption } });
    expect(await found(engine, 'zirconium')).toEqual([]);
    await describePhoto(2, 'grey as zirconium');
    expect(await found(engine, 'zirconium')).toEqual([number]);
    expect(await found(engine, photo.name)).toEqual([number]);
    await describePhoto(3, 'grey');
    expect(await found(engine, 'zirconium')).toEqual([]);
  });

  test('are shown with what stands round them, the match flagged', async () => {
    const { hits } = await engine.ask('search.cases', { text: 'smoke', tags: [] });
    const [first] = hits[0]!.excerpts;
    expect(first?.where).toBe('case');
    expect(first?.excerpt.filter(({ matched }) => matched).map(({ text }) => text)).toEqual(['smoke']);
    expect(first?.excerpt.map(({ text }) => text).join('')).toContain('Oil smoke from the funnel');
  });

  test('in a finding say whether what they tell of is there', async () => {
    const { engine: apart } = await engineOverWorld(43, {
      cases: 1,
      findings: [0, 0],
      photos: [0, 0],
      marks: [0, 0],
    });
    const fields = { ...exampleFinding, presence: 'looked-for-absent' as const, note: 'no zirconium' };
    const findingId = testId<FindingId>(99);
    const [summary] = await apart.ask('cases.list', {});
    const caseId = summary!.id;
    await apart.ask('bench.commit', {
      caseId,
      changes: [{ change: 'put-finding', findingId, fields, revision: null }],
    });
    const { hits } = await apart.ask('search.cases', { text: 'zirconium', tags: [] });
    expect(hits[0]?.excerpts).toMatchObject([{ where: 'finding', presence: 'looked-for-absent' }]);
  });

  test('and tags: both must hold', async () => {
    const tag = { component: 'thrust-bearing', zone: null, kind: null, class: null, presence: null };
    const search = async (text: string) =>
      (await engine.ask('search.cases', { text, tags: [tag] })).hits.map((hit) => hit.case.number);
    expect(await search('nut')).toEqual(['26-0147']);
    expect(await search('whistle')).toEqual([]);
  });
});

describe('phrases', () => {
  test.each([
    ['words in this order', '"came loose"', ['26-0147']],
    ['not in another', '"loose came"', []],
    ['whole words', '"nut cam"', []],
    ['not from one field into the next', '"kühlhaus the nut"', []],
    ['beside words', '“came loose” funnel', ['26-0147']],
    ['in a finding', '"thrust bearing"', ['26-0147']],
  ])('%s', async (_name, text, numbers) => {
    expect(new Set(await found(engine, text))).toEqual(new Set(numbers));
  });
});

describe('rank', () => {
  test('words that stand whole before those that begin with them, the claim before a caption', async () => {
    const { engine, world } = await engineOverWorld(44, {
      cases: 3,
      findings: [0, 0],
      photos: [1, 1],
      marks: [0, 0],
    });
    const [first, second, third] = world.cases;
    const conclude = (of: typeof first, conclusion: string) =>
      engine.ask('cases.change', { caseId: of!.id, revision: 2, fields: { conclusion } });
    await engine.ask('photos.change', {
      photoId: third!.photos[0]!.id,
      revision: 2,
      fields: { caption: 'zirconia' },
    });
    await conclude(second, 'zirconiated');
    await conclude(first, 'zirconia');
    expect(await found(engine, 'zirconia')).toEqual([
      first!.draft.number,
      second!.draft.number,
      third!.draft.number,
    ]);
  });
});

describe('a search over many cases', () => {
  /** More than any list of matches that a search might be tempted to cut off. */
  const size = { cases: 130, findings: [6, 6], photos: [0, 0], marks: [0, 0] } as const;

  test('counts every case, answers them page by page, and lets tags choose among all of them', async () => {
    const { engine, world } = await engineOverWorld(42, size);
    const claims = (word: string) => world.cases.filter(({ draft: { claim } }) => claim.includes(word));
    const numbers: string[] = [];
    for (let page = 0; page < 7; page += 1) {
      const { hits, total } = await engine.ask('search.cases', {
        text: '24',
        tags: [],
        from: numbers.length,
      });
      expect(total).toBe(130);
      expect(hits).toHaveLength(page < 6 ? hitsAPage : 10);
      numbers.push(...hits.map((hit) => hit.case.number));
    }
    expect(new Set(numbers)).toEqual(new Set(world.cases.map(({ draft }) => draft.number)));
    const beyond = await engine.ask('search.cases', { text: '24', tags: [], from: 130 });
    expect(beyond).toMatchObject({ hits: [], total: 130 });
    const whistle = await engine.ask('search.cases', { text: 'whistle', tags: [] });
    expect(whistle.total).toBe(claims('whistle').length);
    const [rare] = (await engine.ask('search.known-tags', {})).slice(-1);
    const tag = { component: rare!.component, kind: rare!.kind, zone: null, class: null, presence: null };
    const chosen = await engine.ask('search.cases', { text: '24', tags: [tag] });
    expect(chosen.total).toBe(rare!.cases);
  });
});

describe('whatever is typed', () => {
  const unkind = [
    '"',
    '""',
    '*',
    'nut*',
    '^nut',
    'NEAR(nut loose)',
    'NEAR',
    'AND',
    'nut OR',
    'NOT nut',
    'title:nut',
    '{title body}: nut',
    '+ - nut',
    '(((((',
    "'; DROP TABLE finding; --",
    '%_%',
    '\u0000',
    'nut\u0000loose',
    'abc\u0000def',
    '🔧🔩',
    'nut 🔩',
    '👩‍🔧 family\u200d',
    'ﬁtting İstanbul ẞ',
    '日本語の文',
    'हिन्दी ไทย',
    '\u0301\u0308',
    '\ud800',
    '\u{F0001}\u{F0002}',
    '\u{10FFFF}',
    '\u{1E030}\u{31350}',
    'a'.repeat(400),
    'ä '.repeat(200),
    Array.from({ length: 200 }, (_, index) => String.fromCodePoint(0x4e00 + index)).join(' '),
    '"'.repeat(400),
    'a-'.repeat(200),
  ];

  test('is looked for, and nothing is thrown', async () => {
    for (const text of unkind) {
      const answer = await engine.ask('search.cases', { text, tags: [] });
      expect(answer.total, JSON.stringify(text)).toBeGreaterThanOrEqual(answer.hits.length);
    }
    expect(await found(engine, 'NOT nut')).toEqual([]);
    expect(await found(engine, 'nut*')).toHaveLength(2);
    expect(await found(engine, 'nut 🔩')).toHaveLength(2);
    expect(await found(engine, 'nut\u0000loose')).toEqual(['26-0147']);
  });

  test('is looked for, and nothing is thrown: any text at all', async () => {
    const piece = fc.oneof(
      fc.constantFrom(
        '"',
        '*',
        'NEAR',
        'AND ',
        'OR ',
        'NOT ',
        '^',
        ':',
        '(',
        ')',
        '-',
        '+',
        '{',
        '}',
        'nut',
        ' ',
      ),
      fc.string({ unit: 'binary', maxLength: 8 }),
      fc.string({ unit: 'grapheme', maxLength: 8 }),
    );
    const text = fc.array(piece, { maxLength: 40 }).map((pieces) => pieces.join('').slice(0, 400));
    await fc.assert(
      fc.asyncProperty(text, async (typed) => {
        const answer = await engine.ask('search.cases', { text: typed, tags: [] });
        expect(answer.hits.length).toBeLessThanOrEqual(3);
      }),
      { numRuns: 250, seed: 20260308 },
    );
  });

  test('written into a case is found again by each of its words', async () => {
    const engine = await threeCases();
    // Latin to Latin Extended-B, Greek and Cyrillic: letters and digits that every version of Unicode knows.
    const letter = fc
      .oneof(
        fc.integer({ min: 0x30, max: 0x24f }),
        fc.integer({ min: 0x386, max: 0x3ff }),
        fc.integer({ min: 0x400, max: 0x4ff }),
      )
      .map((code) => String.fromCodePoint(code))
      .filter((character) => /^[\p{L}\p{Nd}]$/u.test(character));
    const word = fc.string({ unit: letter, minLength: 1, maxLength: 12 });
    let serial = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(word, { minLength: 1, maxLength: 4 }), async (words) => {
        const number = `T-${String((serial += 1))}`;
        await engine.ask('cases.open', { ...draft, number, claim: words.join(' ') });
        for (const one of words) expect(await found(engine, one)).toContain(number);
      }),
      { numRuns: 40, seed: 20260309 },
    );
  });
});
