import type { ReactNode } from 'react';

/** A key as its cap. */
export function Kbd({ children }: { children: ReactNode }) {
  return <kbd className="kbd">{children}</kbd>;
}
