/** Ctrl+Z, Ctrl+Shift+Z and Ctrl+Y, but for text being written (the browser undoes there) and open dialogs. */
import { useEffectEvent, useLayoutEffect } from 'react';

export function useUndoKeys(onUndo: () => void, onRedo: () => void): void {
  const pressed = useEffectEvent((event: KeyboardEvent) => {
    if (event.defaultPrevented || event.altKey || !(event.ctrlKey || event.metaKey)) return;
    if (isBusyElsewhere(event.target)) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) onRedo();
    else onUndo();
  });

  // Before the screen is painted: whoever sees it may press a key.
  useLayoutEffect(() => {
    const listen = (event: KeyboardEvent) => pressed(event);
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}

/** A dialog is open, or a control takes the keys itself. */
export function isBusyElsewhere(target: EventTarget | null): boolean {
  if (document.querySelector('dialog[open]') !== null) return true;
  return (
    target instanceof HTMLElement && target.closest('input:not([type=radio]), textarea, select') !== null
  );
}
