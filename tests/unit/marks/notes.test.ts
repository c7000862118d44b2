import { describe, expect, it } from 'vitest';
import { awaitsFinding, isNote } from '#analysis/marks/notes.ts';
import { markKinds } from '#analysis/marks/mark-kinds/mark-kinds.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { markToDrawing } from '#analysis/marks/mark-to-drawing.ts';
import { markLabels } from '#analysis/report/mark-labels.ts';
import { buildReportModel } from '#analysis/report/report-model.ts';
import type { Mark } from '#shared-types/mark.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import { arrow, finding, findingId, markId, photo, reportInput } from '../../pdf/report-case.ts';

const at = [400, 300] as const;
const words = 'oil side';

function text(number: number, findingNumber: number | null): Mark {
  const { geometry: _arrow, ...mark } = arrow(number, 1, findingNumber, at, at);
  return { ...mark, geometry: { kind: 'text', v: 1, at: imagePoint(...at), words } };
}

describe('a mark without a finding', () => {
  it('is a note where it is words, a length or a scale, and awaits a finding where it is anything else', () => {
    const loose = (kind: Mark['geometry']['kind']) => ({ findingId: null, geometry: { kind } });
    expect(markKinds.filter((kind) => isNote(loose(kind)))).toEqual([
      'text',
      'dimension',
      'scale',
      'rectangle',
    ]);
    expect(markKinds.filter((kind) => awaitsFinding(loose(kind)))).toEqual([
      'arrow',
      'ring',
      'outline',
      'line',
    ]);
  });

  it('is neither once it is given: words are then labelled with their finding', () => {
    const given = { findingId: findingId(1), geometry: { kind: 'text' } } as const;
    expect([isNote(given), awaitsFinding(given)]).toEqual([false, false]);
    const labels = markLabels([photo(1)], [text(1, null), text(2, 1)], [finding(1)]);
    expect([labels.get(markId(1)), labels.get(markId(2))]).toEqual(['', 'P 1.1']);
  });
});

describe('a note', () => {
  it('is drawn as its words in plain ink, without a label or the line of a class', () => {
    const drawing = markToDrawing(text(1, null).geometry, {
      class: 'undecided',
      label: '',
      note: true,
      unit: 1,
    });
    expect(drawing.flatMap((one) => (one.type === 'text' ? [one.text] : []))).toEqual([words]);
    expect(drawing.filter((one) => one.type === 'path' && one.stroke !== null)).toEqual([]);
  });

  it('stands on its plate in the report without a line in the legend, a key, or a word among the limits', () => {
    const model = buildReportModel(
      reportInput({ photos: [photo(1)], marks: [text(1, null)], findings: [finding(1)] }),
    );
    const [plate] = model.plates.plates;
    expect(plate?.marks.map(({ label, isNote: note }) => [label, note])).toEqual([['', true]]);
    expect(plate?.legend).toEqual([]);
    expect(plate?.key).toBeNull();
    expect(JSON.stringify(model)).not.toContain(reportTexts.limits.unassignedMarks(1));
    const loose = buildReportModel(
      reportInput({ photos: [photo(1)], marks: [arrow(1, 1, null, at, at)], findings: [finding(1)] }),
    );
    expect(JSON.stringify(loose)).toContain(reportTexts.limits.unassignedMarks(1));
  });
});
