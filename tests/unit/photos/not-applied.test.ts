import { describe, expect, it } from 'vitest';
import {
  goesAlong,
  nothingTogether,
  stillApplicable,
  type Unapplied,
} from '../../../renderer/photos/said-together.ts';
import { photoId } from '../../pdf/report-case.ts';

const ids = (...numbers: number[]) => numbers.map((number) => photoId(number));
const waiting: Unapplied = { photoIds: ids(1, 2, 3), draft: { ...nothingTogether, stage: 'cleaned' } };

describe('what was chosen for several photos and not applied', () => {
  it('goes along with the same several and some more, or some of them', () => {
    expect(goesAlong(waiting, ids(1, 2, 3, 4))).toBe(true);
    expect(goesAlong(waiting, ids(2, 3))).toBe(true);
  });

  it('stays with its photos when one, none or others are chosen', () => {
    for (const chosen of [ids(), ids(2), ids(4, 5), ids(1, 2, 4), ids(3, 4, 5)]) {
      expect(goesAlong(waiting, chosen)).toBe(false);
    }
  });

  it('holds for those still in the case, and ends with the last of them or with nothing said', () => {
    expect(stillApplicable(waiting, ids(3, 9, 1))).toEqual({ ...waiting, photoIds: ids(1, 3) });
    expect(stillApplicable(waiting, ids(9))).toBeNull();
    expect(stillApplicable({ ...waiting, draft: nothingTogether }, ids(1, 2, 3))).toBeNull();
  });
});
