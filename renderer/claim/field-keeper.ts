/**
 * Keeps what is written into a case's fields until it is saved, and notices when somebody else wrote there too.
 * One save is on its way at a time; it carries every field that changed since. Plain state without React:
 * time and the way to the library are handed in.
 */
import type { CaseFields, TeardownCase } from '#shared-types/case.ts';
import { AppError } from '#shared-types/errors.ts';
import { fieldNames, flatFields, requestFields, type FieldName, type FlatFields } from './case-field.ts';
import {
  isTypedName,
  readingOf,
  type TypedName,
  type TypedReadings,
  type TypedValue,
  writtenOf,
} from './service-text.ts';

/** `unfinished`: something stands in a field that cannot be saved as it is; the field says why. */
export type SavingState = 'saved' | 'waiting' | 'unfinished' | 'failed' | 'conflict';

export type Conflict = { readonly field: FieldName; readonly theirs: string };

export type KeeperView = {
  /** What the fields show. */
  readonly values: FlatFields;
  /** What is understood of those that are typed freely. */
  readonly readings: TypedReadings;
  readonly saving: SavingState;
  readonly conflicts: readonly Conflict[];
  /** Why the last save failed; null once one went through. */
  readonly error: unknown;
  /** Why the number that stands there was refused; null once another is written. */
  readonly numberRefused: AppError | null;
};

export type KeeperMeans = {
  readonly send: (revision: number, fields: Partial<CaseFields>) => Promise<TeardownCase>;
  readonly readAgain: () => Promise<TeardownCase>;
  /** Runs something after the pause in typing; answers what calls it off. */
  readonly afterPause: (run: () => void) => () => void;
};

export type FieldKeeper = ReturnType<typeof createFieldKeeper>;

