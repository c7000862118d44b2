/** Keys that work wherever the keyboard is on a screen, but for text being written and open dialogs. */
import { useEffectEvent, useLayoutEffect } from 'react';
import { isBusyElsewhere } from './use-undo-keys.ts';

/**
 * By `KeyboardEvent.key`, letters in capitals: 'W', 'Shift+H', 'Ctrl+A', 'PageUp'. Shift is named with letters only:
 * what else it makes of a key is the key.
 */
export type KeyDeeds = Readonly<Record<string, () => void>>;

export function useKeys(deeds: KeyDeeds): void {
  const pressed = useEffectEvent((event: KeyboardEvent) => {
    if (event.defaultPrevented || event.altKey || isBusyElsewhere(event.target)) return;
    const deed = deeds[nameOf(event)];
    if (deed === undefined) return;
    event.preventDefault();
    deed();
  });

  // Before the screen is painted: whoever sees it may press a key.
  useLayoutEffect(() => {
    const listen = (event: KeyboardEvent) => pressed(event);
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}

function nameOf({ key, ctrlKey, metaKey, shiftKey }: KeyboardEvent): string {
  const letter = /^\p{L}$/u.test(key);
  return [
    ctrlKey || metaKey ? 'Ctrl+' : '',
    shiftKey && letter ? 'Shift+' : '',
    letter ? key.toUpperCase() : key,
  ].join('');
}
