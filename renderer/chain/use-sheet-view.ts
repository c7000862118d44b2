/** How the figure lies in its well: to be read from its causes on, until the user fits, zooms or moves it. */
import { useCallback, useMemo, useState } from 'react';
import type { Box } from '#analysis/chain/chain-layout.ts';
import {
  bringIntoSight,
  clampView,
  fitView,
  imagePoint,
  pan,
  screenPoint,
  zoomAbout,
  type Size,
  type View,
} from '#analysis/marks/planes.ts';
import type { ScreenPoint } from '#shared-types/points.ts';
import { useMeasuredSize } from '../ui/use-measured-size.ts';

export type SheetView = {
  /** Null until the well has been measured. CSS pixels per point of the figure. */
  readonly view: View | null;
  readonly measure: (element: HTMLElement | null) => (() => void) | undefined;
  readonly fit: () => void;
  /** About the middle of the well where no point is given. */
  readonly zoom: (factor: number, at?: ScreenPoint) => void;
  readonly panBy: (dx: number, dy: number) => void;
  readonly show: (box: Box) => void;
};

const fitMargin = 20;
const sightMargin = 28;
/** CSS pixels per point of the figure at a text size of 100 %: a small chain is not blown up, a large one can be read. */
const largestFit = 1.5;
const smallestToRead = 0.9;
const toRead = 1.15;

export function useSheetView(sheet: Size): SheetView {
  const { size: well, measure } = useMeasuredSize();
  const [placed, setPlaced] = useState<View | 'fitted' | null>(null);
  const width = Math.max(1, sheet.width);
  const height = Math.max(1, sheet.height);

  const fitted = useMemo(
    () => (well === null ? null : fittedView({ width, height }, well)),
    [width, height, well],
  );
  const first = useMemo(
    () => (well === null || fitted === null ? null : readableView(fitted, { width, height }, well)),
    [width, height, well, fitted],
  );

  const change = useCallback(
    (how: (view: View, well: Size, sheet: Size) => View) => {
      if (well === null || fitted === null || first === null) return;
      setPlaced((known) => {
        const from = known === 'fitted' ? fitted : (known ?? first);
        const to = how(from, well, { width, height });
        return to === from ? known : clampView(to, { width, height }, well);
      });
    },
    [width, height, well, fitted, first],
  );

  return {
    view: placed === 'fitted' ? fitted : (placed ?? first),
    measure,
    fit: useCallback(() => setPlaced('fitted'), []),
    zoom: useCallback(
      (factor, at) =>
        change((from, room, figure) =>
          zoomAbout(from, at ?? screenPoint(room.width / 2, room.height / 2), factor, figure, room),
        ),
      [change],
    ),
    panBy: useCallback((dx, dy) => change((from) => pan(from, dx, dy)), [change]),
    show: useCallback(
      (box) =>
        change((from, room) => {
          const foot = bringIntoSight(
            from,
            imagePoint(box.x + box.width, box.y + box.height),
            room,
            sightMargin,
          );
          return bringIntoSight(foot, imagePoint(box.x, box.y), room, sightMargin);
        }),
      [change],
    ),
  };
}

function fittedView(sheet: Size, well: Size): View {
  const whole = fitView(sheet, well, fitMargin);
  if (whole.scale <= largestFit) return whole;
  const left = (well.width - sheet.width * largestFit) / 2;
  const top = (well.height - sheet.height * largestFit) / 2;
  return { scale: largestFit, origin: screenPoint(left, top) };
}

/** The fitted view where it can be read; else larger, from the left, with the reader's text size. */
function readableView(fitted: View, sheet: Size, well: Size): View {
  const textSize = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16;
  if (fitted.scale >= smallestToRead * textSize) return fitted;
  const scale = toRead * textSize;
  const top = (well.height - sheet.height * scale) / 2;
  return { scale, origin: screenPoint(fitMargin, Math.max(fitMargin, top)) };
}
