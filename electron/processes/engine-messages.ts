/** What carriers and the engine say to each other over whatever port joins them. JSON values only. */
import type { Envelope, ErrorShape } from '#shared-types/errors.ts';
import type { AppEvent } from '#shared-types/events.ts';
import type { DeliveryToken } from '#shared-types/ids.ts';
import type { LibraryName, ProgramDescription } from '#shared-types/library.ts';

import type { ExitReport } from './child-port.ts';
import type { EntryName } from './entry-table.ts';

export type EngineConfig = {
  readonly library: LibraryName;
  readonly folder: string;
  readonly carrier: ProgramDescription['carrier'];
};

/** What only a carrier may ask: it deals in paths, which no page ever sees. */
export type CarrierAsk =
  | {
      readonly ask: 'take-in';
      readonly path: string;
      readonly name: string;
      readonly bytes: number;
      readonly temporary: boolean;
    }
  /** `thumbnail/<blob id>` or `display/<blob id>` */
  | { readonly ask: 'picture'; readonly address: string }
  | { readonly ask: 'document'; readonly token: DeliveryToken };

export type ServedFile = { readonly file: string; readonly mediaType: string; readonly fileName: string };

export type ToEngine =
  | { readonly kind: 'start'; readonly config: EngineConfig }
  | { readonly kind: 'call'; readonly id: number; readonly channel: string; readonly request: unknown }
  | { readonly kind: 'ask'; readonly id: number; readonly ask: CarrierAsk }
  | { readonly kind: 'child-message'; readonly child: number; readonly message: unknown }
  | { readonly kind: 'child-exit'; readonly child: number; readonly exit: ExitReport }
  | { readonly kind: 'close' };

export type FromEngine =
  | { readonly kind: 'ready' }
  | { readonly kind: 'failed'; readonly error: ErrorShape }
  | { readonly kind: 'answer'; readonly id: number; readonly envelope: Envelope<unknown> }
  | { readonly kind: 'event'; readonly event: AppEvent }
  | { readonly kind: 'open-library'; readonly library: LibraryName }
  | { readonly kind: 'child-start'; readonly child: number; readonly entry: EntryName }
  | { readonly kind: 'child-send'; readonly child: number; readonly message: unknown }
  | { readonly kind: 'child-kill'; readonly child: number };
