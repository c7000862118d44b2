/** Pointer and keyboard in the photo's well, turned into gestures and, when they end, into what was done. */
import {
  useRef,
  useState,
  type FocusEvent,
  type KeyboardEvent,
  type MouseEvent,
  type PointerEvent,
} from 'react';
import { handleAtPoint, markAtPoint, type PlacedMark } from '#analysis/marks/mark-at-point.ts';
import { imagePoint, screenPoint, screenToImage, withinImage, type Size } from '#analysis/marks/planes.ts';
import type { MarkId, PhotoId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ScreenPoint } from '#shared-types/points.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import type { PhotoView } from './use-photo-view.ts';
import {
  arrowOf,
  changedBy,
  changesMark,
  draggedTo,
  handleReach,
  isMeant,
  keyStep,
  nextHold,
  reach,
  type Gesture,
  type Hold,
  type Tool,
} from './well-gesture.ts';

export type WellDeeds = {
  readonly onSelect: (id: MarkId | null) => void;
  readonly onDrawn: (geometry: MarkGeometry) => void;
  readonly onChanged: (id: MarkId, geometry: MarkGeometry) => void;
  /** Escape with nothing under way. */
  readonly onEscape: () => void;
  /** For those who hear the screen. */
  readonly say: (words: string) => void;
};

type WellState = WellDeeds & {
  readonly image: Size;
  readonly photoId: PhotoId;
  readonly photoView: PhotoView;
  readonly marks: readonly PlacedMark<MarkId>[];
  readonly tool: Tool;
  readonly readOnly: boolean;
  readonly selectedId: MarkId | null;
};

type Begun = { readonly photoId: PhotoId; readonly gesture: Gesture };

const { said } = marksTexts;

