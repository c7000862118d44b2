/** In the desktop window the preload offers the carrier itself; here it only gets its name and type. */
import type { Carrier } from '#shared-types/carrier.ts';

declare global {
  interface Window {
    readonly teardownDocket?: Carrier<File>;
  }
}

/** The preload's carrier, or null in a page that runs in an ordinary browser. */
export function desktopCarrier(): Carrier<File> | null {
  return window.teardownDocket ?? null;
}
