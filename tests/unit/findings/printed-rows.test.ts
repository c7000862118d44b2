/** A finding as the printed table has it. */
import { describe, expect, test } from 'vitest';

import { findingRows, findingWords } from '#analysis/report/finding-rows.ts';
import { buildReportModel } from '#analysis/report/report-model.ts';
import type { Finding } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';

import { arrow, finding, photo, reportInput } from '../../pdf/report-case.ts';
import { turbocharger } from '../knowledge/turbocharger-file.ts';

const bent: Finding = {
  id: '00000000-0000-4000-8000-000000000001' as FindingId,
  number: 1,
  revision: 1,
  component: 'compressor-wheel',
  position: null,
  zone: 'contour-edge',
  kind: 'bent-over',
  class: 'secondary',
  presence: 'present',
  severity: 'severe',
  extent: { affected: 4, of: 6 },
  bend: { sense: 'anticlockwise', seenFrom: 'from-inlet' },
  note: '',
};
const printed = (change: Partial<Finding> = {}) =>
  findingRows([{ ...bent, ...change }], [], turbocharger)[0]!;

describe('a row of the printed table', () => {
  test('says which way blades are bent, with the side it was seen from', () => {
    expect(printed().finding).toBe(
      'bent over, severe, anticlockwise seen from the air inlet, along the axis',
    );
    expect(printed({ bend: null }).finding).toBe('bent over, severe');
    expect(findingWords(bent, turbocharger)).toContain('anticlockwise seen from the air inlet');
  });

  test('has no class, severity or bend where the damage is not there or could not be examined', () => {
    expect(printed()).toMatchObject({ class: 'secondary' });
    expect(printed().chip).not.toBeNull();
    for (const presence of ['looked-for-absent', 'not-examined'] as const) {
      expect(printed({ presence })).toMatchObject({ class: null, chip: null, finding: 'bent over' });
    }
  });
});

describe('the key under the printed table', () => {
  const keyOf = (findings: readonly Finding[], marks: ReturnType<typeof arrow>[] = []) =>
    buildReportModel(reportInput({ photos: [photo(1)], findings: [...findings], marks })).findings.key;

  test('leaves out the class of what is not there, unless a mark is drawn in it', () => {
    const absent = finding(1, { class: 'undecided', presence: 'looked-for-absent' });
    expect(keyOf([absent])).toBeNull();
    expect(keyOf([absent], [arrow(1, 1, 1, [10, 10], [50, 50])])).not.toBeNull();
    expect(keyOf([{ ...absent, presence: 'present' }])).not.toBeNull();
  });
});