export function useWellGestures(state: WellState) {
  const { image, photoId, photoView, marks, tool, readOnly, selectedId, say } = state;
  const { view } = photoView;
  const latest = useRef<Begun | null>(null);
  const pointer = useRef<ScreenPoint | null>(null);
  const spaceHeld = useRef(false);
  const heldKeys = useRef(new Set<string>());
  const [shown, setShown] = useState<Begun | null>(null);
  const [held, setHeld] = useState<{ id: MarkId; hold: Hold } | null>(null);
  const hold = held !== null && held.id === selectedId ? held.hold : 'whole';
  const selected = marks.find((mark) => mark.id === selectedId) ?? null;
  const unit = view === null ? 1 : 1 / view.scale;

  /** A gesture belongs to the photo it was begun on: another photo knows nothing of it. */
  const live = () => (latest.current?.photoId === photoId ? latest.current.gesture : null);
  const put = (gesture: Gesture | null) => {
    latest.current = gesture === null ? null : { photoId, gesture };
    setShown(latest.current);
  };

  const finishChange = () => {
    heldKeys.current.clear();
    const gesture = live();
    if (gesture?.kind !== 'change') return;
    put(null);
    if (changesMark(gesture)) state.onChanged(gesture.id, gesture.geometry);
  };

  const cancel = () => {
    heldKeys.current.clear();
    const gesture = live();
    if (gesture === null) return false;
    if (gesture.kind !== 'pan') say(said.cancelled);
    put(null);
    return true;
  };

  const draw = (gesture: { tail: Parameters<typeof isMeant>[0]; tip: Parameters<typeof isMeant>[1] }) => {
    put(null);
    if (!isMeant(gesture.tail, gesture.tip, unit)) return;
    say(said.drawn);
    state.onDrawn(arrowOf(gesture.tail, gesture.tip));
  };

  const begin = (event: PointerEvent<HTMLElement>): Gesture | null => {
    if (view === null) return null;
    const on = placeOf(event);
    const at = screenToImage(view, on);
    const pans = event.button === 1 || (event.button === 0 && spaceHeld.current);
    if (pans) return { kind: 'pan', begun: on, at: on, moved: true };
    if (event.button !== 0) return null;
    if (tool === 'arrow') {
      const tail = withinImage(image, at);
      return { kind: 'draw', tail, tip: tail };
    }
    const handle =
      selected === null || readOnly ? null : handleAtPoint(selected.geometry, at, handleReach * unit);
    if (selected !== null && handle !== null) return changeOf(selected, handle, at);
    const id = markAtPoint(marks, at, reach * unit);
    const mark = marks.find((each) => each.id === id);
    if (mark === undefined) return { kind: 'pan', begun: on, at: on, moved: false };
    if (mark.id !== selectedId) state.onSelect(mark.id);
    if (readOnly) return null;
    return changeOf(mark, 'whole', at);
  };

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    finishChange();
    const gesture = begin(event);
    if (gesture === null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    put(gesture);
  };

  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const on = placeOf(event);
    pointer.current = on;
    const gesture = live();
    if (view === null) return;
    if (
      gesture === null ||
      gesture.kind === 'cross' ||
      !event.currentTarget.hasPointerCapture(event.pointerId)
    ) {
      event.currentTarget.style.cursor = cursorAt(on);
      return;
    }
    const next = draggedTo(gesture, screenToImage(view, on), on, image);
    if (gesture.kind === 'pan' && next.kind === 'pan') {
      latest.current = { photoId, gesture: next };
      if (next.moved) photoView.panBy(next.at.x - gesture.at.x, next.at.y - gesture.at.y);
      return;
    }
    put(next);
  };

  const onPointerUp = (event: PointerEvent<HTMLElement>) => {
    const gesture = live();
    if (gesture === null || view === null) return;
    const on = placeOf(event);
    const last = draggedTo(gesture, screenToImage(view, on), on, image);
    if (last.kind === 'draw') draw(last);
    else if (last.kind === 'change') {
      put(null);
      if (changesMark(last)) state.onChanged(last.id, last.geometry);
    } else if (last.kind === 'pan') {
      put(null);
      if (!last.moved) state.onSelect(null);
    }
  };

  const cursorAt = (on: ScreenPoint): string => {
    if (view === null) return '';
    if (spaceHeld.current) return 'grab';
    if (tool === 'arrow') return 'crosshair';
    const at = screenToImage(view, on);
    if (selected !== null && handleAtPoint(selected.geometry, at, handleReach * unit) !== null) return 'move';
    return markAtPoint(marks, at, reach * unit) === null ? 'grab' : 'pointer';
  };

  const onDoubleClick = (event: MouseEvent<HTMLElement>) => {
    if (view === null) return;
    if (markAtPoint(marks, screenToImage(view, placeOf(event)), reach * unit) === null) photoView.fit();
  };

  const stepWithKey = ([dx, dy]: readonly [number, number], key: string) => {
    if (view === null || photoView.well === null) return;
    if (tool === 'arrow') {
      const { well } = photoView;
      const start = pointer.current ?? screenPoint(well.width / 2, well.height / 2);
      const gesture = live();
      const cross = gesture?.kind === 'cross' ? gesture : null;
      const from = cross?.at ?? withinImage(image, screenToImage(view, start));
      const crossSpeed = 2;
      const at = withinImage(
        image,
        imagePoint(from.x + dx * unit * crossSpeed, from.y + dy * unit * crossSpeed),
      );
      photoView.show(at);
      put({ kind: 'cross', at, tail: cross?.tail ?? null });
      return;
    }
    if (selected === null || readOnly) {
      const panSpeed = 24;
      photoView.panBy(-dx * panSpeed, -dy * panSpeed);
      return;
    }
    heldKeys.current.add(key);
    const under = live();
    const gesture = under?.kind === 'change' ? under : changeOf(selected, hold, null);
    const geometry = changedBy(gesture.geometry, hold, dx * unit, dy * unit, image);
    photoView.show(hold === 'tail' ? geometry.tail : geometry.tip);
    put({ ...gesture, geometry });
  };

  const enter = () => {
    const gesture = live();
    if (tool === 'arrow') {
      if (gesture?.kind !== 'cross') return;
      if (gesture.tail === null) {
        put({ ...gesture, tail: gesture.at });
        say(said.tailSet);
      } else draw({ tail: gesture.tail, tip: gesture.at });
    } else if (selected !== null) {
      const next = nextHold[hold];
      setHeld({ id: selected.id, hold: next });
      say(said.holds[next]);
    }
  };

  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const step = keyStep(event.key, event.shiftKey);
    if (step !== null) stepWithKey(step, event.key);
    else if (event.key === 'Enter') enter();
    else if (event.key === ' ') spaceHeld.current = true;
    else if (event.key === 'Escape') {
      if (!cancel()) state.onEscape();
    } else return;
    event.preventDefault();
  };

  const onKeyUp = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === ' ') spaceHeld.current = false;
    if (!heldKeys.current.delete(event.key) || heldKeys.current.size > 0) return;
    finishChange();
  };

  const onBlur = (_event: FocusEvent<HTMLElement>) => {
    spaceHeld.current = false;
    finishChange();
  };

  const draft = shown?.photoId === photoId ? shown.gesture : null;
  return {
    /** The draft to be drawn; a cross that belongs to a tool no longer chosen is not one. */
    gesture: draft?.kind === 'cross' && tool !== 'arrow' ? null : draft,
    hold,
    handlers: {
      onPointerDown,
      onPointerMove,
      onPointerUp,
      onPointerCancel: cancel,
      onDoubleClick,
      onKeyDown,
      onKeyUp,
      onBlur,
    },
  };
}

function changeOf(mark: PlacedMark<MarkId>, hold: Hold, from: ReturnType<typeof imagePoint> | null) {
  return {
    kind: 'change',
    id: mark.id,
    before: mark.geometry,
    geometry: mark.geometry,
    hold,
    from,
  } as const satisfies Gesture;
}

function placeOf(event: PointerEvent<HTMLElement> | MouseEvent<HTMLElement>): ScreenPoint {
  const edge = event.currentTarget.getBoundingClientRect();
  return screenPoint(event.clientX - edge.left, event.clientY - edge.top);
}
