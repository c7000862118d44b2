/** What the analyst decides of the report: read, changed and refused under the same rules as everything of a case. */
import { describe, expect, test } from 'vitest';

import type { CaseId } from '#shared-types/ids.ts';
import type { OwnSection } from '#shared-types/report-plan.ts';

import { engineOverWorld } from '../support/engine-for-test.ts';
import { libraryContent } from '../support/library-content.ts';

const size = { cases: 2, findings: [0, 0], photos: [0, 0], marks: [0, 0] } as const;
const section = (heading: string, place: OwnSection['place'] = 'before-findings'): OwnSection => ({
  place,
  heading,
  words: `What is to be said of ${heading}.\n`,
});

async function twoCases() {
  const { engine, world } = await engineOverWorld(73, size);
  const [here, elsewhere] = world.cases.map(({ id }) => id) as [CaseId, CaseId];
  return { engine, here, elsewhere };
}

describe('the plan of a report', () => {
  test('is that of a new case until something is said of it', async () => {
    const { engine, here } = await twoCases();
    expect(await engine.ask('report-plan.read', { caseId: here })).toEqual({
      platesAPage: 1,
      printCameraPlaces: false,
      sections: [],
      revision: 1,
    });
    expect(libraryContent(engine.db)).toMatchObject({ report_plan: [], report_section: [] });
  });

  test('keeps what a change does not mention, and its sections in their order', async () => {
    const { engine, here, elsewhere } = await twoCases();
    const sections = [section('Method'), section('Weighing', 'before-answer'), section('Oil')];
    const first = await engine.ask('report-plan.change', {
      caseId: here,
      revision: 1,
      fields: { sections, platesAPage: 4 },
    });
    expect(first).toEqual({ platesAPage: 4, printCameraPlaces: false, sections, revision: 2 });
    const turned = sections.toReversed();
    const second = await engine.ask('report-plan.change', {
      caseId: here,
      revision: 2,
      fields: { sections: turned, printCameraPlaces: true },
    });
    expect(second).toEqual({ platesAPage: 4, printCameraPlaces: true, sections: turned, revision: 3 });
    expect(await engine.ask('report-plan.read', { caseId: here })).toEqual(second);
    expect(await engine.ask('report-plan.read', { caseId: elsewhere })).toMatchObject({ revision: 1 });
    const none = await engine.ask('report-plan.change', {
      caseId: here,
      revision: 3,
      fields: { sections: [] },
    });
    expect(none.sections).toEqual([]);
    expect(libraryContent(engine.db)).toMatchObject({ report_section: [] });
  });

  test('is refused from a stale window, for a case that is not there, and with a count of plates of no meaning', async () => {
    const { engine, here } = await twoCases();
    await engine.ask('report-plan.change', { caseId: here, revision: 1, fields: { platesAPage: 2 } });
    const before = libraryContent(engine.db);
    const change = { caseId: here, revision: 1, fields: { platesAPage: 4 } } as const;
    expect((await engine.refusalOf('report-plan.change', change)).code).toBe('stale-revision');
    const three = { ...change, revision: 2, fields: { platesAPage: 3 as 4 } };
    expect((await engine.refusalOf('report-plan.change', three)).code).toBe('request-invalid');
    const nowhere = '99999999-0000-4000-8000-000000000000' as CaseId;
    expect((await engine.refusalOf('report-plan.read', { caseId: nowhere })).code).toBe('not-found');
    expect((await engine.refusalOf('report-plan.change', { ...change, caseId: nowhere })).code).toBe(
      'not-found',
    );
    expect(libraryContent(engine.db)).toEqual(before);
  });

  test('of a withdrawn case stays as it is', async () => {
    const { engine, here } = await twoCases();
    await engine.ask('report-plan.change', {
      caseId: here,
      revision: 1,
      fields: { sections: [section('Oil')] },
    });
    const { revision } = await engine.ask('cases.read', { caseId: here });
    await engine.ask('cases.withdraw', { caseId: here, revision, reason: 'opened twice' });
    const change = { caseId: here, revision: 2, fields: { platesAPage: 2 } } as const;
    expect((await engine.refusalOf('report-plan.change', change)).code).toBe('case-closed');
    expect(await engine.ask('report-plan.read', { caseId: here })).toMatchObject({
      platesAPage: 1,
      sections: [section('Oil')],
      revision: 2,
    });
  });
});

test('a change has its line in the journal, without the analyst’s words, and its event', async () => {
  const { engine, here } = await twoCases();
  const fields = { sections: [section('Oil')], platesAPage: 2 } as const;
  await engine.ask('report-plan.change', {
    caseId: here,
    revision: 1,
    fields: { ...fields, sections: [...fields.sections] },
  });
  const [line] = await engine.ask('journal.list', { caseId: here, most: 1 });
  expect([line?.what, line?.details]).toEqual([
    'report plan changed',
    { fields: ['platesAPage', 'sections'] },
  ]);
  expect(engine.events.filter(({ name }) => name === 'case-changed')).toEqual([
    { name: 'case-changed', payload: { caseId: here, what: 'report-plan' } },
  ]);
});
