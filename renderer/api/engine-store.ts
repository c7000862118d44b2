/** Whether the process that holds the library is there to answer. Filled by event-intake.ts. */
import { create } from 'zustand';
import type { ErrorShape } from '#shared-types/errors.ts';
import type { EngineState } from '#shared-types/events.ts';

type EngineStore = {
  readonly state: EngineState;
  readonly error: ErrorShape | null;
  /** It was asked to open the other library, and ends and starts for that. */
  readonly switching: boolean;
};

export const useEngineStore = create<EngineStore>(() => ({ state: 'ready', error: null, switching: false }));
