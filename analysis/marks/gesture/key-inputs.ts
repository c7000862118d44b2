/** What the keyboard leads to: a cross that draws, the chosen marks moved, the picture moved. */
import type { ImagePoint } from '#shared-types/points.ts';
import { markAtPoint } from '../mark-at-point.ts';
import { boundsOf, handlesOf } from '../mark-handles.ts';
import { imagePoint, withinImage } from '../planes.ts';
import { closeCorners, cornerAdded, drawn } from './drawing-ends.ts';
import { reach, type ChangeGesture, type CornersGesture, type Gesture, type Hold } from './gesture.ts';
import { aloneChosen, changed, changeOf } from './pointer-inputs.ts';
import {
  going,
  holdOf,
  rest,
  say,
  unused,
  type WellInput,
  type WellScene,
  type WellState,
  type WellStep,
} from './well-state.ts';

type Step = Extract<WellInput, { input: 'step' }>;

/** CSS pixels a step. */
const crossSpeed = 2;
const panSpeed = 24;

export function stepped(state: WellState, step: Step, scene: WellScene): WellStep {
  const { gesture } = state;
  // A hand is on the mouse: the keys wait.
  if (gesture !== null && isByPointer(gesture)) return { ...unused(state), used: true };
  if (scene.tool !== 'select' && !scene.readOnly) return crossMoved(state, step, scene);
  const marks = scene.marks.filter(({ id }) => scene.chosen.has(id));
  if (marks.length === 0 || scene.readOnly) {
    const pan = { deed: 'pan', byX: -step.byX * panSpeed, byY: -step.byY * panSpeed } as const;
    return { state, deeds: [pan], used: true };
  }
  const { ground } = scene;
  const hold = holdOf(state, scene.chosen);
  const under = gesture?.gesture === 'change' ? gesture : changeOf(marks, hold);
  const next: ChangeGesture = {
    ...under,
    after: changed(
      { before: under.after, hold: under.hold },
      step.byX * ground.unit,
      step.byY * ground.unit,
      ground,
    ),
  };
  const at = placeOfChange(next, scene);
  return going(state, next, at === null ? [] : [{ deed: 'show', at }]);
}

function isByPointer(gesture: Gesture): boolean {
  switch (gesture.gesture) {
    case 'span':
      return gesture.by === 'pointer';
    case 'change':
      return gesture.grip !== null;
    case 'pan':
    case 'frame':
    case 'place':
      return true;
    case 'corners':
    case 'cross':
      return false;
  }
}

/** What has to stay in sight: the handle that is moved, or the middle of the first mark. */
function placeOfChange({ after, hold }: ChangeGesture, { ground }: WellScene): ImagePoint | null {
  const first = after[0];
  if (first === undefined) return null;
  const handle = handlesOf(first.geometry, ground).find(({ name }) => name === hold);
  if (handle !== undefined) return handle.at;
  const { left, top, right, bottom } = boundsOf(first.geometry);
  return imagePoint((left + right) / 2, (top + bottom) / 2);
}

function crossMoved(state: WellState, { byX, byY, start }: Step, scene: WellScene): WellStep {
  const { image, unit } = scene.ground;
  const { gesture } = state;
  const moved = (from: ImagePoint) =>
    withinImage(image, imagePoint(from.x + byX * unit * crossSpeed, from.y + byY * unit * crossSpeed));
  if (gesture?.gesture === 'span') {
    const to = moved(gesture.to);
    return going(state, { ...gesture, to }, [{ deed: 'show', at: to }]);
  }
  if (gesture?.gesture === 'corners') {
    const at = moved(gesture.at);
    return going(state, { ...gesture, at, by: 'keys' }, [{ deed: 'show', at }]);
  }
  const at = moved(gesture?.gesture === 'cross' ? gesture.at : withinImage(image, start));
  return going(state, { gesture: 'cross', tool: scene.tool, at }, [{ deed: 'show', at }]);
}

