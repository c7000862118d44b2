/** Breaks of what the photos station keeps: order, removal with its reason, what is shown of a long list. */
import type { Break } from './break.ts';

export const photoBreaks: readonly Break[] = [
  {
    breaks: 'the places of photos taken out',
    file: 'electron/database/repositories/photo-order.ts',
    find: 'FROM photo WHERE case_row = ? ORDER BY',
    replace: 'FROM photo WHERE case_row = ? AND removed_at IS NULL ORDER BY',
    reddens: { file: 'database/photos-order.test.ts', test: 'stays an order of all' },
  },
  {
    breaks: 'that marks on photos taken out do not hold a finding',
    file: 'electron/database/repositories/findings.ts',
    find: 'WHERE m.finding_row = ? AND p.removed_at IS NULL',
    replace: 'WHERE m.finding_row = ?',
    reddens: { file: 'database/photos-many.test.ts', test: 'does not hold a finding' },
  },
  {
    breaks: 'the refusal of a mark on a photo taken out',
    file: 'electron/services/bench-work.ts',
    find: '      refuseTakenOut(db, mark.photoId);\n',
    replace: '',
    reddens: { file: 'database/photos-many.test.ts', test: 'neither described, moved' },
  },
  {
    breaks: 'that a picture dropped again is put back',
    file: 'electron/services/photo-import.ts',
    find: 'here !== null && readRemoval(db, here.id) === null',
    replace: 'here !== null',
    reddens: { file: 'database/photos-dropped-again.test.ts', test: 'is put back when' },
  },
  {
    breaks: 'the side of the earth a camera stood on',
    file: 'electron/images/camera-place.ts',
    find: 'return side === minus && size > 0 ? -size : size;',
    replace: 'return size;',
    reddens: { file: 'database/photos-camera-place.test.ts', test: 'as exiftool reads it' },
  },
  {
    breaks: 'the row in which the keyboard stands, far from sight',
    file: 'renderer/photos/photo-grid.tsx',
    find: 'withRow(defaultRangeExtractor(range), activeRow)',
    replace: 'defaultRangeExtractor(range)',
    reddens: { file: 'browser/thousand-photos.test.ts', test: 'walked by keys' },
  },
];
