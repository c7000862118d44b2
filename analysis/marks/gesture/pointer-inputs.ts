/** What pressing, dragging and letting go lead to. */
import type { MarkId } from '#shared-types/ids.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import type { Reshape } from '../bench-deeds.ts';
import { handleAtPoint, markAtPoint, marksInBox, type PlacedMark } from '../mark-at-point.ts';
import { handlesOf, moveHandle, moveMarks, type Ground } from '../mark-handles.ts';
import { imagePoint, withinImage } from '../planes.ts';
import { closeCorners, cornerAdded, drawn } from './drawing-ends.ts';
import { handleReach, reach, shortestDrag, type ChangeGesture, type Gesture, type Hold } from './gesture.ts';
import {
  changesOf,
  finished,
  going,
  rest,
  unused,
  type WellDeed,
  type WellInput,
  type WellScene,
  type WellState,
  type WellStep,
} from './well-state.ts';

type Input<Name extends WellInput['input']> = Extract<WellInput, { input: Name }>;

export function pressed(state: WellState, input: Input<'press'>, scene: WellScene): WellStep {
  const kept = finished(state);
  const begun = begin(kept.state, input, scene);
  return { ...begun, deeds: [...kept.deeds, ...begun.deeds] };
}

function begin(state: WellState, input: Input<'press'>, scene: WellScene): WellStep {
  const { tool, readOnly } = scene;
  const { on, at, shift } = input;
  if (input.pans || (readOnly && tool !== 'select')) {
    const moved = input.pans;
    return going(state, { gesture: 'pan', begun: on, at: on, moved, under: state.gesture });
  }
  const from = withinImage(scene.ground.image, at);
  switch (tool) {
    case 'arrow':
    case 'ring':
    case 'line':
    case 'dimension':
    case 'scale':
      return going(state, { gesture: 'span', tool, from, to: from, even: shift, by: 'pointer' });
    case 'outline':
    case 'rectangle':
      return input.again ? unused(state) : pressedCorner(state, from, { ...scene, tool });
    case 'text':
      return going(state, { gesture: 'place', at: from });
    case 'select':
      return take(state, input, scene);
  }
}

function pressedCorner(
  state: WellState,
  at: ImagePoint,
  scene: WellScene & { readonly tool: 'outline' | 'rectangle' },
): WellStep {
  const { gesture } = state;
  const under = gesture?.gesture === 'corners' ? gesture : null;
  if (under === null) {
    return going(state, {
      gesture: 'corners',
      tool: scene.tool,
      corners: [at],
      at,
      by: 'pointer',
      closing: false,
    });
  }
  const first = under.corners[0];
  const isFirst = first !== undefined && near(first, at, reach * scene.ground.unit);
  if (isFirst && under.corners.length > 1) return going(state, { ...under, closing: true });
  return cornerAdded(state, { ...under, at, by: 'pointer' }, scene);
}

/** With the hand: a handle, a mark, or the ground. */
function take(state: WellState, { at, on, shift }: Input<'press'>, scene: WellScene): WellStep {
  const { ground, marks, chosen, readOnly } = scene;
  const alone = aloneChosen(scene);
  const handle =
    alone === null || readOnly || shift
      ? null
      : handleAtPoint(alone.geometry, at, handleReach * ground.unit, ground);
  if (alone !== null && handle !== null) {
    const change = changeOf([alone], handle);
    return going(state, { ...change, grip: { from: at, on, moved: false, pressed: alone.id } });
  }
  const id = markAtPoint(marks, at, reach * ground.unit);
  if (id === null) {
    if (shift) return going(state, { gesture: 'frame', from: at, to: at });
    return going(state, { gesture: 'pan', begun: on, at: on, moved: false, under: null });
  }
  if (shift) return rest(state, [{ deed: 'choose', ids: [id], how: 'toggle' }]);
  const deeds: WellDeed[] = chosen.has(id) ? [] : [{ deed: 'choose', ids: [id], how: 'only' }];
  if (readOnly) return rest(state, deeds);
  const held = chosen.has(id)
    ? marks.filter((mark) => chosen.has(mark.id))
    : marks.filter((m) => m.id === id);
  const change = changeOf(held, 'whole');
  return going(state, { ...change, grip: { from: at, on, moved: false, pressed: id } }, deeds);
}

