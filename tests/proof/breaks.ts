/**
 * One-line breaks of the program, each with a test that it must redden: a break that no test notices is a promise that
 * no test keeps. `npm run proof` carries them out, one at a time, in a copy of the tree.
 */
import type { Break } from './break.ts';
import { carrierBreaks } from './carrier-breaks.ts';
import { chainBreaks } from './chain-breaks.ts';
import { claimBreaks } from './claim-breaks.ts';
import { findingBreaks } from './finding-breaks.ts';
import { libraryBreaks } from './library-breaks.ts';
import { markBreaks } from './mark-breaks.ts';
import { photoBreaks } from './photo-breaks.ts';
import { pictureBreaks } from './picture-breaks.ts';
import { processBreaks } from './process-breaks.ts';
import { measureBreaks } from './measure-breaks.ts';
import { reportBreaks } from './report-breaks.ts';
import { searchBreaks } from './search-breaks.ts';

export const breaks: readonly Break[] = [
  ...carrierBreaks,
  ...processBreaks,
  ...libraryBreaks,
  ...pictureBreaks,
  ...claimBreaks,
  ...photoBreaks,
  ...markBreaks,
  ...findingBreaks,
  ...chainBreaks,
  ...measureBreaks,
  ...reportBreaks,
  ...searchBreaks,
];