export function createFieldKeeper(first: TeardownCase, means: KeeperMeans) {
  let known = first;
  /** What is written here: shown instead of what is known, until saved and left. */
  const drafts = new Map<FieldName, string>();
  /** Drafts not saved yet, with what the library held when writing began. */
  const unsaved = new Map<FieldName, string>();
  const conflicts = new Map<FieldName, string>();
  /** Drafts that stand as the program writes them, after whoever typed them chose what was meant. */
  const settled = new Set<FieldName>();
  let sending: Promise<void> | null = null;
  /** What was heard of the case while a save was on its way. */
  let heard: TeardownCase | null = null;
  let error: unknown = null;
  let numberRefused: AppError | null = null;
  let callOff: (() => void) | null = null;
  const listeners = new Set<() => void>();
  let view = makeView();

  function makeView(): KeeperView {
    const values = { ...flatFields(known), ...Object.fromEntries(drafts) } as FlatFields;
    const list = [...conflicts].map(([field, theirs]) => ({ field, theirs }));
    const readings = {
      fittedOn: understoodOf('fittedOn'),
      failedOn: understoodOf('failedOn'),
      timeInService: understoodOf('timeInService'),
      runningHours: understoodOf('runningHours'),
    };
    return { values, readings, saving: savingState(), conflicts: list, error, numberRefused };
  }

  function savingState(): SavingState {
    if (conflicts.size > 0) return 'conflict';
    if (error !== null || numberRefused !== null) return 'failed';
    if (sending !== null || [...unsaved.keys()].some(isSendable)) return 'waiting';
    return unsaved.size > 0 ? 'unfinished' : 'saved';
  }

  /** What stands in a typed field, as the library has it or as it was typed. */
  function understoodOf<Name extends TypedName>(name: Name) {
    const written = flatFields(known)[name];
    const text = drafts.get(name) ?? written;
    return readingOf(name, text, settled.has(name) || text === written);
  }

  /** A draft as the library would give it back, as far as that can be said. */
  function asWritten(field: FieldName): string {
    const text = drafts.get(field) ?? '';
    if (!isTypedName(field)) return text;
    const reading = understoodOf(field);
    if (reading.kind !== 'understood') return reading.kind === 'nothing' ? '' : text;
    return writtenOf(field, reading.value);
  }

  function show(): void {
    view = makeView();
    for (const listener of listeners) listener();
  }

  /** Takes in the case as the library has it now; while a save is on its way, after it. */
  function adopt(now: TeardownCase): void {
    if (sending === null) compareWith(now);
    else heard = now;
  }

  function compareWith(now: TeardownCase): void {
    if (now.revision < known.revision) return;
    const before = flatFields(known);
    const after = flatFields(now);
    known = now;
    for (const field of fieldNames) {
      const began = unsaved.get(field);
      if (began === undefined) {
        if (before[field] !== after[field]) drafts.delete(field);
      } else if (after[field] !== began && after[field].trim() !== asWritten(field).trim()) {
        conflicts.set(field, after[field]);
      }
    }
    show();
  }

  function edit(field: FieldName, value: string): void {
    if (!unsaved.has(field)) unsaved.set(field, flatFields(known)[field]);
    drafts.set(field, value);
    settled.delete(field);
    if (field === 'number') numberRefused = null;
    callOff?.();
    callOff = means.afterPause(() => void flush());
    show();
  }

  /** One of a list was chosen: there is no next key to wait for. */
  function choose(field: FieldName, value: string): Promise<void> {
    edit(field, value);
    return flush();
  }

  /** Whoever typed it said which of two readings was meant. */
  function settle<Name extends TypedName>(field: Name, value: TypedValue[Name]): Promise<void> {
    edit(field, writtenOf(field, value));
    settled.add(field);
    return flush();
  }

  /** The field was left: what is saved is shown as the library has it, trimmed. */
  function leave(field: FieldName): Promise<void> {
    return flush().then(() => {
      if (!unsaved.has(field)) drafts.delete(field);
      show();
    });
  }

  /** Saves what is not saved yet. Never throws: what went wrong stands in the view. */
  async function flush(): Promise<void> {
    callOff?.();
    callOff = null;
    while (sending !== null) await sending;
    const fields = [...unsaved.keys()].filter(isSendable);
    if (fields.length === 0) return;
    sending = send(fields);
    show();
    await sending;
  }

  /**
   * A case keeps its last number until another one is there that is free, and what is typed waits until it can be
   * read in one way only.
   */
  function isSendable(field: FieldName): boolean {
    if (conflicts.has(field)) return false;
    if (isTypedName(field)) {
      const { kind } = understoodOf(field);
      return kind === 'understood' || kind === 'nothing';
    }
    return field !== 'number' || (numberRefused === null && drafts.get('number')?.trim() !== '');
  }

  async function send(fields: readonly FieldName[]): Promise<void> {
    const sent = new Map(fields.map((field) => [field, drafts.get(field) ?? '']));
    const written = new Map(fields.map((field) => [field, asWritten(field)]));
    try {
      const now = await means.send(known.revision, requestFields(known, written));
      error = null;
      for (const [field, value] of sent) {
        const stored = flatFields(now)[field];
        if (drafts.get(field) !== value) {
          unsaved.set(field, stored);
          continue;
        }
        unsaved.delete(field);
        // What stands in the library to the letter needs no draft, which would hide what it becomes later.
        if (stored === value) drafts.delete(field);
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

  /** A stale revision is no conflict as long as the others wrote into other fields: then it is sent once more. */
  async function takeRefusal(refused: unknown): Promise<void> {
    const code = refused instanceof AppError ? refused.code : null;
    if (refused instanceof AppError && code === 'case-number-taken') {
      numberRefused = refused;
      trySoon();
    } else if (code === 'stale-revision') {
      try {
        compareWith(await means.readAgain());
        trySoon();
      } catch (unread) {
        error = unread;
      }
    } else {
      error = refused;
    }
  }

  function trySoon(): void {
    callOff ??= means.afterPause(() => void flush());
  }

  function resolve(field: FieldName, choice: 'mine' | 'theirs'): Promise<void> {
    conflicts.delete(field);
    if (choice === 'theirs') {
      drafts.delete(field);
      unsaved.delete(field);
    } else {
      unsaved.set(field, flatFields(known)[field]);
    }
    show();
    return flush();
  }

  return {
    adopt,
    edit,
    choose,
    settle,
    leave,
    flush,
    resolve,
    view: () => view,
    /** What stands in typed fields and cannot be saved as it is: shown again when the screen comes back. */
    unfinished: () =>
      new Map(
        [...unsaved.keys()]
          .filter(isTypedName)
          .filter((name) => !isSendable(name))
          .map((name) => [name, drafts.get(name) ?? '']),
      ),
    /** The revision that a change outside of these fields has to name. */
    revision: () => known.revision,
    listen(listener: () => void) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}
