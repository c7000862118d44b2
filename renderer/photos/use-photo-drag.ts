/** Photos carried within the grid by the pointer: from where it is pressed to the gap where it is let go. */
import { useEffect, useRef, useState, type PointerEvent, type RefObject } from 'react';
import type { PhotoId } from '#shared-types/ids.ts';

/** So far the pointer may stray while it only clicks, pixels. */
const slack = 6;
/** Within this of the upper or lower edge the grid scrolls under the pointer, pixels; a frame moves a quarter of it. */
const edge = 56;

type Point = { readonly x: number; readonly y: number };

export function usePhotoDrag(options: {
  enabled: boolean;
  /** The box that scrolls. */
  box: RefObject<HTMLElement | null>;
  /** The place before which something let go here would come. */
  placeAt: (point: Point) => number;
  onBegin: (id: PhotoId) => void;
  onDrop: (place: number) => void;
}) {
  const { enabled, box, placeAt, onBegin, onDrop } = options;
  const [place, setPlace] = useState<number | null>(null);
  const pressed = useRef<{ readonly at: Point; readonly id: PhotoId } | null>(null);
  const under = useRef<Point | null>(null);
  const carried = useRef(false);
  const dragging = place !== null;
  const latest = useRef(placeAt);

  useEffect(() => {
    latest.current = placeAt;
  }, [placeAt]);

  useEffect(() => {
    if (!dragging) return;
    let frame = 0;
    const scroll = () => {
      frame = requestAnimationFrame(scroll);
      const [point, shown] = [under.current, box.current];
      if (point === null || shown === null) return;
      const { top, bottom } = shown.getBoundingClientRect();
      const over = Math.min(0, point.y - top - edge) + Math.max(0, point.y - bottom + edge);
      if (over === 0) return;
      shown.scrollBy(0, over / 4);
      setPlace(latest.current(point));
    };
    frame = requestAnimationFrame(scroll);
    return () => cancelAnimationFrame(frame);
  }, [dragging, box]);

  const end = () => {
    pressed.current = null;
    under.current = null;
    setPlace(null);
  };

  return {
    /** The gap where the photos would come now; null while nothing is carried. */
    place,
    cancel: end,
    /** Whether the click that just came is only the end of a drag. */
    wasDrag: () => {
      const was = carried.current;
      carried.current = false;
      return was;
    },
    handlers: {
      onPointerDown: (event: PointerEvent<HTMLElement>) => {
        carried.current = false;
        const cell =
          event.target instanceof Element ? event.target.closest<HTMLElement>('[data-photo]') : null;
        const plain = event.button === 0 && event.pointerType !== 'touch';
        if (!enabled || !plain || cell === null || event.ctrlKey || event.shiftKey) return;
        pressed.current = { at: { x: event.clientX, y: event.clientY }, id: cell.dataset.photo as PhotoId };
      },
      onPointerMove: (event: PointerEvent<HTMLElement>) => {
        const begun = pressed.current;
        if (begun === null) return;
        const point = { x: event.clientX, y: event.clientY };
        if (!carried.current) {
          if (Math.hypot(point.x - begun.at.x, point.y - begun.at.y) < slack) return;
          carried.current = true;
          event.currentTarget.setPointerCapture(event.pointerId);
          onBegin(begun.id);
        }
        under.current = point;
        setPlace(placeAt(point));
      },
      onPointerUp: (event: PointerEvent<HTMLElement>) => {
        // What counts is where it is let go: the last move may not have been drawn yet.
        if (place !== null) onDrop(placeAt({ x: event.clientX, y: event.clientY }));
        end();
      },
      onPointerCancel: end,
    },
  };
}
