/** Who had what when. That an entry is struck and never rewritten is a rule of our own, held by the database itself. */
import { describe, expect, test } from 'vitest';

import type { CustodyFields } from '#shared-types/custody.ts';
import type { CaseId, CustodyEntryId } from '#shared-types/ids.ts';
import type { WallTime } from '#shared-types/times.ts';

import { engineOverWorld } from '../support/engine-for-test.ts';
import { libraryContent } from '../support/library-content.ts';
import { testId } from '../support/open-test-library.ts';

const size = { cases: 2, findings: [0, 0], photos: [0, 0], marks: [0, 0] } as const;
const id = (number: number) => testId<CustodyEntryId>(number);
const day = (date: string, precision: WallTime['precision'] = 'day'): WallTime => ({
  local: `${date}T00:00:00`,
  offsetMinutes: null,
  precision,
});
const fields: CustodyFields = {
  item: 'unit in its crate',
  event: 'received',
  from: 'the carrier',
  to: 'M. Sundgren',
  at: day('2026-03-04'),
  why: 'seal 4471 unbroken',
};

async function twoCases() {
  const { engine, world } = await engineOverWorld(72, size);
  const [here, elsewhere] = world.cases.map(({ id: caseId }) => caseId) as [CaseId, CaseId];
  const add = (number: number, more: Partial<CustodyFields> = {}) =>
    ({ caseId: here, entryId: id(number), fields: { ...fields, ...more } }) as const;
  return { engine, here, elsewhere, add };
}

describe('a custody entry', () => {
  test('is kept as told, with who entered it', async () => {
    const { engine, here, elsewhere, add } = await twoCases();
    const at: WallTime = { local: '2026-03-04T14:30:00', offsetMinutes: 60, precision: 'minute' };
    const entered = await engine.ask('custody.add', add(1, { at }));
    expect(entered).toEqual({
      ...fields,
      at,
      id: id(1),
      revision: 1,
      enteredAt: entered.enteredAt,
      enteredBy: 'M. Sundgren',
      struck: null,
    });
    expect(await engine.ask('custody.list', { caseId: here })).toEqual([entered]);
    expect(await engine.ask('custody.list', { caseId: elsewhere })).toEqual([]);
  });

  test('is listed by its told time, then as entered; a struck one stays in its place', async () => {
    const { engine, here, add } = await twoCases();
    await engine.ask('custody.add', add(1, { at: day('2026-03-09') }));
    await engine.ask('custody.add', add(2, { at: day('2026-03-01', 'month') }));
    await engine.ask('custody.add', add(4, { at: day('2026-03-04') }));
    await engine.ask('custody.add', add(3, { at: day('2026-03-04') }));
    await engine.ask('custody.strike', { entryId: id(4), revision: 1, reason: 'wrong day' });
    const list = await engine.ask('custody.list', { caseId: here });
    expect(list.map((entry) => [entry.id, entry.struck?.reason])).toEqual([
      [id(2), undefined],
      [id(4), 'wrong day'],
      [id(3), undefined],
      [id(1), undefined],
    ]);
  });

  test('says who took it where something was handed over, and need not where it was not', async () => {
    const { engine, add } = await twoCases();
    for (const event of ['received', 'moved', 'released'] as const) {
      expect((await engine.refusalOf('custody.add', add(1, { event, to: ' ' }))).code).toBe(
        'request-invalid',
      );
    }
    expect((await engine.refusalOf('custody.add', add(1, { item: '' }))).code).toBe('request-invalid');
    expect((await engine.refusalOf('custody.add', add(1, { from: '' }))).code).toBe('request-invalid');
    expect(await engine.ask('custody.add', add(1, { event: 'opened', to: '' }))).toMatchObject({ to: '' });
  });

  test('is struck once, by somebody who is named, with a reason', async () => {
    const { engine, here, add } = await twoCases();
    const entered = await engine.ask('custody.add', add(1));
    const strike = (revision: number, reason = 'wrong day') => ({ entryId: id(1), revision, reason });
    expect((await engine.refusalOf('custody.strike', strike(1, ' '))).code).toBe('request-invalid');
    expect((await engine.refusalOf('custody.strike', strike(2))).code).toBe('stale-revision');
    const struck = await engine.ask('custody.strike', strike(1));
    expect(struck).toEqual({
      ...entered,
      revision: 2,
      struck: { at: struck.struck?.at, by: 'M. Sundgren', reason: 'wrong day' },
    });
    const before = libraryContent(engine.db);
    expect((await engine.refusalOf('custody.strike', strike(1))).code).toBe('stale-revision');
    expect(await engine.refusalOf('custody.strike', strike(2, 'another reason'))).toMatchObject({
      code: 'request-invalid',
      details: { field: 'entryId' },
    });
    expect(libraryContent(engine.db)).toEqual(before);
    expect(await engine.ask('custody.list', { caseId: here })).toEqual([struck]);
  });

  test('is entered once under its id, and not into a withdrawn case', async () => {
    const { engine, here, elsewhere, add } = await twoCases();
    await engine.ask('custody.add', add(1));
    const again = { ...add(1), caseId: elsewhere };
    expect((await engine.refusalOf('custody.add', again)).code).toBe('stale-revision');
    const { revision } = await engine.ask('cases.read', { caseId: here });
    await engine.ask('cases.withdraw', { caseId: here, revision, reason: 'opened twice' });
    const before = libraryContent(engine.db);
    expect((await engine.refusalOf('custody.add', add(2))).code).toBe('case-closed');
    const strike = { entryId: id(1), revision: 1, reason: 'wrong day' };
    expect((await engine.refusalOf('custody.strike', strike)).code).toBe('case-closed');
    expect(libraryContent(engine.db)).toEqual(before);
  });
});

