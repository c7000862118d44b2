/** Who has to do with a case: entered, changed and removed under the same rules as everything of a case. */
import { describe, expect, test } from 'vitest';

import type { CaseId, PartyId } from '#shared-types/ids.ts';
import type { PartyFields } from '#shared-types/party.ts';

import { engineOverWorld } from '../support/engine-for-test.ts';
import { libraryContent } from '../support/library-content.ts';
import { testId } from '../support/open-test-library.ts';

const size = { cases: 2, findings: [0, 0], photos: [0, 0], marks: [0, 0] } as const;
const partyId = testId<PartyId>(1);
const fields: PartyFields = { name: 'Skerry Line', roles: ['claims', 'owns'], details: 'reference 771\n' };

async function twoCases() {
  const { engine, world } = await engineOverWorld(71, size);
  const [here, elsewhere] = world.cases.map(({ id }) => id) as [CaseId, CaseId];
  const put = (more: Partial<PartyFields> = {}, revision: number | null = null, id = partyId) =>
    ({ caseId: here, partyId: id, revision, fields: { ...fields, ...more } }) as const;
  return { engine, here, elsewhere, put };
}

describe('a party', () => {
  test('is listed as it was entered, its roles each once and in their order', async () => {
    const { engine, here, elsewhere, put } = await twoCases();
    const roles = ['other', 'pays', 'claims', 'pays'] as const;
    expect(await engine.ask('parties.put', put({ name: '  Skerry Line ', roles: [...roles] }))).toEqual({
      id: partyId,
      revision: 1,
      name: 'Skerry Line',
      roles: ['claims', 'pays', 'other'],
      details: 'reference 771\n',
    });
    const second = await engine.ask('parties.put', put({ name: 'A. Berg', roles: [] }, null, testId(2)));
    const list = await engine.ask('parties.list', { caseId: here });
    expect(list.map(({ name }) => name)).toEqual(['Skerry Line', 'A. Berg']);
    expect(list[1]).toEqual(second);
    expect(await engine.ask('parties.list', { caseId: elsewhere })).toEqual([]);
  });

  test('is changed whole, and the list says so at once', async () => {
    const { engine, here, put } = await twoCases();
    await engine.ask('parties.put', put());
    const changed = await engine.ask('parties.put', put({ roles: ['insures'], details: '' }, 1));
    expect(changed).toMatchObject({ revision: 2, roles: ['insures'], details: '' });
    expect(await engine.ask('parties.list', { caseId: here })).toEqual([changed]);
  });

  test('removed is gone with its roles', async () => {
    const { engine, here, put } = await twoCases();
    await engine.ask('parties.put', put());
    await engine.ask('parties.remove', { partyId, revision: 1 });
    expect(await engine.ask('parties.list', { caseId: here })).toEqual([]);
    expect(libraryContent(engine.db)).toMatchObject({ party: [], party_role: [] });
    expect((await engine.refusalOf('parties.remove', { partyId, revision: 1 })).code).toBe('not-found');
  });

  test('is refused without a name, from a stale window, under an id that is taken, as another case’s', async () => {
    const { engine, elsewhere, put } = await twoCases();
    await engine.ask('parties.put', put());
    await engine.ask('parties.put', put({ roles: ['owns'] }, 1));
    const before = libraryContent(engine.db);
    const refused = async (request: Parameters<typeof engine.ask<'parties.put'>>[1]) =>
      (await engine.refusalOf('parties.put', request)).code;
    expect(await refused(put({ name: ' ' }, 2))).toBe('request-invalid');
    expect(await refused(put({}, 1))).toBe('stale-revision');
    expect(await refused(put())).toBe('stale-revision');
    expect(await refused({ ...put({}, 2), caseId: elsewhere })).toBe('not-found');
    expect((await engine.refusalOf('parties.remove', { partyId, revision: 1 })).code).toBe('stale-revision');
    expect(libraryContent(engine.db)).toEqual(before);
  });

  test('of a withdrawn case stays as it is', async () => {
    const { engine, here, put } = await twoCases();
    await engine.ask('parties.put', put());
    const { revision } = await engine.ask('cases.read', { caseId: here });
    await engine.ask('cases.withdraw', { caseId: here, revision, reason: 'opened twice' });
    expect((await engine.refusalOf('parties.put', put({}, 1))).code).toBe('case-closed');
    expect((await engine.refusalOf('parties.put', put({}, null, testId(2)))).code).toBe('case-closed');
    expect((await engine.refusalOf('parties.remove', { partyId, revision: 1 })).code).toBe('case-closed');
    expect(await engine.ask('parties.list', { caseId: here })).toMatchObject([{ ...fields, revision: 1 }]);
  });
});

test('each write has its line in the journal, without the case’s own words, and its event', async () => {
  const { engine, here, put } = await twoCases();
  await engine.ask('parties.put', put());
  await engine.ask('parties.put', put({ roles: ['pays'] }, 1));
  await engine.ask('parties.remove', { partyId, revision: 2 });
  const lines = await engine.ask('journal.list', { caseId: here, most: 3 });
  expect(lines.map(({ what, details }) => [what, details])).toEqual([
    ['party removed', { party: partyId }],
    ['party changed', { party: partyId, roles: ['pays'] }],
    ['party entered', { party: partyId, roles: ['claims', 'owns'] }],
  ]);
  expect(engine.events.filter(({ name }) => name === 'case-changed')).toEqual(
    Array.from({ length: 3 }, () => ({
      name: 'case-changed',
      payload: { caseId: here, what: 'parties' },
    })),
  );
});