export function entered(state: WellState, backwards: boolean, scene: WellScene): WellStep {
  const { gesture } = state;
  switch (gesture?.gesture) {
    case 'cross':
      return crossSet(state, gesture.at, scene);
    case 'span':
      return gesture.by === 'keys' ? drawn(state, gesture, scene) : { ...unused(state), used: true };
    case 'corners':
      return enteredCorner(state, gesture, scene);
    case 'pan':
    case 'frame':
    case 'place':
    case 'change':
      return { ...unused(state), used: true };
    case undefined:
      return scene.tool === 'select' ? nextHold(state, backwards, scene) : unused(state);
  }
}

function crossSet(state: WellState, at: ImagePoint, scene: WellScene): WellStep {
  const { tool } = scene;
  switch (tool) {
    case 'arrow':
    case 'ring':
    case 'line':
    case 'dimension':
    case 'scale': {
      const span = { gesture: 'span', tool, from: at, to: at, even: false, by: 'keys' } as const;
      return going(state, span, [say({ heard: 'from-set' })]);
    }
    case 'outline':
    case 'rectangle':
      return going(state, { gesture: 'corners', tool, corners: [at], at, by: 'keys', closing: false }, [
        say({ heard: 'corner', count: 1 }),
      ]);
    case 'text':
      return rest(state, [{ deed: 'write', at }]);
    case 'select':
      return unused(state);
  }
}

/** Sets a corner where the cross went; where it has not moved since the last one, or is at the first, the outline closes. */
function enteredCorner(state: WellState, under: CornersGesture, scene: WellScene): WellStep {
  const { corners, at, by } = under;
  const last = corners.at(-1);
  const first = corners[0];
  const stayed = last?.x === at.x && last.y === at.y;
  const within = reach * scene.ground.unit;
  const returned =
    corners.length > 1 && first !== undefined && Math.hypot(first.x - at.x, first.y - at.y) <= within;
  if (by === 'pointer' || stayed || returned) return closeCorners(state, under, scene);
  return cornerAdded(state, under, scene);
}

/** The next part of the chosen mark to be moved by the arrow keys; words are written again instead. */
function nextHold(state: WellState, backwards: boolean, scene: WellScene): WellStep {
  const alone = aloneChosen(scene);
  if (alone === null || scene.readOnly) return unused(state);
  if (alone.geometry.kind === 'text') return rest(state, [{ deed: 'rewrite', id: alone.id }]);
  const holds: readonly Hold[] = [
    'whole',
    ...handlesOf(alone.geometry, scene.ground).map(({ name }) => name),
  ];
  const at = holds.indexOf(holdOf(state, scene.chosen));
  const hold = holds[(at + (backwards ? holds.length - 1 : 1)) % holds.length] ?? 'whole';
  return {
    state: { ...state, hold: { id: alone.id, hold } },
    deeds: [say({ heard: 'hold', hold })],
    used: true,
  };
}

/** Takes back the last corner of an outline under way; the outline with its only one. */
export function backed(state: WellState): WellStep {
  const { gesture } = state;
  if (gesture === null) return unused(state);
  if (gesture.gesture === 'span' && gesture.by === 'keys') {
    return going(state, { gesture: 'cross', tool: gesture.tool, at: gesture.to });
  }
  if (gesture.gesture !== 'corners') return { ...unused(state), used: true };
  const corners = gesture.corners.slice(0, -1);
  if (corners.length === 0) return rest(state, [say({ heard: 'cancelled' })]);
  return going(state, { ...gesture, corners }, [say({ heard: 'corner', count: corners.length })]);
}

/** A double click closes an outline, opens words to be written again, and fits the picture from the bare ground. */
export function closedByDouble(state: WellState, at: ImagePoint, scene: WellScene): WellStep {
  const { gesture } = state;
  if (gesture?.gesture === 'corners') return closeCorners(state, gesture, scene);
  if (scene.tool !== 'select') return unused(state);
  const id = markAtPoint(scene.marks, at, reach * scene.ground.unit);
  if (id === null) return rest(state, [{ deed: 'fit' }]);
  const mark = scene.marks.find((each) => each.id === id);
  if (mark?.geometry.kind !== 'text' || scene.readOnly) return unused(state);
  return rest(state, [{ deed: 'rewrite', id }]);
}
