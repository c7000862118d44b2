/** What becomes of a picture, on screen and on paper. */
import type { Break } from './break.ts';

export const pictureBreaks: readonly Break[] = [
  {
    breaks: 'the setting upright of a picture',
    file: 'electron/images/decode-picture.ts',
    find: '    .autoOrient()\n',
    replace: '',
    reddens: { file: 'unit/images/decode-picture.test.ts', test: 'row 0 is at the' },
  },
  {
    breaks: 'the limit of megapixels',
    file: 'electron/images/picture-limits.ts',
    find: 'megapixelsByRows: 250,',
    replace: 'megapixelsByRows: 5_000,',
    reddens: { file: 'unit/images/sniff.test.ts', test: 'before anything is decoded' },
  },
  {
    breaks: 'the limit of a file’s size',
    file: 'electron/images/picture-limits.ts',
    find: 'megabytes: 200,',
    replace: 'megabytes: 2_000,',
    reddens: { file: 'unit/images/sniff.test.ts', test: 'a file of more than 200 MB' },
  },
  {
    breaks: 'the silence about the place: a photo tells where it was taken',
    file: 'electron/database/repositories/photos.ts',
    find: 'b.taken_precision, b.camera,',
    replace: "b.taken_precision, b.camera || coalesce(b.gps, '') AS camera,",
    reddens: { file: 'contract/host-guard-place.test.ts', test: 'no answer of any other channel' },
  },
  {
    breaks: 'the silence about the place: a picture that is served carries what the camera wrote',
    file: 'electron/services/picture-shelf.ts',
    find: 'file: services.store.derivativePath(picture.sha256, kindWord),',
    replace: 'file: services.store.originalPath(picture.sha256),',
    reddens: { file: 'contract/host-guard-place.test.ts', test: 'no picture that the page is given' },
  },
  {
    breaks: 'the tip: an arrow’s head ends short of it',
    file: 'analysis/marks/arrow-head.ts',
    find: '    tip,\n    behind(tip, direction, headLength * unit, headHalfWidth * unit),',
    replace:
      '    behind(tip, direction, unit, 0),\n    behind(tip, direction, headLength * unit, headHalfWidth * unit),',
    reddens: { file: 'unit/marks/mark-to-drawing.test.ts', test: 'is a corner of the head in exact' },
  },
  {
    breaks: 'the white round a mark: it paints past the tip',
    file: 'analysis/marks/arrow-head.ts',
    find: 'const front = -width;',
    replace: 'const front = -2 * width;',
    reddens: { file: 'unit/marks/mark-to-drawing.test.ts', test: 'no more than half a line of white' },
  },
  {
    breaks: 'the agreement of label and table: the ordinal',
    file: 'analysis/report/mark-labels.ts',
    find: 'const ordinal = (counts.get(finding.id) ?? 0) + 1;',
    replace: 'const ordinal = (counts.get(finding.id) ?? 1) + 1;',
    reddens: { file: 'unit/report/mark-labels.test.ts', test: 'counts a finding’s marks' },
  },
];
