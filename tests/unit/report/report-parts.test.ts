/** What stands before and after the findings: the unit, who is behind the examination, custody, the annexes. */
import { describe, expect, it } from 'vitest';

import { buildReportModel, type ReportInput } from '#analysis/report/report-model.ts';
import type { CaseFields } from '#shared-types/case.ts';
import type { CustodyEntry } from '#shared-types/custody.ts';
import type { CustodyEntryId, PartyId } from '#shared-types/ids.ts';
import type { Party } from '#shared-types/party.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Instant, WallTime } from '#shared-types/times.ts';

import { arrow, finding, photo, photoId, registered, reportInput } from '../../pdf/report-case.ts';

const instant = '2026-05-06T07:08:09.000Z' as Instant;
const day = (local: string): WallTime => ({
  local: `${local}T00:00:00`,
  offsetMinutes: null,
  precision: 'day',
});

function withCase(fields: Partial<CaseFields>, more: Partial<ReportInput> = {}) {
  const input = reportInput(more);
  return buildReportModel({ ...input, teardownCase: { ...input.teardownCase, ...fields } });
}

const party = (number: number, name: string, roles: Party['roles']): Party => ({
  id: String(number) as PartyId,
  revision: 1,
  name,
  roles,
  details: 'a telephone number',
});

const entry = (number: number, more: Partial<CustodyEntry> = {}): CustodyEntry => ({
  id: String(number) as CustodyEntryId,
  revision: 1,
  item: 'Unit',
  event: 'received',
  from: 'Carrier',
  to: 'A. Analyst',
  at: day('2026-03-04'),
  why: '',
  enteredAt: instant,
  enteredBy: 'A. Analyst',
  struck: null,
  ...more,
});

describe('the title block', () => {
  const photos = [photo(1), photo(2)];
  const { unit } = reportInput().teardownCase;

  it('says what was seen and told only where it was entered, and what is missing of the names', () => {
    const lines = withCase({ unit: { ...unit, serial: '', maker: '', model: '' } }).titleBlock;
    const labels = lines.map(({ label }) => label);
    expect(labels).not.toContain('Rotation, as seen');
    expect(labels).not.toContain('Running hours, as told');
    expect(lines.filter(({ value }) => value === 'not entered').map(({ label }) => label)).toEqual([
      'Unit',
      'Serial number',
    ]);
  });

  it('names the plate that shows rotation and thread, or says that none was named or is left', () => {
    const model = withCase(
      {
        unit: {
          ...unit,
          rotation: { sense: 'clockwise', seenFrom: 'from-turbine', photoId: photoId(2) },
          thread: { hand: 'left', photoId: null },
        },
        service: {
          fittedOn: day('2026-03-14'),
          failedOn: { ...day('2026-07-01'), precision: 'month' },
          timeInService: { value: 4, unit: 'months' },
          runningHours: 12_400.5,
        },
      },
      { photos, marks: [arrow(1, 2, null, [0, 0], [9, 9])] },
    );
    const value = (label: string) => model.titleBlock.find((line) => line.label === label)?.value;
    expect(value('Rotation, as seen')).toBe('clockwise seen from the turbine end; see plate\u00a01');
    expect(value('Shaft thread, as seen')).toBe('left-hand; no photograph of it was named');
    expect(value('Fitted, as told')).toBe('14 March 2026');
    expect(value('Failed, as told')).toBe('July 2026');
    expect(value('Time in service, as told')).toBe('4 months');
    expect(value('Running hours, as told')).toBe('12\u00a0400.5 h');
    const gone = withCase(
      { unit: { ...unit, rotation: null, thread: { hand: 'right', photoId: photoId(9) } } },
      { photos },
    );
    expect(gone.titleBlock.find(({ label }) => label === 'Shaft thread, as seen')?.value).toContain(
      'was taken out of the case',
    );
  });
});

describe('instruction and interest', () => {
  it('says “not stated” of whoever was not entered, and of an interest that was not declared', () => {
    const model = withCase({});
    expect(model.claim.lead).toContain('Who claims has not been entered');
    expect(model.instruction.lines.map(({ value }) => value)).toEqual([
      'not stated',
      'not stated',
      'not stated',
    ]);
  });

  it('names everyone with what they do, and none of how to reach them', () => {
    const parties = [
      party(1, 'Skerry Line', ['claims', 'instructs', 'owns']),
      party(2, 'Insurer', ['pays', 'insures']),
      party(3, 'Workshop', []),
    ];
    const model = withCase(
      { interest: { standing: 'declared', words: ' It rebuilt the unit. ' } },
      { parties },
    );
    expect(model.claim.lead).toContain('Claimed by Skerry Line,');
    expect(model.instruction.lines).toEqual([
      { label: 'Instructed by', value: 'Skerry Line' },
      { label: 'Paid for by', value: 'Insurer' },
      { label: 'Other parties', value: 'Skerry Line: owns the unit' },
      { label: '', value: 'Insurer: insures' },
      { label: '', value: 'Workshop: role not stated' },
      {
        label: 'The analyst’s interest',
        value: 'An interest in the answer is declared.\nIt rebuilt the unit.',
      },
    ]);
    expect(JSON.stringify(model)).not.toContain('telephone');
  });
});

describe('the numbers of the findings', () => {
  const remarkOf = (...numbers: number[]) =>
    buildReportModel(reportInput({ findings: numbers.map((number) => finding(number)) })).findings.remark;

  it('that no finding has any more are accounted for', () => {
    expect(remarkOf(1, 3, 4, 6)).toBe(reportTexts.findings.gone([2, 5]));
  });

  it('leave nothing to say where none is missing, or where there is no finding', () => {
    expect(remarkOf(2, 1)).toBeNull();
    expect(remarkOf()).toBeNull();
  });
});

