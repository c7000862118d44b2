/** Cases by what they are called: numbers, models, serial and part numbers, whole, in pieces, and with one slip. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { engineForTest } from '../support/engine-for-test.ts';
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

describe('identifiers', () => {
  test.each([
    ['the middle of a serial number', '3077', ['26-0148', '26-0147']],
    ['the end of a case number', '0471', ['25-0471']],
    ['part of a part number', '45-11', ['26-0148', '26-0147']],
    ['whatever its case', 'sn-30', ['26-0148', '26-0147']],
    ['a serial number with spaces in it', 'QÜ 4410', ['25-0471']],
    ['a piece of one with a space in it', 'ü 44', ['25-0471']],
    ['an umlaut in one, written as letter and mark', 'qu\u0308 4', ['25-0471']],
    ['two characters are too few for the middle', '77', []],
    ['without its hyphen', 'sn30771', ['26-0148', '26-0147']],
    ['without its spaces', 'qü4410b', ['25-0471']],
    ['with hyphens that it has not', '260-148', ['26-0148']],
    ['of two characters, where they are all of it', 'k9', ['25-0471']],
    ['of one, where it stands alone', 'b', ['25-0471']],
    ['without its accents', 'qu 4410 b', ['25-0471']],
    ['beside a word of the claim', '3077 smoke', ['26-0147']],
  ])('%s', async (_name, text, numbers) => {
    expect(new Set(await found(engine, text))).toEqual(new Set(numbers));
  });

  test('stand before words', async () => {
    const engine = await threeCases();
    await engine.ask('cases.open', { ...draft, number: '26-0500', claim: '30771 30771 30771' });
    const changed = { ...draft, number: '26-0501', unit: { ...draft.unit, serial: 'none' } };
    await engine.ask('cases.open', { ...changed, claim: '30771 is not the number of this one' });
    expect((await found(engine, '30771')).at(-1)).toBe('26-0501');
  });
});

describe('an identifier with one slip', () => {
  test.each([
    ['a wrong character', 'SM-30771', ['26-0148', '26-0147']],
    ['a missing one', 'SN-3071', ['26-0148', '26-0147']],
    ['a doubled one', 'SSN-30771', ['26-0148', '26-0147']],
    ['two swapped', 'SN-03771', ['26-0148', '26-0147']],
    ['in a piece of it', '30717', ['26-0148', '26-0147']],
    ['with spaces in it', 'qü 4401 b', ['25-0471']],
    ['beside a word', 'smoke 30717', ['26-0147']],
    ['two slips are too many', 'SM-30717', []],
  ])('%s', async (_name, text, numbers) => {
    expect(new Set(await found(engine, text))).toEqual(new Set(numbers));
  });

  test('is found below the one that was typed, says so, and is not there at all for numbers given in a row', async () => {
    const engine = await threeCases();
    const unit = { ...draft.unit, serial: 'SN-30772' };
    await engine.ask('cases.open', { ...draft, number: '26-0149', unit });
    const { hits } = await engine.ask('search.cases', { text: 'SN-30772', tags: [] });
    expect(hits.map((hit) => hit.case.number)).toEqual(['26-0149', '26-0148', '26-0147']);
    expect(hits.map((hit) => hit.excerpts[0])).toMatchObject([
      { where: 'serial', near: false, excerpt: [{ text: 'SN-30772', matched: true }] },
      { where: 'serial', near: true, excerpt: [{ text: 'SN-30771', matched: false }] },
      { where: 'serial', near: true, excerpt: [{ text: 'SN-30771', matched: false }] },
    ]);
    expect(await found(engine, '26-0149')).toEqual(['26-0149']);
  });

  test('is offered where all of the text together finds nothing, beside what was understood', async () => {
    const answer = await engine.ask('search.cases', { text: 'whistle zirconia "came loose"', tags: [] });
    expect(answer).toMatchObject({
      total: 0,
      words: [
        { written: 'whistle', phrase: false, cases: 1, near: [] },
        { written: 'zirconia', phrase: false, cases: 0, near: [] },
        { written: 'came loose', phrase: true, cases: 1, near: [] },
      ],
    });
    const near = await engine.ask('search.cases', { text: 'whistle QÜ4401B', tags: [] });
    expect(near.words[1]).toEqual({
      written: 'QÜ4401B',
      phrase: false,
      cases: 1,
      near: [{ kind: 'serial', written: 'QÜ 4410 B', cases: 1 }],
    });
  });
});
