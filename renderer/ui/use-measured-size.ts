import { useCallback, useState } from 'react';
import type { Size } from '#analysis/marks/planes.ts';

/** Width and height of an element in CSS pixels, null until it has been measured; `measure` is the element's ref. */
export function useMeasuredSize(): {
  readonly size: Size | null;
  readonly measure: (element: HTMLElement | null) => (() => void) | undefined;
} {
  const [size, setSize] = useState<Size | null>(null);
  const measure = useCallback((element: HTMLElement | null) => {
    if (element === null) return undefined;
    const observer = new ResizeObserver(() => {
      setSize((known) => {
        const next = { width: element.clientWidth, height: element.clientHeight };
        return known?.width === next.width && known.height === next.height ? known : next;
      });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { size, measure };
}
