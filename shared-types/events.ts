/**
 * What the engine tells every open window. Events carry a sequence number from the carrier's hub;
 * a window that missed some is told `resync` and reads everything anew.
 */
import type { CaseId } from './ids.ts';
import type { Job } from './job.ts';
import type { ErrorShape } from './errors.ts';

export type EngineState = 'starting' | 'ready' | 'restarting' | 'stopped';

export type EventMap = {
  'engine-state': { readonly state: EngineState; readonly error: ErrorShape | null };
  'job-changed': { readonly job: Job };
  /** Something of this case was written: what it was tells which lists to read again. */
  'case-changed': {
    readonly caseId: CaseId;
    readonly what: 'fields' | 'photos' | 'bench' | 'parties' | 'custody' | 'report-plan' | 'chain';
  };
  /** A case came, went or changed its place in the list. */
  'shelf-changed': Record<string, never>;
  'settings-changed': Record<string, never>;
  resync: Record<string, never>;
};
export type EventName = keyof EventMap;

export type AppEvent = {
  [Name in EventName]: { readonly name: Name; readonly payload: EventMap[Name] };
}[EventName];

export type NumberedEvent = AppEvent & { readonly sequence: number };
