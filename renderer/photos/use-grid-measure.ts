/** How the grid's cells fit into the room it has, in the reader's own text size. */
import { useCallback, useEffect, useRef, useState } from 'react';

export type GridMeasure = {
  readonly columns: number;
  readonly cellWidth: number;
  readonly pictureHeight: number;
  readonly cellHeight: number;
  readonly rowsInSight: number;
};

/** Between cells, pixels: --s3. */
export const gridGap = 12;
/** A cell's border on both sides, pixels. */
const borders = 2;

type Room = { readonly width: number; readonly height: number };
const noRoom: Room = { width: 0, height: 0 };

function measured(room: Room, least: Room): GridMeasure | null {
  if (room.width === 0 || least.width === 0) return null;
  const columns = Math.max(1, Math.floor((room.width + gridGap) / (least.width + gridGap)));
  const cellWidth = Math.floor((room.width - (columns - 1) * gridGap) / columns);
  const pictureHeight = Math.round(((cellWidth - borders) * 3) / 4);
  const cellHeight = pictureHeight + Math.ceil(least.height) + borders;
  const rowsInSight = Math.floor((room.height + gridGap) / (cellHeight + gridGap));
  return { columns, cellWidth, pictureHeight, cellHeight, rowsInSight };
}

/**
 * `room` is for the box that scrolls, `least` for an element as wide as the narrowest cell and as high as the words
 * under its picture. The measure is null until both have been seen.
 */
export function useGridMeasure(): {
  readonly measure: GridMeasure | null;
  readonly room: (element: HTMLElement | null) => void;
  readonly least: (element: HTMLElement | null) => void;
} {
  const [sizes, setSizes] = useState({ room: noRoom, least: noRoom });
  const observer = useRef<ResizeObserver | null>(null);
  const watched = useRef(new Map<Element, 'room' | 'least'>());

  useEffect(() => {
    const seen = new ResizeObserver((entries) => {
      for (const { target, contentRect } of entries) {
        const which = watched.current.get(target);
        if (which === undefined) continue;
        const { width, height } = contentRect;
        setSizes((now) =>
          now[which].width === width && now[which].height === height
            ? now
            : { ...now, [which]: { width, height } },
        );
      }
    });
    observer.current = seen;
    for (const element of watched.current.keys()) seen.observe(element);
    return () => {
      observer.current = null;
      seen.disconnect();
    };
  }, []);

  const watch = useCallback((which: 'room' | 'least', element: HTMLElement | null) => {
    if (element === null) return;
    watched.current.set(element, which);
    observer.current?.observe(element);
  }, []);
  const room = useCallback((element: HTMLElement | null) => watch('room', element), [watch]);
  const least = useCallback((element: HTMLElement | null) => watch('least', element), [watch]);

  return { measure: measured(sizes.room, sizes.least), room, least };
}
