/** How a drawing ends: as a mark, or with words that say why not. */
import type { MarkGeometry } from '#shared-types/mark.ts';
import { isMeant } from '../mark-handles.ts';
import { fewestCorners, mostCorners } from '../mark-kinds/outline.ts';
import { spanGeometry, type CornersGesture, type SpanGesture } from './gesture.ts';
import { going, rest, say, type WellScene, type WellState, type WellStep } from './well-state.ts';

/** The span as a mark. One too small to be meant by the pointer was a click; by keys it goes on and is said. */
export function drawn(state: WellState, span: SpanGesture, scene: WellScene): WellStep {
  const geometry = spanGeometry(span, scene.ground.image);
  if (isMeant(geometry, scene.ground.unit)) return made(state, geometry);
  return span.by === 'pointer' ? rest(state) : going(state, span, [say({ heard: 'too-small' })]);
}

/** Sets a corner where the outline's next would be. */
export function cornerAdded(state: WellState, under: CornersGesture): WellStep {
  if (under.corners.length >= mostCorners) return going(state, under, [say({ heard: 'too-many-corners' })]);
  const corners = [...under.corners, under.at];
  return going(state, { ...under, corners }, [say({ heard: 'corner', count: corners.length })]);
}

/** Closes the outline; with too few corners it goes on. */
export function closeCorners(state: WellState, under: CornersGesture, scene: WellScene): WellStep {
  const { corners } = under;
  if (corners.length < fewestCorners) return going(state, under, [say({ heard: 'too-few-corners' })]);
  const geometry: MarkGeometry = { kind: 'outline', v: 1, corners: [...corners] };
  if (isMeant(geometry, scene.ground.unit)) return made(state, geometry);
  return going(state, under, [say({ heard: 'too-small' })]);
}

function made(state: WellState, geometry: MarkGeometry): WellStep {
  return rest(state, [say({ heard: 'drawn' }), { deed: 'drawn', geometry }]);
}
