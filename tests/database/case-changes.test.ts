/** Cases and photos: what is refused and by which words, what a withdrawn case still allows, who did what. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

import type { CaseDraft } from '#shared-types/case.ts';
import type { CaseId, FindingId, IntakeToken } from '#shared-types/ids.ts';
import { knowledgePackSchema } from '#shared-types/knowledge-pack.ts';
import type { PhotoFields } from '#shared-types/photo.ts';

import { openLibrary } from '../../electron/database/open-library.ts';
import { addCase } from '../../electron/database/repositories/cases.ts';
import { keepPack } from '../../electron/database/repositories/packs.ts';
import { shippedPath } from '../../electron/processes/entry-table.ts';
import { engineForTest, engineOverWorld } from '../support/engine-for-test.ts';
import { exampleFinding } from '../support/exchanges.ts';
import { libraryContent } from '../support/library-content.ts';
import { migrationsFolder, testId, testInstant } from '../support/open-test-library.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const size = { cases: 1, findings: [1, 1], photos: [1, 1], marks: [1, 1] } as const;
const draft: CaseDraft = {
  number: '26-a147',
  unit: { maker: 'Halvard', model: 'R45', serial: 'SN-30771', partNumber: '' },
  customer: 'Skerry Line',
  claim: 'The nut came loose.',
  machineKind: 'turbocharger',
};

async function oneCase() {
  const { engine, world } = await engineOverWorld(51, size);
  const here = world.cases[0]!;
  return { engine, here, photo: here.photos[0]!, finding: here.findings[0]!, caseId: here.id };
}

describe('a case', () => {
  test('is opened by somebody who is named, and not by nobody', async () => {
    const engine = await engineForTest();
    const before = libraryContent(engine.db);
    expect(await engine.refusalOf('cases.open', draft)).toMatchObject({ code: 'analyst-needed' });
    expect(libraryContent(engine.db)).toEqual(before);
  });

  test('has a number of its own in the library, small or capital letters', async () => {
    const { engine, caseId } = await oneCase();
    const { caseId: opened } = await engine.ask('cases.open', draft);
    const taken = await engine.refusalOf('cases.open', { ...draft, number: '26-A147' });
    expect(taken).toMatchObject({ code: 'case-number-taken', details: { number: '26-A147' } });
    const change = (id: CaseId, revision: number) =>
      ({ caseId: id, revision, fields: { number: '26-A147' } }) as const;
    expect((await engine.refusalOf('cases.change', change(caseId, 2))).code).toBe('case-number-taken');
    expect(await engine.ask('cases.change', change(opened, 1))).toMatchObject({
      number: '26-A147',
      revision: 2,
    });
  });

  test('of a machine kind that is not installed is not opened', async () => {
    const { engine } = await oneCase();
    const refusal = await engine.refusalOf('cases.open', { ...draft, machineKind: 'steam-engine' });
    expect(refusal).toMatchObject({ code: 'machine-kind-unknown', details: { id: 'steam-engine' } });
  });

  test('keeps its claim word for word: blanks, line ends and all', async () => {
    const { engine } = await oneCase();
    const claim = '  “The nut”\r\n\tcame loose — 3×, at ½ load.\n\n👩‍🔧 \u0000 \u202Eend  ';
    const { caseId } = await engine.ask('cases.open', { ...draft, claim });
    expect((await engine.ask('cases.read', { caseId })).claim).toBe(claim);
  });

  test('is changed in the fields that are named, and in no other', async () => {
    const { engine, caseId } = await oneCase();
    const before = await engine.ask('cases.read', { caseId });
    const fields = { conclusion: 'starved of oil', outcome: 'claim-not-supported' } as const;
    const after = await engine.ask('cases.change', { caseId, revision: before.revision, fields });
    expect(after).toEqual({
      ...before,
      ...fields,
      revision: before.revision + 1,
      counts: { ...before.counts, journalEntries: before.counts.journalEntries + 1 },
    });
  });

  test('opened with a machine kind keeps it to the byte, though another of the same version is installed', async () => {
    const folder = temporaryFolder();
    const { db } = openLibrary({ folder, migrationsFolder, now: () => testInstant });
    const shipped = readFileSync(shippedPath('analysis', 'knowledge', 'packs', 'turbocharger.json'), 'utf8');
    const pack = knowledgePackSchema.parse(JSON.parse(shipped));
    pack.components.push({ ...pack.components[0]!, id: 'flux-valve', label: 'flux valve' });
    const content = JSON.stringify(pack);
    const sha256 = createHash('sha256').update(content).digest('hex');
    const packRow = keepPack(db, { pack, content, sha256 });
    const caseId = testId(1);
    addCase(db, { id: caseId, draft, packRow, at: testInstant, by: 'M. Sundgren' });
    db.close();

    const engine = await engineForTest(folder);
    await engine.ask('analysts.add', { name: 'M. Sundgren', qualification: '' });
    const { zone: _zone, ...rest } = exampleFinding;
    const change = (number: number) => ({
      change: 'put-finding' as const,
      findingId: testId<FindingId>(number),
      revision: null,
      fields: { ...rest, component: 'flux-valve', zone: null, kind: pack.components[0]!.zones[0]!.kinds[0]! },
    });
    const { findings } = await engine.ask('bench.commit', { caseId, changes: [change(1)] });
    expect(findings[0]?.component).toBe('flux-valve');
    const { caseId: newer } = await engine.ask('cases.open', { ...draft, number: '26-0002' });
    const refusal = await engine.refusalOf('bench.commit', { caseId: newer, changes: [change(2)] });
    expect(refusal).toMatchObject({ code: 'term-unknown', details: { id: 'flux-valve' } });
  });
});

describe('a withdrawn case', () => {
  test('takes no change of any kind, each refused by its number', async () => {
    const { engine, caseId, photo, finding } = await oneCase();
    await engine.ask('cases.withdraw', { caseId, revision: 2, reason: 'opened twice' });
    const before = libraryContent(engine.db);
    const token = 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a77' as IntakeToken;
    const refusals = [
      await engine.refusalOf('cases.change', { caseId, revision: 3, fields: { customer: 'other' } }),
      await engine.refusalOf('cases.withdraw', { caseId, revision: 3, reason: 'again' }),
      await engine.refusalOf('photos.change', { photoId: photo.id, revision: 2, fields: { caption: 'x' } }),
      await engine.refusalOf('photos.import', { caseId, tokens: [token] }),
      await engine.refusalOf('findings.classify', {
        findingId: finding.id,
        revision: 1,
        class: finding.fields.class === 'primary' ? 'secondary' : 'primary',
        reason: 'late insight',
      }),
      await engine.refusalOf('bench.commit', {
        caseId,
        changes: [{ change: 'remove-finding', findingId: finding.id, revision: 1 }],
      }),
    ];
    for (const refusal of refusals) {
      expect(refusal).toMatchObject({ code: 'case-closed', details: { status: 'withdrawn' } });
      expect(refusal.message).toContain('24-0000');
    }
    expect(libraryContent(engine.db)).toEqual(before);
  });

  test('is still read, listed and found, and says in the library why it was withdrawn', async () => {
    const { engine, caseId, here } = await oneCase();
    await engine.ask('cases.withdraw', { caseId, revision: 2, reason: 'opened twice' });
    expect(await engine.ask('cases.read', { caseId })).toMatchObject({ status: 'withdrawn', revision: 3 });
    expect(await engine.ask('photos.list', { caseId })).toHaveLength(1);
    expect((await engine.ask('cases.list', {}))[0]).toMatchObject({ id: caseId, status: 'withdrawn' });
    const { hits } = await engine.ask('search.cases', { text: here.draft.unit.serial, tags: [] });
    expect(hits.map((hit) => hit.case.id)).toEqual([caseId]);
    const reason = engine.db.prepare('SELECT status_reason FROM teardown_case').pluck().get();
    expect(reason).toBe('opened twice');
  });

  test('is not withdrawn without a reason', async () => {
    const { engine, caseId } = await oneCase();
    expect((await engine.refusalOf('cases.withdraw', { caseId, revision: 2, reason: ' \n' })).code).toBe(
      'request-invalid',
    );
  });
});

describe('a photo', () => {
  test('is described field by field; its parts stay in the order given', async () => {
    const { engine, photo, caseId } = await oneCase();
    const change = (revision: number, fields: Partial<PhotoFields>) =>
      engine.ask('photos.change', { photoId: photo.id, revision, fields });
    const parts = [
      { component: 'turbine-wheel', position: null },
      { component: 'journal-bearing', position: 'turbine-side' },
      { component: 'journal-bearing', position: 'compressor-side' },
    ];
    await change(2, { caption: 'front pads, cleaned', stage: 'cleaned', parts });
    const [asRead] = await engine.ask('photos.list', { caseId });
    expect(asRead).toMatchObject({ caption: 'front pads, cleaned', stage: 'cleaned', parts, revision: 3 });
    expect(await change(3, { stage: null })).toEqual({ ...asRead, stage: null, revision: 4 });
    expect(await change(4, { parts: parts.slice(1, 2) })).toMatchObject({ parts: parts.slice(1, 2) });
    expect(await change(5, { parts: [] })).toMatchObject({ parts: [], caption: 'front pads, cleaned' });
  });

  test.each([
    [{ seenFrom: 'underneath' }, 'no side “underneath”'],
    [{ parts: [{ component: 'flux-valve', position: null }] }, 'no part “flux-valve”'],
    [{ parts: [{ component: 'journal-bearing', position: 'upstairs' }] }, 'no position “upstairs”'],
    [{ parts: [{ component: 'turbine-wheel', position: 'turbine-side' }] }, 'no position “turbine-side”'],
  ])('is not described by what the machine kind does not know: %j', async (fields, words) => {
    const { engine, photo } = await oneCase();
    const before = libraryContent(engine.db);
    const refusal = await engine.refusalOf('photos.change', { photoId: photo.id, revision: 2, fields });
    expect(refusal.code).toBe('term-unknown');
    expect(refusal.message).toContain(words);
    expect(libraryContent(engine.db)).toEqual(before);
  });
});

describe('the journal says', () => {
  test('of a case everything from its opening on', async () => {
    const { engine } = await oneCase();
    const { caseId } = await engine.ask('cases.open', draft);
    await engine.ask('cases.change', { caseId, revision: 1, fields: { customer: 'Northmole Ferries' } });
    const lines = await engine.ask('journal.list', { caseId, most: 10 });
    expect(lines.map(({ what }) => what)).toEqual(['case changed', 'case opened']);
    expect(lines[1]?.details).toEqual({ number: '26-a147', machineKind: 'turbocharger' });
    expect((await engine.ask('cases.read', { caseId })).counts.journalEntries).toBe(2);
  });

  test('who it was: the analyst at the workstation then', async () => {
    const { engine, caseId } = await oneCase();
    const second = await engine.ask('analysts.add', { name: 'J. Okafor-Brandt', qualification: '' });
    await engine.ask('cases.change', { caseId, revision: 2, fields: { customer: 'Skerry Line' } });
    const { revision } = await engine.ask('settings.read', {});
    await engine.ask('settings.change', { revision, fields: { currentAnalystId: second.id } });
    await engine.ask('cases.change', { caseId, revision: 3, fields: { customer: 'Ashgill Quarry' } });
    const lines = await engine.ask('journal.list', { caseId: null, most: 4 });
    expect(lines.map(({ what, who }) => [what, who])).toEqual([
      ['case changed', 'J. Okafor-Brandt'],
      ['analyst took over', 'J. Okafor-Brandt'],
      ['case changed', 'M. Sundgren'],
      ['analyst entered', 'M. Sundgren'],
    ]);
  });

  test('nothing of what a case says in its own words', async () => {
    const { engine, caseId, photo, finding } = await oneCase();
    const secret = 'the customer’s own words';
    await engine.ask('cases.change', { caseId, revision: 2, fields: { claim: secret, conclusion: secret } });
    await engine.ask('photos.change', { photoId: photo.id, revision: 2, fields: { caption: secret } });
    await engine.ask('bench.commit', {
      caseId,
      changes: [
        {
          change: 'put-finding',
          findingId: finding.id,
          fields: { ...finding.fields, note: secret },
          revision: 1,
        },
      ],
    });
    const lines = await engine.ask('journal.list', { caseId: null, most: 100 });
    expect(lines.slice(0, 3).map(({ what }) => what)).toEqual(['bench', 'photo described', 'case changed']);
    expect(JSON.stringify(lines)).not.toContain(secret);
  });

  test('what was done as it was done: a line that is put out of its turn is refused', async () => {
    const { engine } = await oneCase();
    const { db } = engine;
    const last = db.prepare<[], { number: number }>('SELECT max(number) AS number FROM journal').get()!;
    const insert = (verb: string, number: number, previous: string) => () =>
      db
        .prepare(
          `${verb} INTO journal (number, at, who, case_uuid, what, details, previous_hash, hash)
           VALUES (?, ?, 'A', NULL, 'w', '{}', ?, ?)`,
        )
        .run(number, testInstant, previous, 'f'.repeat(64));
    const head = db.prepare<[], string>('SELECT hash FROM journal ORDER BY number DESC').pluck().get()!;
    expect(insert('INSERT OR REPLACE', 2, head)).toThrow('append-only');
    expect(insert('INSERT', last.number + 2, head)).toThrow('append-only');
    expect(insert('INSERT', last.number + 1, 'e'.repeat(64))).toThrow('append-only');
    expect(insert('INSERT', last.number + 1, head)).not.toThrow();
  });
});