export function dragged(
  state: WellState,
  { at, on, shift }: Pick<Input<'drag'>, 'at' | 'on' | 'shift'>,
  { ground }: WellScene,
): WellStep {
  const { gesture } = state;
  switch (gesture?.gesture) {
    case 'pan': {
      const far = Math.hypot(on.x - gesture.begun.x, on.y - gesture.begun.y) >= shortestDrag;
      const moved = gesture.moved || far;
      const deeds: WellDeed[] = moved
        ? [{ deed: 'pan', byX: on.x - gesture.at.x, byY: on.y - gesture.at.y }]
        : [];
      // Until it counts as a drag the ground stays under the pointer's first place, so that it does not lag behind.
      return going(state, { ...gesture, at: moved ? on : gesture.at, moved }, deeds);
    }
    case 'frame':
      return going(state, { ...gesture, to: at });
    case 'span':
      if (gesture.by === 'keys') return unused(state);
      return going(state, { ...gesture, to: withinImage(ground.image, at), even: shift });
    case 'change': {
      const { grip } = gesture;
      if (grip === null) return unused(state);
      const moved = grip.moved || Math.hypot(on.x - grip.on.x, on.y - grip.on.y) >= shortestDrag;
      if (!moved) return unused(state);
      const after = changed(gesture, at.x - grip.from.x, at.y - grip.from.y, ground);
      return going(state, { ...gesture, after, grip: { ...grip, moved } });
    }
    case 'place':
    case 'cross':
    case 'corners':
    case undefined:
      return unused(state);
  }
}

/** The next corner of an outline follows the pointer. */
export function hovered(state: WellState, at: ImagePoint, { ground }: WellScene): WellStep {
  const { gesture } = state;
  if (gesture?.gesture !== 'corners') return unused(state);
  return going(state, { ...gesture, at: withinImage(ground.image, at), by: 'pointer' });
}

export function released(state: WellState, input: Input<'release'>, scene: WellScene): WellStep {
  const moved = dragged(state, input, scene);
  const after = moved.state;
  const { gesture } = after;
  switch (gesture?.gesture) {
    case 'pan': {
      const click = !gesture.moved && gesture.under === null && scene.tool === 'select';
      const deeds: WellDeed[] = click ? [{ deed: 'choose', ids: [], how: 'only' }] : moved.deeds.slice();
      return gesture.under === null ? rest(after, deeds) : going(after, gesture.under, deeds);
    }
    case 'frame': {
      const ids = marksInBox(scene.marks, gesture.from, gesture.to);
      return rest(after, ids.length === 0 ? [] : [{ deed: 'choose', ids, how: 'add' }]);
    }
    case 'span':
      return gesture.by === 'keys' ? unused(state) : drawn(after, gesture, scene);
    case 'place':
      return rest(after, [{ deed: 'write', at: gesture.at }]);
    case 'change': {
      const { grip } = gesture;
      if (grip === null) return unused(state);
      const changes = changesOf(gesture);
      if (changes.length > 0) return rest(after, [{ deed: 'reshaped', changes }]);
      // A click on one of several chosen chooses it alone.
      const several = !grip.moved && scene.chosen.size > 1 && scene.chosen.has(grip.pressed);
      return rest(after, several ? [{ deed: 'choose', ids: [grip.pressed], how: 'only' }] : []);
    }
    case 'corners':
      return gesture.closing ? closeCorners(after, { ...gesture, closing: false }, scene) : unused(state);
    case 'cross':
    case undefined:
      return unused(state);
  }
}

/** The mark that alone is chosen; null where none or several are. */
export function aloneChosen({ marks, chosen }: WellScene): PlacedMark<MarkId> | null {
  if (chosen.size !== 1) return null;
  return marks.find(({ id }) => chosen.has(id)) ?? null;
}

export function changeOf(marks: readonly PlacedMark<MarkId>[], hold: Hold): ChangeGesture {
  const before = marks.map(({ id, geometry }) => ({ id, geometry }));
  return { gesture: 'change', before, after: before, hold, grip: null };
}

/** The marks of a change moved by image pixels from where they were, or one handle of the only one. */
export function changed(
  { before, hold }: Pick<ChangeGesture, 'before' | 'hold'>,
  byX: number,
  byY: number,
  ground: Ground,
): readonly Reshape[] {
  if (hold === 'whole') {
    const moved = moveMarks(
      before.map(({ geometry }) => geometry),
      byX,
      byY,
      ground.image,
    );
    return before.map(({ id, geometry }, index) => ({ id, geometry: moved[index] ?? geometry }));
  }
  return before.map(({ id, geometry }) => {
    const handle = handlesOf(geometry, ground).find(({ name }) => name === hold);
    if (handle === undefined) return { id, geometry };
    const to = imagePoint(handle.at.x + byX, handle.at.y + byY);
    return { id, geometry: moveHandle(geometry, hold, to, ground) };
  });
}

function near(one: ImagePoint, other: ImagePoint, within: number): boolean {
  return Math.hypot(one.x - other.x, one.y - other.y) <= within;
}

/** The form of the pointer over a place. */
export function cursorAt(at: ImagePoint, gesture: Gesture | null, scene: WellScene): string {
  if (gesture?.gesture === 'pan') return 'grabbing';
  if (scene.tool === 'text') return 'text';
  if (scene.tool !== 'select') return 'crosshair';
  const alone = aloneChosen(scene);
  const { ground, marks } = scene;
  const onHandle =
    alone !== null && handleAtPoint(alone.geometry, at, handleReach * ground.unit, ground) !== null;
  if (onHandle && !scene.readOnly) return 'move';
  return markAtPoint(marks, at, reach * ground.unit) === null ? 'grab' : 'pointer';
}
