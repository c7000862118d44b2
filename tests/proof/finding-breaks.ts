/** Breaks of what findings are held against: each other, the rotation, their history. */
import type { Break } from './break.ts';

export const findingBreaks: readonly Break[] = [
  {
    breaks: 'the mirror between the two ends of the axis',
    file: 'analysis/rotation/turning.ts',
    find: 'return seenAt === wanted ? turning.sense : mirrored(turning.sense);',
    replace: 'return turning.sense;',
    reddens: { file: 'unit/rotation/turning.test.ts', test: 'anticlockwise seen from the exhaust outlet' },
  },
  {
    breaks: 'that an unknown place only may be the same',
    file: 'analysis/findings/conflicts.ts',
    find: "if (one === null || other === null) return 'maybe';",
    replace: "if (one === null || other === null) return 'same';",
    reddens: { file: 'unit/findings/conflicts.test.ts', test: 'only may be, where one does not say' },
  },
  {
    breaks: 'that a wider kind denied answers for its cases',
    file: 'analysis/findings/expectations.ts',
    find: 'family: widestOf(known, finding.kind)',
    replace: 'family: finding.kind',
    reddens: {
      file: 'unit/findings/expectations.test.ts',
      test: 'is what a mark asking for that place would be',
    },
  },
  {
    breaks: 'the class history of removed findings',
    file: 'electron/database/repositories/findings.ts',
    find: 'FROM finding_number n JOIN finding_class_change h ON h.finding_uuid = n.finding_uuid',
    replace: 'FROM finding n JOIN finding_class_change h ON h.finding_uuid = n.uuid',
    reddens: { file: 'database/class-history.test.ts', test: 'that was removed since' },
  },
  {
    breaks: 'that what is not there does not hold the station open',
    file: 'renderer/app/station-state.ts',
    find: "one.presence !== 'present' || one.class",
    replace: 'one.class',
    reddens: { file: 'unit/app/station-state.test.ts', test: 'do not hold the station open' },
  },
  {
    breaks: 'that what is to settle holds the station of findings open',
    file: 'renderer/app/station-state.ts',
    find: 'const settled = contents?.toSettle === false;',
    replace: 'const settled = true;',
    reddens: { file: 'unit/app/station-state.test.ts', test: 'while something is to settle' },
  },
  {
    breaks: 'that nothing can have been seen on a part that was not there',
    file: 'analysis/findings/conflicts.ts',
    find: "finding.presence === 'present' && saysMissing(finding)",
    replace: 'false',
    reddens: {
      file: 'unit/findings/conflicts.test.ts',
      test: 'is in conflict with what was or was not seen',
    },
  },
  {
    breaks: 'that a bend is held against what its kind says',
    file: 'analysis/findings/conflicts.ts',
    find: "return reads !== 'not-decided' && reads !== said;",
    replace: 'return false;',
    reddens: { file: 'unit/findings/conflicts.test.ts', test: 'is in conflict with a bend that goes' },
  },
];
