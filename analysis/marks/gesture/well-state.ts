/** States, inputs and deeds of the photo as pointer and keyboard work on it. */
import type { MarkId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { ImagePoint, ScreenPoint } from '#shared-types/points.ts';
import type { Reshape } from '../bench-deeds.ts';
import type { PlacedMark } from '../mark-at-point.ts';
import { sameGeometry, type Ground } from '../mark-handles.ts';
import { belongsTo, type ChangeGesture, type Gesture, type Hold, type Tool } from './gesture.ts';

/** What the gestures work on; nothing of it is theirs to change. */
export type WellScene = {
  readonly tool: Tool;
  /** Marks can be looked at and chosen, not changed. */
  readonly readOnly: boolean;
  readonly ground: Ground;
  /** Those in sight, in drawing order, the topmost last. */
  readonly marks: readonly PlacedMark<MarkId>[];
  readonly chosen: ReadonlySet<MarkId>;
};

export type WellState = {
  readonly gesture: Gesture | null;
  /** What the arrow keys move, as long as that mark alone is chosen. */
  readonly hold: { readonly id: MarkId; readonly hold: Hold } | null;
};

export const restingWell: WellState = { gesture: null, hold: null };

type PointerPlace = { readonly at: ImagePoint; readonly on: ScreenPoint; readonly shift: boolean };

export type WellInput =
  | (PointerPlace & {
      readonly input: 'press';
      /** The space bar or the middle button: the picture is moved whatever the tool. */
      readonly pans: boolean;
      /** The second press of a double click. */
      readonly again: boolean;
    })
  | (PointerPlace & { readonly input: 'drag' })
  | { readonly input: 'hover'; readonly at: ImagePoint }
  | (PointerPlace & { readonly input: 'release' })
  | { readonly input: 'double'; readonly at: ImagePoint }
  /** An arrow key, in CSS pixels; `start` is where the cross appears. */
  | { readonly input: 'step'; readonly byX: number; readonly byY: number; readonly start: ImagePoint }
  /** The last arrow key was let go. */
  | { readonly input: 'steps-end' }
  | { readonly input: 'enter'; readonly backwards: boolean }
  | { readonly input: 'back' }
  | { readonly input: 'escape' }
  /** The keyboard went elsewhere. */
  | { readonly input: 'leave' };

/** For those who hear the screen. */
export type Heard =
  | {
      readonly heard:
        'from-set' | 'drawn' | 'cancelled' | 'too-small' | 'too-few-corners' | 'too-many-corners';
    }
  | { readonly heard: 'corner'; readonly count: number }
  | { readonly heard: 'hold'; readonly hold: Hold };

export type WellDeed =
  | {
      readonly deed: 'choose';
      readonly ids: readonly MarkId[];
      readonly how: 'only' | 'toggle' | 'add';
    }
  | { readonly deed: 'drawn'; readonly geometry: MarkGeometry }
  | { readonly deed: 'reshaped'; readonly changes: readonly Reshape[] }
  | { readonly deed: 'write'; readonly at: ImagePoint }
  | { readonly deed: 'rewrite'; readonly id: MarkId }
  /** CSS pixels. */
  | { readonly deed: 'pan'; readonly byX: number; readonly byY: number }
  | { readonly deed: 'fit' }
  | { readonly deed: 'show'; readonly at: ImagePoint }
  | { readonly deed: 'say'; readonly words: Heard }
  /** Escape with nothing under way. */
  | { readonly deed: 'escape' };

export type WellStep = {
  readonly state: WellState;
  readonly deeds: readonly WellDeed[];
  /** The input meant something here: nobody else shall take it. */
  readonly used: boolean;
};

/** The gesture that is to be shown under the tool chosen now. */
export function shownGesture(state: WellState, scene: Pick<WellScene, 'tool'>): Gesture | null {
  return state.gesture !== null && belongsTo(state.gesture, scene.tool) ? state.gesture : null;
}

/** What the arrow keys move of the mark that alone is chosen; the whole where several are. */
export function holdOf({ hold }: WellState, chosen: ReadonlySet<MarkId>): Hold {
  return hold !== null && chosen.size === 1 && chosen.has(hold.id) ? hold.hold : 'whole';
}

export function rest(state: WellState, deeds: readonly WellDeed[] = []): WellStep {
  return { state: { ...state, gesture: null }, deeds, used: true };
}

export function going(state: WellState, gesture: Gesture, deeds: readonly WellDeed[] = []): WellStep {
  return { state: { ...state, gesture }, deeds, used: true };
}

export function unused(state: WellState): WellStep {
  return { state, deeds: [], used: false };
}

export function say(words: Heard): WellDeed {
  return { deed: 'say', words };
}

/** What a change comes to: nothing where everything is as it was. */
export function changesOf({ before, after }: ChangeGesture): readonly Reshape[] {
  return after.filter(({ geometry }, index) => {
    const was = before[index];
    return was !== undefined && !sameGeometry(was.geometry, geometry);
  });
}

/** A change by keys is kept when the keys are let go or the keyboard goes elsewhere; everything else waits. */
export function finished(state: WellState): WellStep {
  const { gesture } = state;
  if (gesture?.gesture !== 'change' || gesture.grip !== null) return unused(state);
  const changes = changesOf(gesture);
  return rest(state, changes.length === 0 ? [] : [{ deed: 'reshaped', changes }]);
}
