/** What the claim station keeps until it is saved. The pause in typing and the way to the library are handed in. */
import { describe, expect, test } from 'vitest';

import type { CaseFields, TeardownCase } from '#shared-types/case.ts';
import { AppError } from '#shared-types/errors.ts';
import type { PhotoId } from '#shared-types/ids.ts';

import { createFieldKeeper, type FieldKeeper } from '../../../renderer/claim/field-keeper.ts';
import { openedCase } from '../../support/case-fields.ts';
import { testId } from '../../support/open-test-library.ts';

const photoId = testId<PhotoId>(7);

/** A library of one case, which answers at once, and the keeper of a window on it. */
function windowOnCase() {
  let stored = openedCase();
  const sent: Partial<CaseFields>[] = [];
  const write = (fields: Partial<CaseFields>): TeardownCase => {
    stored = { ...stored, ...fields, revision: stored.revision + 1 };
    return stored;
  };
  const paused = new Set<() => void>();
  const keeper = createFieldKeeper(stored, {
    send: (revision, fields) => {
      if (revision !== stored.revision)
        return Promise.reject(new AppError('stale-revision', { thing: 'case' }));
      sent.push(fields);
      return Promise.resolve(write(fields));
    },
    readAgain: () => Promise.resolve(stored),
    afterPause: (run) => {
      paused.add(run);
      return () => paused.delete(run);
    },
  });
  /** What another window writes; this one hears of it only when it is told, or asks. */
  const elsewhere = write;
  return { keeper, sent, elsewhere, paused, stored: () => stored };
}

const show = (keeper: FieldKeeper) => keeper.view();

describe('what is typed', () => {
  test('is saved as what it says, and then shown as the program writes it', async () => {
    const { keeper, stored } = windowOnCase();
    keeper.edit('runningHours', '0,35');
    keeper.edit('fittedOn', 'March 2025');
    keeper.edit('timeInService', '4 months');
    expect(show(keeper).saving).toBe('waiting');
    await keeper.leave('runningHours');
    await keeper.leave('fittedOn');
    expect(stored().service).toEqual({
      fittedOn: { local: '2025-03-01T00:00:00', offsetMinutes: null, precision: 'month' },
      failedOn: null,
      timeInService: { value: 4, unit: 'months' },
      runningHours: 0.35,
    });
    expect(show(keeper)).toMatchObject({
      saving: 'saved',
      values: { runningHours: '0.35', fittedOn: '2025-03', timeInService: '4 months' },
    });
  });

  test('waits where it can be read in two ways, and does not hold up the rest', async () => {
    const { keeper, sent } = windowOnCase();
    keeper.edit('runningHours', '1,234');
    keeper.edit('conclusion', 'starved of oil');
    await keeper.flush();
    expect(sent).toEqual([{ conclusion: 'starved of oil' }]);
    expect(show(keeper)).toMatchObject({ saving: 'unfinished', values: { runningHours: '1,234' } });
    expect(show(keeper).readings.runningHours).toEqual({ kind: 'ambiguous', values: [1.234, 1_234] });
    expect([...keeper.unfinished()]).toEqual([['runningHours', '1,234']]);
  });

  test('is saved as whoever typed it says it was meant, and not asked about again', async () => {
    const { keeper, stored } = windowOnCase();
    keeper.edit('runningHours', '1,234');
    await keeper.settle('runningHours', 1.234);
    expect(stored().service.runningHours).toBe(1.234);
    expect(show(keeper)).toMatchObject({
      saving: 'saved',
      readings: { runningHours: { kind: 'understood', value: 1.234 } },
    });
    await keeper.leave('runningHours');
    expect(show(keeper).readings.runningHours).toEqual({ kind: 'understood', value: 1.234 });
    // Typed anew it is asked about anew, unless it is what the library has.
    keeper.edit('runningHours', '9.876');
    expect(show(keeper).readings.runningHours.kind).toBe('ambiguous');
  });

  test('is taken back with nothing, and not with what cannot be read', async () => {
    const { keeper, stored } = windowOnCase();
    keeper.edit('failedOn', '4.3.2026');
    await keeper.flush();
    keeper.edit('failedOn', '31.4.2026');
    await keeper.flush();
    expect(stored().service.failedOn?.local).toBe('2026-03-04T00:00:00');
    expect(show(keeper).saving).toBe('unfinished');
    keeper.edit('failedOn', '');
    await keeper.flush();
    expect(stored().service.failedOn).toBeNull();
    expect(show(keeper).saving).toBe('saved');
  });

  test.each([
    ['runningHours', '-3'],
    ['runningHours', '1 000 001'],
    ['timeInService', '10 001 days'],
  ] as const)('as %s, %s is refused here: the library would not take it', async (field, text) => {
    const { keeper, sent } = windowOnCase();
    keeper.edit(field, text);
    await keeper.flush();
    expect(sent).toEqual([]);
    expect(show(keeper).readings[field].kind).toBe('wrong');
  });
});

