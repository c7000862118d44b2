/** One handler a channel; the type refuses a channel without one and a handler without a channel. */
import { benchHandlers } from './bench-handlers.ts';
import { caseHandlers } from './case-handlers.ts';
import { chainHandlers } from './chain-handlers.ts';
import type { Handlers } from './handler-types.ts';
import { libraryHandlers } from './library-handlers.ts';
import { partyHandlers } from './party-handlers.ts';
import { photoHandlers } from './photo-handlers.ts';
import { reportHandlers } from './report-handlers.ts';
import { searchHandlers } from './search-handlers.ts';
import { workHandlers } from './work-handlers.ts';

export const handlers: Handlers = {
  ...libraryHandlers,
  ...caseHandlers,
  ...partyHandlers,
  ...benchHandlers,
  ...chainHandlers,
  ...photoHandlers,
  ...reportHandlers,
  ...searchHandlers,
  ...workHandlers,
};
