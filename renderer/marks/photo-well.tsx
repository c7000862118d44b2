/** The photo with its marks: what is drawn, zoomed and taken hold of. */
import type Konva from 'konva';
import { useCallback, useEffect, useId, useMemo, useRef, useState, type Ref } from 'react';
import { Image as StageImage, Layer, Stage } from 'react-konva';
import type { Reshape } from '#analysis/marks/bench-deeds.ts';
import { draftsOf, type Tool } from '#analysis/marks/gesture/gesture.ts';
import { aloneChosen } from '#analysis/marks/gesture/pointer-inputs.ts';
import type { Heard, WellDeed, WellScene } from '#analysis/marks/gesture/well-state.ts';
import { asksForFinding } from '#analysis/marks/notes.ts';
import { photoReadings } from '#analysis/measure/photo-readings.ts';
import type { PlacedMark } from '#analysis/marks/mark-at-point.ts';
import { imageToScreen, screenPoint } from '#analysis/marks/planes.ts';
import type { MarkId, PhotoId } from '#shared-types/ids.ts';
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
import { useWell } from './use-well.ts';
import { ChoosingBox, Cross, Handles } from './well-overlays.tsx';
import { WordsField } from './words-field.tsx';

export type PhotoWellProps = {
  photo: Photo;
  photoView: PhotoView;
  /** Those in sight, in drawing order, the topmost last. */
  marks: readonly LabelledMark[];
  /** All of the photo in drawing order, those out of sight too: a scale measures all the same. */
  measuring: readonly LabelledMark[];
  tool: Tool;
  chosen: ReadonlySet<MarkId>;
  showHandles: boolean;
  /** The case is closed: marks can be looked at, not changed. */
  readOnly: boolean;
  /** What the photo is called for those who cannot see it. */
  name: string;
  wellRef: Ref<HTMLDivElement>;
  /** The words of this mark are asked to be written again. */
  rewriting: MarkId | null;
  onRewritten: () => void;
  onChoose: (ids: readonly MarkId[], how: 'only' | 'toggle' | 'add') => void;
  onDrawn: (geometry: MarkGeometry) => void;
  onReshaped: (changes: readonly Reshape[]) => void;
  /** Escape with nothing under way. */
  onEscape: () => void;
  /** The keyboard shall be at the photo. */
  onToWell: () => void;
  onHeard: (heard: Heard) => void;
};

/** Stands for what is being drawn: it has no id before it is a mark. */
const draftId = 'draft' as MarkId;

/** Words under way: where, and of which mark; null for a new one. */
type Writing = { readonly photoId: PhotoId; readonly at: ImagePoint; readonly of: MarkId | null };