test('a case number that is missing is unfinished, not on its way; the last one stays in the library', async () => {
  const { keeper, sent, paused } = windowOnCase();
  keeper.edit('number', ' ');
  for (const run of paused) run();
  await keeper.flush();
  expect(sent).toEqual([]);
  expect(show(keeper).saving).toBe('unfinished');
  keeper.edit('number', '26-0148');
  await keeper.flush();
  expect(sent).toEqual([{ number: '26-0148' }]);
  expect(show(keeper).saving).toBe('saved');
});

describe('what is chosen', () => {
  test('is on its way at once, with no pause to wait for', async () => {
    const { keeper, sent, paused } = windowOnCase();
    await keeper.choose('outcome', 'undetermined');
    expect(sent).toEqual([{ outcome: 'undetermined' }]);
    expect(paused.size).toBe(0);
  });

  test('rotation and thread go each with its own photo, and the photo goes with what it shows', async () => {
    const { keeper, stored } = windowOnCase();
    await keeper.choose('rotation', 'clockwise from-inlet');
    await keeper.choose('rotationPhoto', photoId);
    expect(stored().unit).toMatchObject({
      rotation: { sense: 'clockwise', seenFrom: 'from-inlet', photoId },
      thread: null,
    });
    await keeper.choose('threadHand', 'left');
    await keeper.choose('rotation', '');
    expect(stored().unit).toMatchObject({ rotation: null, thread: { hand: 'left', photoId: null } });
    expect(show(keeper).values).toMatchObject({ rotation: '', rotationPhoto: '', threadHand: 'left' });
  });

  test('standing and words of the interest do not undo each other', async () => {
    const { keeper, stored } = windowOnCase();
    keeper.edit('interestWords', 'this shop rebuilt it');
    await keeper.choose('interest', 'declared');
    expect(stored().interest).toEqual({ standing: 'declared', words: 'this shop rebuilt it' });
  });
});

describe('what another window wrote', () => {
  test('into another field is no conflict: both stand', async () => {
    const { keeper, elsewhere, stored } = windowOnCase();
    elsewhere({ stateReceived: 'crate dry' });
    keeper.edit('runningHours', '812');
    await keeper.flush();
    await keeper.flush();
    expect(stored()).toMatchObject({ stateReceived: 'crate dry', service: { runningHours: 812 } });
    expect(show(keeper)).toMatchObject({ saving: 'saved', conflicts: [] });
  });

  test('into the same part of the case but another field of it is none either', async () => {
    const { keeper, elsewhere, stored } = windowOnCase();
    elsewhere({ service: { ...stored().service, runningHours: 812 } });
    keeper.edit('fittedOn', '2025');
    await keeper.flush();
    await keeper.flush();
    expect(stored().service).toMatchObject({ runningHours: 812, fittedOn: { precision: 'year' } });
  });

  test('into the same field is asked about, and what is chosen stands', async () => {
    for (const choice of ['mine', 'theirs'] as const) {
      const { keeper, elsewhere, stored } = windowOnCase();
      elsewhere({ service: { ...stored().service, runningHours: 812 } });
      keeper.edit('runningHours', '900');
      await keeper.flush();
      expect(show(keeper)).toMatchObject({
        saving: 'conflict',
        conflicts: [{ field: 'runningHours', theirs: '812' }],
      });
      await keeper.resolve('runningHours', choice);
      expect(stored().service.runningHours).toBe(choice === 'mine' ? 900 : 812);
      expect(show(keeper)).toMatchObject({ saving: 'saved', conflicts: [] });
    }
  });

  test('is no conflict where both wrote the same, however it was typed', async () => {
    const { keeper, elsewhere, stored } = windowOnCase();
    elsewhere({ service: { ...stored().service, runningHours: 0.35 } });
    keeper.edit('runningHours', '0,350');
    await keeper.flush();
    await keeper.flush();
    expect(show(keeper)).toMatchObject({ saving: 'saved', conflicts: [] });
  });
});
