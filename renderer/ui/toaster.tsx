/**
 * Short messages at the foot of the window, read out as they come. An open dialog makes all that is outside it dead and
 * dark, so the messages stand in the topmost one: they can be read there, and their buttons reached.
 */
import { useEffect, useId, useState } from 'react';
import { create } from 'zustand';
import { AppError } from '#shared-types/errors.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { Button } from './button.tsx';
import { classNames } from './class-names.ts';

export type ToastKind = 'plain' | 'error';

type Toast = {
  readonly key: number;
  readonly kind: ToastKind;
  readonly text: string;
  /** What it speaks of: a later message of the same takes its place. */
  readonly about: string | null;
  readonly action: { readonly label: string; readonly run: () => void } | null;
};

type ToastStore = {
  readonly toasts: readonly Toast[];
  readonly next: number;
  /** Where messages can stand, the one to stand in last. */
  readonly places: readonly string[];
};

const useToasts = create<ToastStore>(() => ({ toasts: [], next: 1, places: [] }));

/** Long enough for a sentence of twenty words; a message that one can do something with has to be reached as well. */
const shownForMs = 5_000;
const shownWithActionForMs = 20_000;
const mostAtOnce = 4;

type ToastOptions = {
  readonly kind?: ToastKind;
  readonly about?: string;
  readonly action?: { readonly label: string; readonly run: () => void };
};

/** Says something briefly; with an action for longer. An error stays until it is dismissed. */
export function toast(text: string, { kind = 'plain', about, action }: ToastOptions = {}): void {
  useToasts.setState(({ toasts, next }) => {
    const added: Toast = { key: next, kind, text, about: about ?? null, action: action ?? null };
    const others = toasts.filter(
      (other) => other.text !== text && (about === undefined || other.about !== about),
    );
    return { toasts: [...others, added].slice(-mostAtOnce), next: next + 1 };
  });
}

/** Says what went wrong: the sentence of an AppError, or that the program did not expect it. */
export function toastError(error: unknown): void {
  toast(error instanceof AppError ? error.message : shellTexts.unexpected, { kind: 'error' });
}

function dismiss(key: number): void {
  useToasts.setState(({ toasts }) => ({ toasts: toasts.filter((other) => other.key !== key) }));
}

const noToasts: readonly Toast[] = [];

/** Stands once in the shell, and once in every open dialog. */
export function Toaster() {
  const place = useId();
  const toasts = useToasts((store) => (store.places.at(-1) === place ? store.toasts : noToasts));

  useEffect(() => {
    useToasts.setState(({ places }) => ({ places: [...places, place] }));
    return () => {
      useToasts.setState(({ places }) => ({ places: places.filter((other) => other !== place) }));
    };
  }, [place]);

  return (
    <section className="toaster" aria-label={commonTexts.messages}>
      <div role="status" aria-live="polite">
        {toasts
          .filter((one) => one.kind === 'plain')
          .map((one) => (
            <ToastCard key={one.key} toast={one} />
          ))}
      </div>
      <div role="alert">
        {toasts
          .filter((one) => one.kind === 'error')
          .map((one) => (
            <ToastCard key={one.key} toast={one} />
          ))}
      </div>
    </section>
  );
}

function ToastCard({ toast: shown }: { toast: Toast }) {
  const [held, setHeld] = useState(false);
  const goesByItself = shown.kind === 'plain' && !held;

  useEffect(() => {
    if (!goesByItself) return;
    const after = shown.action === null ? shownForMs : shownWithActionForMs;
    const timer = window.setTimeout(() => dismiss(shown.key), after);
    return () => window.clearTimeout(timer);
  }, [goesByItself, shown.key, shown.action]);

  return (
    <div
      className={classNames('toast', `toast-${shown.kind}`)}
      onPointerEnter={() => setHeld(true)}
      onPointerLeave={() => setHeld(false)}
      onFocus={() => setHeld(true)}
      onBlur={() => setHeld(false)}
    >
      <p>{shown.text}</p>
      {shown.action === null ? null : (
        <Button
          kind="quiet"
          onClick={() => {
            shown.action?.run();
            dismiss(shown.key);
          }}
        >
          {shown.action.label}
        </Button>
      )}
      <Button kind="quiet" aria-label={commonTexts.dismiss} onClick={() => dismiss(shown.key)}>
        ×
      </Button>
    </div>
  );
}
