/** Breaks of what the claim station reads, checks and keeps. */
import type { Break } from './break.ts';

export const claimBreaks: readonly Break[] = [
  {
    breaks: 'the question about a number that can be two',
    file: 'analysis/text/typed-number.ts',
    find: '/^[1-9]\\d{0,2}[.,]\\d{3}$/.test(figures)',
    replace: '/^[1-9]\\d{0,2}[.,]\\d{3}$/.test(`${figures}0`)',
    reddens: { file: 'unit/text/typed-number.test.ts', test: '1,234 can be read in two ways' },
  },
  {
    breaks: 'the patience with what can be read in two ways',
    file: 'renderer/claim/field-keeper.ts',
    find: "return kind === 'understood' || kind === 'nothing';",
    replace: "return kind !== 'wrong';",
    reddens: { file: 'unit/claim/field-keeper.test.ts', test: 'waits where it can be read in two ways' },
  },
  {
    breaks: 'the trigger that keeps custody from being rewritten',
    file: 'migrations/0002-daily-ground.sql',
    find: 'WHEN OLD.struck_at IS NOT NULL OR NEW.struck_at IS NULL\n',
    replace: 'WHEN OLD.struck_at IS NOT NULL\n',
    reddens: { file: 'database/custody.test.ts', test: 'to rewrite an entry: revision' },
  },
  {
    breaks: 'the refusal of a photo of another case',
    file: 'electron/services/case-work.ts',
    find: 'caseOfPhoto(services.db, photoId) !== caseId',
    replace: 'caseOfPhoto(services.db, photoId).length === 0',
    reddens: { file: 'database/case-observations.test.ts', test: 'name photos of this very case' },
  },
  {
    breaks: 'the blindness to struck entries',
    file: 'analysis/custody/custody-gaps.ts',
    find: 'filter((entry) => entry.struck === null)',
    replace: 'filter((entry) => entry.revision > 0)',
    reddens: { file: 'unit/custody/custody-gaps.test.ts', test: 'a struck entry counts for nothing' },
  },
];
