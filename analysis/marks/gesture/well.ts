/**
 * The photo as pointer and keyboard work on it: a pure machine. An input leads from one state to the next and says
 * which deeds came of it. Only deeds change anything: a state that is thrown away leaves no trace.
 */
import { belongsTo } from './gesture.ts';
import { backed, closedByDouble, entered, stepped } from './key-inputs.ts';
import { dragged, hovered, pressed, released } from './pointer-inputs.ts';
import {
  finished,
  rest,
  say,
  type WellInput,
  type WellScene,
  type WellState,
  type WellStep,
} from './well-state.ts';

export function stepWell(state: WellState, input: WellInput, scene: WellScene): WellStep {
  const before = fitting(state, scene);
  switch (input.input) {
    case 'press':
      return pressed(before, input, scene);
    case 'drag':
      return dragged(before, input, scene);
    case 'hover':
      return hovered(before, input.at, scene);
    case 'release':
      return released(before, input, scene);
    case 'double':
      return closedByDouble(before, input.at, scene);
    case 'step':
      return stepped(before, input, scene);
    case 'steps-end':
    case 'leave':
      return finished(before);
    case 'enter':
      return entered(before, input.backwards, scene);
    case 'back':
      return backed(before);
    case 'escape':
      return escaped(before);
  }
}

/** The gesture without what belongs to a tool no longer chosen. */
function fitting(state: WellState, { tool }: WellScene): WellState {
  return state.gesture === null || belongsTo(state.gesture, tool) ? state : { ...state, gesture: null };
}

function escaped(state: WellState): WellStep {
  const { gesture } = state;
  if (gesture === null) return { state, deeds: [{ deed: 'escape' }], used: true };
  const silent = gesture.gesture === 'pan' && gesture.under === null;
  return rest(state, silent ? [] : [say({ heard: 'cancelled' })]);
}
