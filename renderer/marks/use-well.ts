/** Pointer and keyboard in the photo's well as inputs of the machine in analysis/marks/gesture, and its deeds done. */
import {
  useRef,
  useState,
  type DragEvent,
  type FocusEvent,
  type KeyboardEvent,
  type MouseEvent,
  type PointerEvent,
} from 'react';
import { keyStep } from '#analysis/marks/gesture/gesture.ts';
import { cursorAt } from '#analysis/marks/gesture/pointer-inputs.ts';
import { stepWell } from '#analysis/marks/gesture/well.ts';
import {
  holdOf,
  restingWell,
  shownGesture,
  type WellDeed,
  type WellInput,
  type WellScene,
  type WellState,
} from '#analysis/marks/gesture/well-state.ts';
import { screenPoint, screenToImage } from '#analysis/marks/planes.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import type { ScreenPoint } from '#shared-types/points.ts';
import type { PhotoView } from './use-photo-view.ts';

type OnPhoto = { readonly photoId: PhotoId; readonly state: WellState };

/** Milliseconds and CSS pixels between two presses of one double click. */
const doubleWithin = 500;
const doubleNear = 6;

export function useWell(
  photoId: PhotoId,
  photoView: PhotoView,
  scene: WellScene,
  /** Words are being written: a press only ends that. */
  writing: boolean,
  onDeed: (deed: WellDeed) => void,
) {
  const { view, well } = photoView;
  const latest = useRef<OnPhoto | null>(null);
  const pointer = useRef<ScreenPoint | null>(null);
  const lastPress = useRef<{ on: ScreenPoint; at: number } | null>(null);
  const spaceHeld = useRef(false);
  const heldKeys = useRef(new Set<string>());
  const [shown, setShown] = useState<OnPhoto | null>(null);

  /** A gesture belongs to the photo it was begun on: another photo knows nothing of it. */
  const now = () => (latest.current?.photoId === photoId ? latest.current.state : restingWell);

  const put = (input: WellInput): boolean => {
    const { state, deeds, used } = stepWell(now(), input, scene);
    if (state !== now()) {
      latest.current = { photoId, state };
      setShown(latest.current);
    }
    for (const deed of deeds) onDeed(deed);
    return used;
  };

  const placeOf = (event: PointerEvent<HTMLElement> | MouseEvent<HTMLElement>) => {
    const edge = event.currentTarget.getBoundingClientRect();
    const on = screenPoint(event.clientX - edge.left, event.clientY - edge.top);
    return view === null ? null : { on, at: screenToImage(view, on), shift: event.shiftKey };
  };

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    const place = placeOf(event);
    const pans = event.button === 1 || (event.button === 0 && spaceHeld.current);
    if (place === null || writing || (event.button !== 0 && !pans)) return;
    const before = lastPress.current;
    const again =
      before !== null &&
      event.timeStamp - before.at < doubleWithin &&
      Math.hypot(place.on.x - before.on.x, place.on.y - before.on.y) < doubleNear;
    lastPress.current = again ? null : { on: place.on, at: event.timeStamp };
    event.currentTarget.setPointerCapture(event.pointerId);
    // Text still chosen elsewhere would be dragged along.
    window.getSelection()?.removeAllRanges();
    // A press that means nothing here leaves the keyboard where it is.
    if (!put({ input: 'press', ...place, pans, again })) event.preventDefault();
  };

  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const place = placeOf(event);
    if (place === null) return;
    pointer.current = place.on;
    if (event.currentTarget.hasPointerCapture(event.pointerId)) put({ input: 'drag', ...place });
    put({ input: 'hover', at: place.at });
    event.currentTarget.style.cursor = spaceHeld.current
      ? 'grab'
      : cursorAt(place.at, shownGesture(now(), scene), scene);
  };

  const onPointerUp = (event: PointerEvent<HTMLElement>) => {
    const place = placeOf(event);
    if (place !== null) put({ input: 'release', ...place });
  };

  const onDoubleClick = (event: MouseEvent<HTMLElement>) => {
    const place = placeOf(event);
    if (place !== null) put({ input: 'double', at: place.at });
  };

  const inputOf = (event: KeyboardEvent<HTMLElement>): WellInput | null => {
    const step = keyStep(event.key, event.shiftKey);
    if (step !== null) {
      if (view === null || well === null) return null;
      heldKeys.current.add(event.key);
      const start = screenToImage(view, pointer.current ?? screenPoint(well.width / 2, well.height / 2));
      return { input: 'step', byX: step[0], byY: step[1], start };
    }
    if (event.key === 'Enter') return { input: 'enter', backwards: event.shiftKey };
    if (event.key === 'Backspace') return { input: 'back' };
    if (event.key === 'Escape') return { input: 'escape' };
    return null;
  };

  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === ' ') {
      spaceHeld.current = true;
      event.preventDefault();
      return;
    }
    const input = inputOf(event);
    if (input !== null && put(input)) event.preventDefault();
  };

  const onKeyUp = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === ' ') spaceHeld.current = false;
    if (heldKeys.current.delete(event.key) && heldKeys.current.size === 0) put({ input: 'steps-end' });
  };

  const onBlur = (_event: FocusEvent<HTMLElement>) => {
    spaceHeld.current = false;
    heldKeys.current.clear();
    put({ input: 'leave' });
  };

  const onPointerCancel = () => {
    if (now().gesture !== null) put({ input: 'escape' });
  };

  const state = shown?.photoId === photoId ? shown.state : restingWell;
  return {
    gesture: shownGesture(state, scene),
    hold: holdOf(state, scene.chosen),
    handlers: {
      onPointerDown,
      onPointerMove,
      onPointerUp,
      onPointerCancel,
      onDragStart: (event: DragEvent<HTMLElement>) => event.preventDefault(),
      onDoubleClick,
      onKeyDown,
      onKeyUp,
      onBlur,
    },
  };
}
