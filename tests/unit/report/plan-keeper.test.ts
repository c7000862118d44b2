import { describe, expect, it } from 'vitest';

import { AppError } from '#shared-types/errors.ts';
import type { OwnSection, ReportPlan, ReportPlanFields } from '#shared-types/report-plan.ts';

import { createPlanKeeper } from '../../../renderer/report/plan-keeper.ts';

const section = (words: string, heading = 'Method'): OwnSection => ({
  place: 'before-findings',
  heading,
  words,
});
const first: ReportPlan = { platesAPage: 1, printCameraPlaces: false, sections: [section('a')], revision: 1 };

/** A library with one plan, written by whoever names its revision; pauses end when the test says so. */
function desk() {
  let stored = first;
  const sent: Partial<ReportPlanFields>[] = [];
  let waiting: (() => void)[] = [];
  let away = false;
  const write = (revision: number, fields: Partial<ReportPlanFields>) => {
    if (away) throw new AppError('engine-unavailable', { reason: 'gone' });
    if (revision !== stored.revision) throw new AppError('stale-revision', { thing: 'report plan' });
    const sections = (fields.sections ?? stored.sections).map((one) => ({
      ...one,
      heading: one.heading.trim(),
    }));
    stored = { ...stored, ...fields, sections, revision: revision + 1 };
    return stored;
  };
  const keeper = createPlanKeeper(first, {
    send: (revision, fields) => {
      sent.push(fields);
      return Promise.resolve().then(() => write(revision, fields));
    },
    readAgain: () => Promise.resolve(stored),
    afterPause: (run) => {
      waiting.push(run);
      return () => (waiting = waiting.filter((other) => other !== run));
    },
  });
  return {
    keeper,
    sent,
    stored: () => stored,
    elsewhere: (fields: Partial<ReportPlanFields>) => write(stored.revision, fields),
    goAway: (gone: boolean) => (away = gone),
    pause: async () => {
      const due = waiting;
      waiting = [];
      for (const run of due) run();
      await keeper.flush();
    },
  };
}

describe('what is typed into the plan', () => {
  it('is saved after the pause, once for all keys, and shown as it was typed meanwhile', async () => {
    const { keeper, sent, stored, pause } = desk();
    keeper.edit({ sections: [section('ab')] }, 'after a pause');
    keeper.edit({ sections: [section('abc', 'Method ')] }, 'after a pause');
    expect(keeper.view()).toMatchObject({ saving: 'waiting', fields: { sections: [{ words: 'abc' }] } });
    await pause();
    expect(sent).toEqual([{ sections: [section('abc', 'Method ')] }]);
    expect(stored().sections).toEqual([section('abc')]);
    // The blank at the end is still being typed after.
    expect(keeper.view()).toMatchObject({ saving: 'saved', fields: { sections: [{ heading: 'Method ' }] } });
    await keeper.leave();
    expect(keeper.view().fields.sections).toEqual([section('abc')]);
  });

  it('while a save is on its way is saved after it', async () => {
    const { keeper, sent, stored } = desk();
    keeper.edit({ sections: [section('one')] }, 'at once');
    keeper.edit({ sections: [section('one, two')] }, 'after a pause');
    await keeper.flush();
    expect(sent).toHaveLength(2);
    expect(stored().sections).toEqual([section('one, two')]);
    expect(keeper.view().saving).toBe('saved');
  });

  it('is kept and tried again where the library is away', async () => {
    const { keeper, stored, goAway } = desk();
    goAway(true);
    keeper.edit({ sections: [section('kept')] }, 'at once');
    await keeper.flush();
    expect(keeper.view()).toMatchObject({ saving: 'failed', fields: { sections: [section('kept')] } });
    goAway(false);
    await keeper.flush();
    expect(stored().sections).toEqual([section('kept')]);
    expect(keeper.view()).toMatchObject({ saving: 'saved', error: null });
  });
});

describe('two windows', () => {
  it('that change different things both keep what they changed', async () => {
    const { keeper, stored, elsewhere, pause } = desk();
    elsewhere({ platesAPage: 4 });
    keeper.edit({ sections: [section('mine')] }, 'after a pause');
    await pause();
    await pause();
    expect(stored()).toMatchObject({ platesAPage: 4, sections: [section('mine')], revision: 3 });
    expect(keeper.view()).toMatchObject({ saving: 'saved', fields: { platesAPage: 4 } });
  });

  it.each([
    ['mine', [section('mine')]],
    ['theirs', [section('theirs')]],
  ] as const)('that change the sections are asked, and %s stand', async (choice, sections) => {
    const { keeper, stored, elsewhere, pause } = desk();
    keeper.edit({ sections: [section('mine')] }, 'after a pause');
    keeper.adopt(elsewhere({ sections: [section('theirs')] }));
    expect(keeper.view()).toMatchObject({
      saving: 'conflict',
      theirs: [section('theirs')],
      fields: { sections: [section('mine')] },
    });
    await pause();
    expect(stored().sections).toEqual([section('theirs')]);
    await keeper.resolve(choice);
    expect(stored().sections).toEqual(sections);
    expect(keeper.view()).toMatchObject({ saving: 'saved', theirs: null, fields: { sections } });
  });

  it('that write the same have no conflict', () => {
    const { keeper, elsewhere } = desk();
    keeper.edit({ sections: [section('same')] }, 'after a pause');
    keeper.adopt(elsewhere({ sections: [section('same')] }));
    expect(keeper.view().theirs).toBeNull();
  });

  it('show what the other wrote where nothing is written here', () => {
    const { keeper, elsewhere } = desk();
    keeper.adopt(elsewhere({ sections: [section('theirs')], printCameraPlaces: true }));
    expect(keeper.view()).toMatchObject({
      saving: 'saved',
      fields: { sections: [section('theirs')], printCameraPlaces: true },
    });
  });
});
