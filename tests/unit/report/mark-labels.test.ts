import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { markLabels } from '#analysis/report/mark-labels.ts';

import { arrow, finding, markId, photo } from '../../pdf/report-case.ts';

const at = [0, 0] as const;

describe('markLabels', () => {
  it('counts a finding’s marks through the case, photo by photo, then in drawing order', () => {
    const photos = [photo(2), photo(1)];
    const findings = [finding(7), finding(9, { class: 'secondary' })];
    const marks = [
      arrow(1, 1, 7, at, at, 0),
      arrow(2, 2, 7, at, at, 5),
      arrow(3, 2, 9, at, at, 4),
      arrow(4, 2, 7, at, at, 3),
    ];
    // Photo 2 comes first in this case: its mark of order 3, then of order 5; then photo 1.
    expect(markLabels(photos, marks, findings)).toEqual(
      new Map([
        [markId(4), 'P 7.1'],
        [markId(3), 'S 9.1'],
        [markId(2), 'P 7.2'],
        [markId(1), 'P 7.3'],
      ]),
    );
  });

  it('has a letter for each class', () => {
    const classes = ['primary', 'secondary', 'unrelated', 'undecided'] as const;
    const findings = classes.map((each, index) => finding(index + 1, { class: each }));
    const marks = classes.map((_, index) => arrow(index + 1, 1, index + 1, at, at));
    expect([...markLabels([photo(1)], marks, findings).values()]).toEqual([
      'P 1.1',
      'S 2.1',
      'U 3.1',
      '? 4.1',
    ]);
  });

  it('labels a mark without a finding with the letter alone, and does not count it', () => {
    const marks = [arrow(1, 1, null, at, at), arrow(2, 1, 1, at, at), arrow(3, 1, 44, at, at)];
    const labels = markLabels([photo(1)], marks, [finding(1)]);
    expect([labels.get(markId(1)), labels.get(markId(2)), labels.get(markId(3))]).toEqual([
      '?',
      'P 1.1',
      '?',
    ]);
  });

  it('leaves out marks of photos that are not in the case', () => {
    expect(markLabels([photo(1)], [arrow(1, 2, 1, at, at)], [finding(1)]).size).toBe(0);
  });

  it('never gives two marks of findings the same label, whatever order the marks are handed in', () => {
    const drawn = fc.record({
      photo: fc.integer({ min: 1, max: 4 }),
      finding: fc.integer({ min: 1, max: 3 }),
    });
    fc.assert(
      fc.property(fc.array(drawn, { maxLength: 20 }), fc.integer(), (places, turn) => {
        const photos = [1, 2, 3, 4].map((number) => photo(number));
        const findings = [1, 2, 3].map((number) => finding(number));
        const marks = places.map((place, index) =>
          arrow(index + 1, place.photo, place.finding, at, at, index % 3),
        );
        const labels = markLabels(photos, marks, findings);
        expect(new Set(labels.values()).size).toBe(marks.length);
        const cut = marks.length === 0 ? 0 : Math.abs(turn) % marks.length;
        const turned = [...marks.slice(cut), ...marks.slice(0, cut)];
        expect(markLabels(photos, turned, findings)).toEqual(labels);
      }),
    );
  });
});
