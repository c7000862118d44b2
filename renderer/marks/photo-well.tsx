/** The photo with its marks: what is drawn, zoomed and taken hold of. */
import type Konva from 'konva';
import { useCallback, useEffect, useId, useMemo, useRef, useState, type Ref } from 'react';
import { Circle, Image as StageImage, Layer, Line, Stage } from 'react-konva';
import type { PlacedMark } from '#analysis/marks/mark-at-point.ts';
import { handlesOf } from '#analysis/marks/mark-handles.ts';
import { screenPoint } from '#analysis/marks/planes.ts';
import type { MarkId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { Photo } from '#shared-types/photo.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { pictureAddress } from '../api/client.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { DrawnMark } from './drawn-mark.tsx';
import type { LabelledMark } from './labelled-marks.ts';
import type { PhotoView } from './use-photo-view.ts';
import { usePicture } from './use-picture.ts';
import { useWellGestures, type WellDeeds } from './use-well-gestures.ts';
import { arrowOf, type Hold, type Tool } from './well-gesture.ts';

export type PhotoWellProps = WellDeeds & {
  photo: Photo;
  photoView: PhotoView;
  /** In drawing order, the topmost last. */
  marks: readonly LabelledMark[];
  tool: Tool;
  selectedId: MarkId | null;
  showHandles: boolean;
  /** The case is closed: marks can be looked at, not changed. */
  readOnly: boolean;
  /** What the photo is called for those who cannot see it. */
  name: string;
  wellRef: Ref<HTMLDivElement>;
};

export function PhotoWell(props: PhotoWellProps) {
  const { photo, photoView, marks, selectedId, showHandles, name, wellRef } = props;
  const { view, well } = photoView;
  const { width, height } = photo;
  const keysId = useId();
  const image = useMemo(() => ({ width, height }), [width, height]);
  const unit = view === null ? 1 : 1 / view.scale;
  const [textScale] = useState(readTextScale);
  /** Image pixels a drawing point: larger where the reader's text is. */
  const point = unit * textScale;
  const placed = useMemo(
    () =>
      marks.map(({ mark, damageClass, label }): PlacedMark<MarkId> => ({
        id: mark.id,
        geometry: mark.geometry,
        look: { class: damageClass, label, unit: point, within: image },
      })),
    [marks, point, image],
  );
  const { gesture, hold, handlers } = useWellGestures({ ...props, photoId: photo.id, image, marks: placed });
  const picture = usePicture(pictureAddress(photo.derivatives.display));
  const measure = useWheelZoom(photoView);

  const changed = gesture?.kind === 'change' ? gesture : null;
  const selected = placed.find((mark) => mark.id === selectedId) ?? null;
  const selectedGeometry = showHandles ? (changed?.geometry ?? selected?.geometry ?? null) : null;
  const drafts = [
    ...(changed === null
      ? []
      : placed
          .filter((mark) => mark.id === changed.id)
          .map((mark) => ({ ...mark, geometry: changed.geometry }))),
    ...draftArrow(gesture).map((geometry) => ({ geometry, look: draftLook })),
  ];
  const place =
    view === null ? null : { x: view.origin.x, y: view.origin.y, scaleX: view.scale, scaleY: view.scale };
  const marksLayer = useRedrawWithFont();

  return (
    <div
      className="marks-well"
      ref={wellRef}
      tabIndex={0}
      role="application"
      aria-label={marksTexts.well(name, marksTexts.marksOnPicture(marks.map((mark) => mark.label)))}
      aria-describedby={keysId}
      {...handlers}
    >
      <p id={keysId} className="only-read-out">
        {marksTexts.wellKeys}
      </p>
      <div className="marks-stage" role="img" aria-label={marksTexts.picture(name)} ref={measure}>
        {place === null || well === null ? null : (
          <Stage width={well.width} height={well.height} listening={false}>
            <Layer listening={false} {...place}>
              {picture.image === null ? null : (
                <StageImage image={picture.image} width={width} height={height} perfectDrawEnabled={false} />
              )}
            </Layer>
            <Layer listening={false} ref={marksLayer} {...place}>
              {placed
                .filter((mark) => mark.id !== changed?.id)
                .map((mark) => (
                  <DrawnMark
                    key={mark.id}
                    geometry={mark.geometry}
                    damageClass={mark.look.class}
                    label={mark.look.label}
                    unit={point}
                    within={image}
                  />
                ))}
            </Layer>
            <Layer listening={false} {...place}>
              {drafts.map((draft, index) => (
                <DrawnMark
                  key={index}
                  geometry={draft.geometry}
                  damageClass={draft.look.class}
                  label={draft.look.label}
                  unit={point}
                  within={image}
                />
              ))}
              {selectedGeometry === null ? null : (
                <Handles geometry={selectedGeometry} hold={hold} unit={unit} />
              )}
              {gesture?.kind === 'cross' ? <Cross at={gesture.at} unit={unit} /> : null}
            </Layer>
          </Stage>
        )}
      </div>
      {picture.failed ? (
        <p className="marks-picture-words" role="alert">
          {marksTexts.pictureFailed}
        </p>
      ) : picture.image === null ? (
        <div className="marks-picture-words">
          <BusyState text={marksTexts.pictureComing} />
        </div>
      ) : null}
    </div>
  );
}

/** How much larger than usual the reader has text: the root's size over the 16 CSS pixels of a browser's default. */
function readTextScale(): number {
  return parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1;
}

const draftLook = { class: 'undecided', label: '' } as const;

function draftArrow(gesture: ReturnType<typeof useWellGestures>['gesture']): MarkGeometry[] {
  if (gesture?.kind === 'draw') return [arrowOf(gesture.tail, gesture.tip)];
  if (gesture?.kind === 'cross' && gesture.tail !== null) return [arrowOf(gesture.tail, gesture.at)];
  return [];
}

/** On any picture: a dark line between two light ones. */
const handleInk = '#ffffff';
const handleEdge = '#101112';

function Handles({ geometry, hold, unit }: { geometry: MarkGeometry; hold: Hold; unit: number }) {
  return handlesOf(geometry).map(({ name, at }) => (
    <HandleRing
      key={name}
      at={at}
      unit={unit}
      held={hold === name}
      radius={(name === 'tip' ? 7 : 5) * unit}
    />
  ));
}

/** Hollow, so that what a tip points at stays in sight. */
function HandleRing(props: { at: ImagePoint; unit: number; held: boolean; radius: number }) {
  const { at, unit, held, radius } = props;
  const common = { x: at.x, y: at.y, listening: false, perfectDrawEnabled: false };
  return (
    <>
      <Circle {...common} radius={radius} stroke={handleEdge} strokeWidth={(held ? 6 : 4) * unit} />
      <Circle {...common} radius={radius} stroke={handleInk} strokeWidth={(held ? 3.5 : 1.75) * unit} />
    </>
  );
}

function Cross({ at, unit }: { at: ImagePoint; unit: number }) {
  const arms = [
    [at.x - 16 * unit, at.y, at.x - 3 * unit, at.y],
    [at.x + 3 * unit, at.y, at.x + 16 * unit, at.y],
    [at.x, at.y - 16 * unit, at.x, at.y - 3 * unit],
    [at.x, at.y + 3 * unit, at.x, at.y + 16 * unit],
  ];
  return [
    { ink: handleEdge, width: 4 },
    { ink: handleInk, width: 1.75 },
  ].flatMap(({ ink, width }) =>
    arms.map((points, index) => (
      <Line
        key={`${ink}-${index}`}
        points={points}
        stroke={ink}
        strokeWidth={width * unit}
        listening={false}
        perfectDrawEnabled={false}
      />
    )),
  );
}

/** Turning the wheel zooms about the pointer. React listens passively, which could not keep the page from scrolling. */
function useWheelZoom(photoView: PhotoView): (element: HTMLElement | null) => (() => void) | undefined {
  const { measure, zoom } = photoView;
  const latest = useRef(zoom);
  useEffect(() => {
    latest.current = zoom;
  }, [zoom]);
  return useCallback(
    (element: HTMLElement | null) => {
      if (element === null) return undefined;
      const turned = (event: WheelEvent) => {
        event.preventDefault();
        const edge = element.getBoundingClientRect();
        const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 32 : 1;
        const speed = event.ctrlKey ? 0.01 : 0.0016;
        latest.current(
          Math.exp(-event.deltaY * lines * speed),
          screenPoint(event.clientX - edge.left, event.clientY - edge.top),
        );
      };
      element.addEventListener('wheel', turned, { passive: false });
      const stopMeasuring = measure(element);
      return () => {
        element.removeEventListener('wheel', turned);
        stopMeasuring?.();
      };
    },
    [measure],
  );
}

/** A canvas does not wait for a font: labels are painted again once it is there. */
function useRedrawWithFont() {
  const layer = useRef<Konva.Layer>(null);
  useEffect(() => {
    let current = true;
    void document.fonts.load("600 13px 'Source Sans 3'").then(() => {
      if (current) layer.current?.batchDraw();
    });
    return () => {
      current = false;
    };
  }, []);
  return layer;
}
