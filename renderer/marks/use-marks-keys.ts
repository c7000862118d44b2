/** Keys of the marks screen that work wherever the keyboard is, but for text being written and open dialogs. */
import { useEffect, useEffectEvent } from 'react';
import { isBusyElsewhere } from './use-undo-keys.ts';
import type { Tool } from './well-gesture.ts';

export type MarksKeys = {
  readonly onTool: (tool: Tool) => void;
  readonly onRemove: () => void;
  readonly onZoomIn: () => void;
  readonly onZoomOut: () => void;
  readonly onFit: () => void;
  /** −1 to the photo before, 1 to the next. */
  readonly onPhoto: (step: -1 | 1) => void;
};

export function useMarksKeys(keys: MarksKeys): void {
  const pressed = useEffectEvent((event: KeyboardEvent) => {
    if (event.defaultPrevented || isBusyElsewhere(event.target)) return;
    const act = deedOf(event, keys);
    if (act === null) return;
    event.preventDefault();
    act();
  });

  useEffect(() => {
    const listen = (event: KeyboardEvent) => pressed(event);
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, []);
}

function deedOf(event: KeyboardEvent, keys: MarksKeys): (() => void) | null {
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  if (event.altKey || event.ctrlKey || event.metaKey) return null;
  switch (key) {
    case 'v':
      return () => keys.onTool('select');
    case 'w':
      return () => keys.onTool('arrow');
    case 'Delete':
    case 'Backspace':
      return keys.onRemove;
    case '+':
    case '=':
      return keys.onZoomIn;
    case '-':
    case '−':
      return keys.onZoomOut;
    case '0':
      return keys.onFit;
    case 'PageUp':
      return () => keys.onPhoto(-1);
    case 'PageDown':
      return () => keys.onPhoto(1);
    default:
      return null;
  }
}