describe('custody', () => {
  it('keeps a struck entry in its place, with who struck it, when and why', () => {
    const struck = { at: instant, by: 'B. Other', reason: 'wrong item ' };
    const model = withCase({}, { custody: [entry(1), entry(2, { event: 'opened', to: '', struck })] });
    expect(model.received.rows).toEqual([
      {
        when: '4 March 2026',
        item: 'Unit',
        event: 'received',
        from: 'Carrier',
        to: 'A. Analyst',
        why: '–',
        struck: null,
      },
      {
        when: '4 March 2026',
        item: 'Unit',
        event: 'opened',
        from: 'Carrier',
        to: '–',
        why: '–',
        struck: 'Struck by B. Other, 6 May 2026, 07:08 UTC: wrong item',
      },
    ]);
    expect(model.received.custody.caption?.name).toBe('Table 1.');
  });

  it('is said to be missing where nothing was entered, and takes no number then', () => {
    const model = withCase({}, { photos: [photo(1)] });
    expect(model.received.custody).toMatchObject({ caption: null });
    expect(model.register?.caption.name).toBe('Table 1.');
  });
});

describe('the annexes', () => {
  const place = { latitude: -57.7, longitude: 11.9625, altitude: -3.4 };
  const out = { at: instant, by: 'B. Other', reason: 'blurred' };
  const photos = [photo(2, { takenAt: { ...day('2026-03-04'), precision: 'second' } }), photo(1)];
  const register = [
    { ...registered(photo(1)), cameraPlace: place },
    registered(photos[0] ?? photo(2)),
    { ...registered(photo(3, { sourceName: 'photo-009.jpg' })), takenOut: out },
    { ...registered(photo(4, { sourceName: 'photo-011.jpg' })), takenOut: out },
  ];

  it('list every photo by its number, then those taken out as they came in, each with its whole hash', () => {
    const [second, first, out3, out4] = register;
    const mixed = [out3, second, first, out4].filter((entry) => entry !== undefined);
    const rows = withCase({}, { photos, register: mixed }).register?.rows ?? [];
    expect(rows.map(({ photo: number, plate }) => [number, plate])).toEqual([
      ['1', '1'],
      ['2', '2'],
      ['taken out', '–'],
      ['taken out', '–'],
    ]);
    const inOrder = [first, second, out3, out4].map((entry) => entry?.photo.sha256);
    expect(rows.map(({ sha256 }) => sha256)).toEqual(inOrder);
    expect(rows[0]?.taken).toEqual(['4 March 2026, 00:00:00, zone not told']);
    expect(rows[2]?.takenOut).toBe('Taken out 6 May 2026, 07:08 UTC by B. Other: blurred');
    expect(rows[1]?.file).toEqual(['photo-1.jpg', '1000 bytes; came in 4 March 2026, 09:15 UTC, A. Analyst']);
  });

  it('print where a camera stood only when the plan says so', () => {
    const plan = { ...reportInput().plan, printCameraPlaces: true };
    const without = withCase({}, { photos, register });
    expect(JSON.stringify(without)).not.toContain('57.7');
    const rows = withCase({}, { photos, register, plan }).register?.rows ?? [];
    expect(rows[1]?.taken).toContain('camera at 57.70000°\u00a0S, 11.96250°\u00a0E; −3\u00a0m');
    expect(rows[0]?.taken).toContain('camera place not in the file');
  });

  it('show the photos of the case in their order, and say what they do not show', () => {
    const sheet = withCase({}, { photos, register }).sheet;
    expect(sheet?.photos.map(({ number, sourceName }) => [number, sourceName])).toEqual([
      [1, 'photo-2.jpg'],
      [2, 'photo-1.jpg'],
    ]);
    expect(sheet?.remarks.join(' ')).toContain('2 photographs were taken out of the case');
    expect(sheet?.remarks.join(' ')).toContain('photo-009.jpg, photo-011.jpg');
    expect(sheet?.remarks.join(' ')).toContain('no photograph of the case has the name photo-010.jpg.');
  });

  it('are named above the signature, which stands before them', () => {
    expect(withCase({}, { photos, register }).signature.covers).toBe(
      'The signature stands for sections 1 to 8 and for annexes A and B, which follow it; the pages are numbered through to the last.',
    );
    expect(withCase({}).signature.covers).toBe('The signature stands for sections 1 to 8.');
  });
});

describe('sections of the analyst’s own', () => {
  it('stand before the findings or before the answer, with their references resolved', () => {
    const plan = {
      ...reportInput().plan,
      sections: [
        { place: 'before-answer', heading: 'Weighing', words: '[section Method], [plate photo-1]' },
        { place: 'before-findings', heading: 'Method', words: '**Nothing** was sectioned.' },
      ] as const,
    };
    const model = withCase(
      { conclusion: 'See [section Weighing].' },
      { photos: [photo(1)], plan: { ...plan, sections: [...plan.sections] } },
    );
    expect(model.beforeFindings.map(({ heading }) => heading)).toEqual(['4\u00a0\u00a0Method']);
    expect(model.beforeAnswer.map(({ destination }) => destination)).toEqual(['own-0']);
    const words = (blocks: unknown) => JSON.stringify(blocks);
    expect(words(model.beforeAnswer[0]?.blocks)).toContain('"section\u00a04"');
    expect(words(model.beforeAnswer[0]?.blocks)).toContain('"plate\u00a01"');
    expect(words(model.answer.conclusion)).toContain('"section\u00a07"');
  });
});