export function PhotoWell(props: PhotoWellProps) {
  const { photo, photoView, marks, tool, chosen, readOnly, showHandles, name, wellRef } = props;
  const { view, well } = photoView;
  const { width, height } = photo;
  const keysId = useId();
  const image = useMemo(() => ({ width, height }), [width, height]);
  const unit = view === null ? 1 : 1 / view.scale;
  const [textScale] = useState(readTextScale);
  const [newWords, setNewWords] = useState<Writing | null>(null);
  /** Image pixels a drawing point: larger where the reader's text is. */
  const point = unit * textScale;
  const placed = useMemo(
    () =>
      marks.map(({ mark, damageClass, label, note }): PlacedMark<MarkId> => ({
        id: mark.id,
        geometry: mark.geometry,
        look: { class: damageClass, label, note, unit: point, within: image },
      })),
    [marks, point, image],
  );
  const ground = useMemo(() => ({ image, unit }), [image, unit]);
  const scene: WellScene = { tool, readOnly, ground, marks: placed, chosen };

  const rewritten = placed.find(({ id }) => id === props.rewriting)?.geometry;
  const writing: Writing | null =
    rewritten?.kind === 'text'
      ? { photoId: photo.id, at: rewritten.at, of: props.rewriting }
      : newWords?.photoId === photo.id
        ? newWords
        : null;

  const onDeed = (deed: WellDeed) => {
    switch (deed.deed) {
      case 'choose': {
        props.onChoose(deed.ids, deed.how);
        return;
      }
      case 'drawn': {
        props.onDrawn(deed.geometry);
        return;
      }
      case 'reshaped': {
        props.onReshaped(deed.changes);
        return;
      }
      case 'write': {
        setNewWords({ photoId: photo.id, at: deed.at, of: null });
        return;
      }
      case 'rewrite': {
        setNewWords({ photoId: photo.id, at: placeOfWords(placed, deed.id), of: deed.id });
        return;
      }
      case 'pan': {
        photoView.panBy(deed.byX, deed.byY);
        return;
      }
      case 'fit': {
        photoView.fit();
        return;
      }
      case 'show': {
        photoView.show(deed.at);
        return;
      }
      case 'say': {
        props.onHeard(deed.words);
        return;
      }
      case 'escape': {
        props.onEscape();
        return;
      }
    }
  };
  const { gesture, hold, handlers } = useWell(photo.id, photoView, scene, writing !== null, onDeed);
  const picture = usePicture(pictureAddress(photo.derivatives.display));
  const measure = useWheelZoom(photoView);
  const marksLayer = useRedrawWithFont();

  const wordsDone = (words: string | null, byKey: boolean) => {
    const of = writing?.of ?? null;
    const at = writing?.at;
    setNewWords(null);
    props.onRewritten();
    if (byKey) props.onToWell();
    if (words === null || at === undefined) {
      if (words === null && of === null) props.onHeard({ heard: 'cancelled' });
      return;
    }
    const geometry: MarkGeometry = { kind: 'text', v: 1, at, words };
    if (of === null) props.onDrawn(geometry);
    else props.onReshaped([{ id: of, geometry }]);
  };

  const changed = gesture?.gesture === 'change' ? gesture.after : [];
  const geometryNow = (mark: PlacedMark<MarkId>) =>
    changed.find(({ id }) => id === mark.id)?.geometry ?? mark.geometry;
  const alone = aloneChosen(scene);
  const drafts = draftsOf(gesture, image);
  // As they would be: what is being drawn or changed is measured meanwhile, by a scale out of sight too.
  const readings = photoReadings(
    [
      ...props.measuring.map(({ mark: { id, geometry } }) => ({
        id,
        geometry: changed.find((each) => each.id === id)?.geometry ?? geometry,
      })),
      ...drafts.map((geometry) => ({ id: draftId, geometry })),
    ],
    image,
  ).words;
  const place =
    view === null ? null : { x: view.origin.x, y: view.origin.y, scaleX: view.scale, scaleY: view.scale };

  return (
    <div
      className="marks-well"
      ref={wellRef}
      tabIndex={0}
      role="application"
      aria-label={marksTexts.well(name, marksTexts.marksOnPicture(marks.map((mark) => mark.name)))}
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
                .filter(({ id }) => id !== writing?.of)
                .map((mark) => (
                  <DrawnMark
                    key={mark.id}
                    geometry={geometryNow(mark)}
                    damageClass={mark.look.class}
                    label={mark.look.label}
                    note={mark.look.note}
                    reading={readings.get(mark.id) ?? ''}
                    unit={point}
                    within={image}
                    chosen={chosen.has(mark.id)}
                  />
                ))}
            </Layer>
            <Layer listening={false} {...place}>
              {drafts.map((geometry, index) => (
                <DrawnMark
                  key={index}
                  geometry={geometry}
                  damageClass="undecided"
                  label=""
                  note={!asksForFinding(geometry.kind)}
                  reading={readings.get(draftId) ?? ''}
                  unit={point}
                  within={image}
                  chosen={false}
                />
              ))}
              {alone === null || !showHandles || readOnly ? null : (
                <Handles geometry={geometryNow(alone)} hold={hold} ground={ground} />
              )}
              <KeyCross gesture={gesture} unit={unit} />
              {gesture?.gesture === 'frame' ? (
                <ChoosingBox from={gesture.from} to={gesture.to} unit={unit} />
              ) : null}
            </Layer>
          </Stage>
        )}
      </div>
      {writing === null || view === null ? null : (
        <WordsField
          key={writing.of ?? 'new'}
          at={imageToScreen(view, writing.at)}
          before={rewrittenWords(placed, writing.of)}
          onDone={wordsDone}
        />
      )}
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

/** Where the keyboard draws: the cross, or the end of what it has begun. */
function KeyCross({ gesture, unit }: { gesture: ReturnType<typeof useWell>['gesture']; unit: number }) {
  switch (gesture?.gesture) {
    case 'cross':
      return <Cross at={gesture.at} unit={unit} />;
    case 'span':
      return gesture.by === 'keys' ? <Cross at={gesture.to} unit={unit} /> : null;
    case 'corners':
      return gesture.by === 'keys' ? <Cross at={gesture.at} unit={unit} /> : null;
    default:
      return null;
  }
}

function placeOfWords(placed: readonly PlacedMark<MarkId>[], id: MarkId): ImagePoint {
  const geometry = placed.find((mark) => mark.id === id)?.geometry;
  if (geometry?.kind !== 'text') throw new Error('only words can be written again');
  return geometry.at;
}

function rewrittenWords(placed: readonly PlacedMark<MarkId>[], id: MarkId | null): string {
  const geometry = placed.find((mark) => mark.id === id)?.geometry;
  return geometry?.kind === 'text' ? geometry.words : '';
}

/** How much larger than usual the reader has text: the root's size over the 16 CSS pixels of a browser's default. */
function readTextScale(): number {
  return parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1;
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
