/** What stands in an open form outlives a change of station: it is kept while the window is open, until sent or dropped. */
import { useState } from 'react';

const drafts = new Map<string, unknown>();

export function isDraftKept(key: string): boolean {
  return drafts.has(key);
}

export function dropDraft(key: string): void {
  drafts.delete(key);
}

/** As useState; with a key, what is written is there again when the form is opened the next time. */
export function useKeptDraft<Draft>(
  key: string | null,
  empty: Draft,
): [Draft, (change: (now: Draft) => Draft) => void] {
  const [draft, setDraft] = useState<Draft>(() =>
    key !== null && drafts.has(key) ? (drafts.get(key) as Draft) : empty,
  );
  const change = (how: (now: Draft) => Draft) => {
    setDraft((now) => {
      const next = how(now);
      if (key !== null) drafts.set(key, next);
      return next;
    });
  };
  return [draft, change];
}
