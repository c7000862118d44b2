/**
 * Keeps what is written into a report's plan until it is saved, and notices when somebody else wrote there too. One save
 * is on its way at a time. Plain state without React: time and the way to the library are handed in.
 */
import { AppError } from '#shared-types/errors.ts';
import type { OwnSection, ReportPlan, ReportPlanFields } from '#shared-types/report-plan.ts';

export type PlanField = keyof ReportPlanFields;
const planFields: readonly PlanField[] = ['platesAPage', 'printCameraPlaces', 'sections'];

export type PlanSaving = 'saved' | 'waiting' | 'failed' | 'conflict';

export type PlanView = {
  /** What the panel shows. */
  readonly fields: ReportPlanFields;
  readonly saving: PlanSaving;
  /** What the library has of the sections, where both they and these were changed. */
  readonly theirs: readonly OwnSection[] | null;
  /** Why the last save failed; null once one went through. */
  readonly error: unknown;
};

export type PlanMeans = {
  readonly send: (revision: number, fields: Partial<ReportPlanFields>) => Promise<ReportPlan>;
  readonly readAgain: () => Promise<ReportPlan>;
  /** Runs something after the pause in typing; answers what calls it off. */
  readonly afterPause: (run: () => void) => () => void;
};

export type PlanKeeper = ReturnType<typeof createPlanKeeper>;

export function createPlanKeeper(first: ReportPlan, means: PlanMeans) {
  let known = first;
  /** What is written here: shown instead of what is known, until it is saved and left. */
  let drafts: Partial<ReportPlanFields> = {};
  /** Drafts not saved yet, with what the library held when writing began. */
  const unsaved = new Map<PlanField, unknown>();
  let theirs: readonly OwnSection[] | null = null;
  let sending: Promise<void> | null = null;
  let heard: ReportPlan | null = null;
  let error: unknown = null;
  let callOff: (() => void) | null = null;
  const listeners = new Set<() => void>();
  let view = makeView();

  function makeView(): PlanView {
    const { platesAPage, printCameraPlaces, sections } = known;
    const fields = { platesAPage, printCameraPlaces, sections, ...drafts };
    return { fields, saving: savingState(), theirs, error };
  }

  function savingState(): PlanSaving {
    if (theirs !== null) return 'conflict';
    if (error !== null) return 'failed';
    return sending !== null || unsaved.size > 0 ? 'waiting' : 'saved';
  }

  function show(): void {
    view = makeView();
    for (const listener of listeners) listener();
  }

  /** What is typed is saved after a pause, what is chosen at once. */
  function edit(fields: Partial<ReportPlanFields>, when: 'after a pause' | 'at once'): void {
    for (const field of planFields) {
      if (field in fields && !unsaved.has(field)) unsaved.set(field, known[field]);
    }
    drafts = { ...drafts, ...fields };
    callOff?.();
    callOff = null;
    if (when === 'at once') void flush();
    else callOff = means.afterPause(() => void flush());
    show();
  }

  /** Takes in the plan as the library has it now; while a save is on its way, after it. */
  function adopt(now: ReportPlan): void {
    if (sending !== null) {
      heard = now;
      return;
    }
    compareWith(now);
    show();
  }

  function compareWith(now: ReportPlan): void {
    if (now.revision <= known.revision) return;
    const before = known;
    known = now;
    for (const field of planFields) {
      if (!unsaved.has(field)) {
        if (!alike(before[field], now[field])) drop(field);
      } else if (
        field === 'sections' &&
        !alike(now.sections, unsaved.get('sections')) &&
        !alike(now.sections, asWritten(drafts.sections ?? []))
      ) {
        theirs = now.sections;
      }
    }
  }

  function drop(field: PlanField): void {
    const { [field]: _dropped, ...rest } = drafts;
    drafts = rest;
  }

  /** The field was left: what is saved is shown as the library has it, trimmed. */
  async function leave(): Promise<void> {
    await flush();
    for (const field of planFields) if (!unsaved.has(field)) drop(field);
    show();
  }

  /** Saves what is not saved yet. Never throws: what went wrong stands in the view. */
  async function flush(): Promise<void> {
    callOff?.();
    callOff = null;
    while (sending !== null) await sending;
    if (unsaved.size === 0 || theirs !== null) return;
    const fields = Object.fromEntries(
      [...unsaved.keys()].map((field) => [field, drafts[field]]),
    ) as Partial<ReportPlanFields>;
    sending = send(fields);
    show();
    await sending;
  }

  async function send(fields: Partial<ReportPlanFields>): Promise<void> {
    try {
      const now = await means.send(known.revision, fields);
      error = null;
      for (const field of planFields) {
        if (!(field in fields)) continue;
        if (drafts[field] !== fields[field]) {
          unsaved.set(field, now[field]);
          continue;
        }
        unsaved.delete(field);
        // What stands in the library to the letter needs no draft, which would hide what it becomes later.
        if (alike(now[field], fields[field])) drop(field);
      }
      known = now;
    } catch (refused) {
      await takeRefusal(refused);
    } finally {
      sending = null;
      if (heard !== null) compareWith(heard);
      heard = null;
      show();
    }
  }

  /** A stale revision is no conflict as long as the others changed something else: then it is sent once more. */
  async function takeRefusal(refused: unknown): Promise<void> {
    if (!(refused instanceof AppError) || refused.code !== 'stale-revision') {
      error = refused;
      return;
    }
    try {
      compareWith(await means.readAgain());
      callOff ??= means.afterPause(() => void flush());
    } catch (unread) {
      error = unread;
    }
  }

  function resolve(choice: 'mine' | 'theirs'): Promise<void> {
    theirs = null;
    if (choice === 'theirs') {
      drop('sections');
      unsaved.delete('sections');
    } else unsaved.set('sections', known.sections);
    show();
    return flush();
  }

  return {
    adopt,
    edit,
    leave,
    flush,
    resolve,
    view: () => view,
    listen(listener: () => void) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}

/** As the library gives sections back: headings trimmed. */
function asWritten(sections: readonly OwnSection[]): OwnSection[] {
  return sections.map((section) => ({ ...section, heading: section.heading.trim() }));
}

function alike(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
