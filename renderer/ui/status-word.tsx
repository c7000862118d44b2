import type { ReactNode } from 'react';

export type StatusTone = 'neutral' | 'ok' | 'warn' | 'bad';

/** A state in a word. The colour only repeats what the word says. */
export function StatusWord({ tone = 'neutral', children }: { tone?: StatusTone; children: ReactNode }) {
  return <span className={`status-word status-${tone}`}>{children}</span>;
}
