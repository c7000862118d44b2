/** Single keys that work wherever the keyboard is on a screen, but for text being written and open dialogs. */
import { useEffect, useEffectEvent } from 'react';
import { isBusyElsewhere } from './use-undo-keys.ts';

/** By `KeyboardEvent.key`; letters in lower case. */
export type KeyDeeds = Readonly<Record<string, () => void>>;

export function useKeys(deeds: KeyDeeds): void {
  const pressed = useEffectEvent((event: KeyboardEvent) => {
    if (event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey) return;
    if (isBusyElsewhere(event.target)) return;
    const deed = deeds[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (deed === undefined) return;
    event.preventDefault();
    deed();
  });

  useEffect(() => {
    const listen = (event: KeyboardEvent) => pressed(event);
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}
