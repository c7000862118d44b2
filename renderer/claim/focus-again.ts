import { useEffect, useRef, type RefObject } from 'react';

/**
 * Where focus goes once what had it is gone: call the answered function with the `data-focus` of an element that will
 * stand inside `place` after the next drawing.
 */
export function useFocusAgain(place: RefObject<HTMLElement | null>): (key: string) => void {
  const next = useRef<string | null>(null);
  useEffect(() => {
    if (next.current === null) return;
    const target = place.current?.querySelector<HTMLElement>(`[data-focus="${next.current}"]`);
    if (!target) return;
    next.current = null;
    target.focus();
  });
  return (key) => {
    next.current = key;
  };
}
