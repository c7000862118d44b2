/** How the chosen photo lies in the well: fitted until the user zooms or pans it. */
import { useCallback, useMemo, useState } from 'react';
import {
  bringIntoSight,
  clampView,
  fitView,
  pan,
  screenPoint,
  zoomAbout,
  type Size,
  type View,
} from '#analysis/marks/planes.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import type { ImagePoint, ScreenPoint } from '#shared-types/points.ts';
import { useMeasuredSize } from '../ui/use-measured-size.ts';

export type PhotoView = {
  /** Null until the well has been measured. */
  readonly view: View | null;
  readonly well: Size | null;
  readonly measure: (element: HTMLElement | null) => (() => void) | undefined;
  readonly fit: () => void;
  /** About the middle of the well where no point is given. */
  readonly zoom: (factor: number, at?: ScreenPoint) => void;
  readonly panBy: (dx: number, dy: number) => void;
  readonly show: (point: ImagePoint) => void;
};

const fitMargin = 12;
const sightMargin = 48;

export function usePhotoView(photoId: PhotoId, image: Size): PhotoView {
  const { size: well, measure } = useMeasuredSize();
  const [placed, setPlaced] = useState<{ readonly photoId: PhotoId; readonly view: View } | null>(null);
  const { width, height } = image;

  const fitted = useMemo(
    () => (well === null ? null : fitView({ width, height }, well, fitMargin)),
    [width, height, well],
  );
  const view = placed?.photoId === photoId ? placed.view : fitted;

  const change = useCallback(
    (how: (view: View, well: Size, image: Size) => View) => {
      if (well === null || fitted === null) return;
      setPlaced((known) => {
        const from = known?.photoId === photoId ? known.view : fitted;
        const to = how(from, well, { width, height });
        return to === from ? known : { photoId, view: clampView(to, { width, height }, well) };
      });
    },
    [photoId, width, height, well, fitted],
  );

  return {
    view,
    well,
    measure,
    fit: useCallback(() => setPlaced(null), []),
    zoom: useCallback(
      (factor, at) =>
        change((from, room, picture) =>
          zoomAbout(from, at ?? screenPoint(room.width / 2, room.height / 2), factor, picture, room),
        ),
      [change],
    ),
    panBy: useCallback((dx, dy) => change((from) => pan(from, dx, dy)), [change]),
    show: useCallback(
      (point) => change((from, room) => bringIntoSight(from, point, room, sightMargin)),
      [change],
    ),
  };
}