describe('the database itself refuses', () => {
  const changes = [
    "item = 'another crate'",
    "event = 'released'",
    "handed_by = 'somebody'",
    "handed_to = 'somebody'",
    "at_local = '2026-03-05T00:00:00'",
    'at_offset_minutes = 60',
    "at_precision = 'month'",
    "why = 'no seal'",
    "entered_at = '2026-03-05T00:00:00.000Z'",
    "entered_by = 'somebody'",
    'case_row = case_row + 1',
    "uuid = '00000000-0000-4000-8000-000000000009'",
    'revision = revision + 1',
  ];
  const strike =
    "struck_at = '2026-03-05T00:00:00.000Z', struck_by = 'M. Sundgren', struck_reason = 'wrong day'";

  test.each(changes)('to rewrite an entry: %s', async (change) => {
    const { engine, add } = await twoCases();
    await engine.ask('custody.add', add(1));
    expect(() => engine.db.exec(`UPDATE custody_entry SET ${change}`)).toThrow('struck, never rewritten');
    if (change.startsWith('revision')) return;
    // Not on the way of striking it either.
    const onTheWay = `UPDATE custody_entry SET ${change}, ${strike}`;
    expect(() => engine.db.exec(onTheWay)).toThrow('struck, never rewritten');
  });

  test('to rewrite the striking, to take it back, and to delete an entry, struck or not', async () => {
    const { engine, add } = await twoCases();
    await engine.ask('custody.add', add(1));
    expect(() => engine.db.exec('DELETE FROM custody_entry')).toThrow('struck, never deleted');
    await engine.ask('custody.strike', { entryId: id(1), revision: 1, reason: 'wrong day' });
    const before = libraryContent(engine.db);
    for (const change of [
      "struck_reason = 'another'",
      'struck_at = NULL, struck_by = NULL, struck_reason = NULL',
      strike,
    ]) {
      expect(() => engine.db.exec(`UPDATE custody_entry SET ${change}`)).toThrow('struck, never rewritten');
    }
    expect(() => engine.db.exec('DELETE FROM custody_entry')).toThrow('struck, never deleted');
    expect(libraryContent(engine.db)).toEqual(before);
  });
});

test('each write has its line in the journal, without the case’s own words, and its event', async () => {
  const { engine, here, add } = await twoCases();
  await engine.ask('custody.add', add(1));
  await engine.ask('custody.strike', { entryId: id(1), revision: 1, reason: 'wrong day' });
  const lines = await engine.ask('journal.list', { caseId: here, most: 2 });
  expect(lines.map(({ what, details }) => [what, details])).toEqual([
    ['custody entry struck', { entry: id(1) }],
    ['custody entered', { entry: id(1), event: 'received' }],
  ]);
  expect(engine.events.filter(({ name }) => name === 'case-changed')).toEqual(
    Array.from({ length: 2 }, () => ({
      name: 'case-changed',
      payload: { caseId: here, what: 'custody' },
    })),
  );
});
