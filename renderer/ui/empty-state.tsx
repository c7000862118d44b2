import type { ReactNode } from 'react';

/** An empty place: what belongs here, and how to begin. */
export function EmptyState({
  title,
  children,
  actions,
}: {
  title: string;
  children?: ReactNode;
  actions?: ReactNode;
}) {
  return (
    <section className="state-place">
      <h2>{title}</h2>
      {children === undefined ? null : <div className="state-words">{children}</div>}
      {actions === undefined ? null : <div className="state-actions">{actions}</div>}
    </section>
  );
}
