import { describe, expect, it } from 'vitest';

import { buildReportModel } from '#analysis/report/report-model.ts';
import type { Drawing } from '#shared-types/drawing.ts';

import { arrow, blobId, finding, photo, reportInput } from '../../pdf/report-case.ts';

const tip = [800, 600] as const;
const tail = [400, 300] as const;

/** A case of four photos of which the second and fourth carry marks. */
function markedCase() {
  return reportInput({
    photos: [
      photo(1),
      photo(2, {
        caption: ' Front face,\n uncleaned ',
        parts: [{ component: 'thrust-bearing', position: null }],
        seenFrom: 'from-turbine',
      }),
      photo(3, { stage: null }),
      photo(4),
    ],
    findings: [
      finding(2, { component: 'journal-bearing', position: 'turbine-side', zone: 'bore', kind: 'rub' }),
      finding(1, { severity: 'severe', extent: { affected: 3, of: 3 } }),
    ],
    marks: [
      arrow(1, 2, 1, tail, tip),
      arrow(2, 4, 1, tail, tip),
      arrow(3, 4, 1, tail, tip),
      arrow(4, 4, 1, tail, tip),
      arrow(5, 4, 2, tail, tip),
    ],
  });
}

describe('buildReportModel', () => {
  it('is plain JSON', () => {
    const model = buildReportModel(markedCase());
    expect(JSON.parse(JSON.stringify(model))).toEqual(model);
  });

  it('keeps the claim word for word', () => {
    const input = markedCase();
    const claim = '  „Es pfiff“,\n\n\tsagt der Kunde.  ';
    const model = buildReportModel({ ...input, teardownCase: { ...input.teardownCase, claim } });
    expect(model.claim.words).toBe(claim);
  });

  it('puts photos with marks first, and says of each which photo of how many it is', () => {
    const plates = buildReportModel(markedCase()).plates.plates;
    expect(plates.map((plate) => [plate.number, plate.photoNumber, plate.blobId])).toEqual([
      [1, 2, blobId(2)],
      [2, 4, blobId(4)],
      [3, 1, blobId(1)],
      [4, 3, blobId(3)],
    ]);
    expect(plates.map((plate) => `${plate.name} ${plate.caption}`)).toEqual([
      'Plate 1. Front face, uncleaned. Thrust bearing; stripped; seen from the turbine end; photo 2 of 4.',
      'Plate 2. Stripped; photo 4 of 4.',
      'Plate 3. Stripped; photo 1 of 4.',
      'Plate 4. Photo 3 of 4.',
    ]);
  });

  it('lists findings by number, with the plates and marks that show them', () => {
    const rows = buildReportModel(markedCase()).findings.rows;
    expect(rows.map(({ chip: _, ...row }) => row)).toEqual([
      {
        number: 1,
        class: 'primary',
        part: 'Thrust bearing, front pads',
        finding: 'worn away, severe',
        presence: 'present',
        extent: '3 of 3 pads',
        plates: ['Plate 1, P 1.1', 'Plate 2, P 1.2 to P 1.4'],
      },
      {
        number: 2,
        class: 'primary',
        part: 'Journal bearing (turbine side), bore',
        finding: 'rub marks',
        presence: 'present',
        extent: '–',
        plates: ['Plate 2, P 2.1'],
      },
    ]);
  });

  it('explains the marks of a plate below it', () => {
    expect(buildReportModel(markedCase()).plates.plates[1]?.legend).toEqual([
      { marks: 'P 1.2 to P 1.4', words: 'Thrust bearing, front pads: worn away, severe, 3 of 3 pads' },
      { marks: 'P 2.1', words: 'Journal bearing (turbine side), bore: rub marks' },
    ]);
  });

  it('draws each mark with its label, in image pixels, as large on paper as a CSS pixel', () => {
    const plate = buildReportModel(markedCase()).plates.plates[0];
    const drawing: Drawing = plate?.marks[0]?.drawing ?? [];
    const text = drawing.find((primitive) => primitive.type === 'text');
    const shaft = drawing.find((primitive) => primitive.type === 'path' && primitive.stroke === '#b84700');
    expect(text?.text).toBe('P 1.1');
    expect(shaft?.type === 'path' ? shaft.d.startsWith('M400 300L') : false).toBe(true);
    // A CSS pixel is 1/96 inch, a PDF point 1/72 (CSS Values and Units, ISO 32000-1).
    const pixelsPerPoint = 1600 / (plate?.printed.width ?? 0);
    expect((text?.size ?? 0) / pixelsPerPoint / (72 / 96)).toBeCloseTo(13, 6);
  });

  it('says what could not be examined, what is not given to a finding, and whose opinion it is', () => {
    const input = markedCase();
    const model = buildReportModel({
      ...input,
      findings: [finding(1, { presence: 'not-examined' }), finding(2)],
      marks: [arrow(1, 1, null, tail, tip), arrow(2, 1, 1, tail, tip)],
    });
    const said = model.limits.sentences.join(' ');
    expect(said).toContain('One of 2 findings could not be examined');
    expect(said).toContain('One mark on the plates is not given to a finding');
    expect(said).toContain('The opinion is the analyst’s');
    expect(buildReportModel(input).limits.sentences.join(' ')).not.toContain('could not be examined');
    expect(model.plates.plates[0]?.legend.at(-1)).toEqual({ marks: '?', words: 'not given to a finding' });
  });

  it('says so while there is no answer, and numbers the sections without a gap', () => {
    const input = markedCase();
    const headings = (model: ReturnType<typeof buildReportModel>) =>
      [
        ...[model.claim, model.instruction, model.received, model.findings, model.plates],
        ...[model.answer, model.limits, model.record, model.signature],
      ].map((section) => section.heading.replace(/\u00a0+/, ' '));
    const open = buildReportModel(input);
    expect(headings(open)).toEqual([
      '1 The claim',
      '2 Instruction and interest',
      '3 What was received',
      '4 Findings',
      '5 Plates',
      '6 The analyst’s answer',
      '7 Limits of this report',
      '8 Record',
      '9 Signature',
    ]);
    expect(open.answer).toMatchObject({ outcome: 'The claim is not answered yet.', liability: '' });
    expect(open.running.foot).toContain('section 7');
    const answered = buildReportModel({
      ...input,
      teardownCase: { ...input.teardownCase, outcome: 'undetermined' },
    });
    expect(headings(answered)).toEqual(headings(open));
    expect(answered.answer.outcome).not.toBe(open.answer.outcome);
    expect(answered.answer.liability).toContain('liable');
  });

  it('prints an id that the machine kind’s data does not know as it stands', () => {
    const model = buildReportModel(
      reportInput({
        findings: [finding(1, { component: 'gone-part', zone: 'gone-zone', kind: 'gone-kind' })],
      }),
    );
    expect(model.findings.rows[0]?.part).toBe('gone-part, gone-zone');
    expect(model.findings.rows[0]?.finding).toBe('gone-kind');
  });

  it('carries the journal’s length and the hash of its last line', () => {
    const values = buildReportModel(reportInput()).record.lines.map((line) => line.value);
    expect(values).toContain('143');
    expect(values).toContain('cd'.repeat(32));
    expect(values).toContain('ab'.repeat(32));
  });
});
