/** How a drawing ends: as a mark, or with words that say why not. */
import type { MarkGeometry } from '#shared-types/mark.ts';
import { isMeant } from '../mark-handles.ts';
import { fewestCorners, mostCorners } from '../mark-kinds/outline.ts';
import { rectangleCorners } from '../mark-kinds/rectangle.ts';
import { spanGeometry, type CornersGesture, type SpanGesture } from './gesture.ts';
import { going, rest, say, type WellScene, type WellState, type WellStep } from './well-state.ts';

/** The span as a mark. One too small to be meant by the pointer was a click; by keys it goes on and is said. */
export function drawn(state: WellState, span: SpanGesture, scene: WellScene): WellStep {
  const geometry = spanGeometry(span, scene.ground.image);
  if (isMeant(geometry, scene.ground.unit)) return made(state, geometry);
  return span.by === 'pointer' ? rest(state) : going(state, span, [say({ heard: 'too-small' })]);
}

/** Sets a corner where the next would be; the fourth of a rectangle ends it. */
export function cornerAdded(state: WellState, under: CornersGesture, scene: WellScene): WellStep {
  if (under.corners.length >= mostCorners) return going(state, under, [say({ heard: 'too-many-corners' })]);
  const corners = [...under.corners, under.at];
  if (under.tool === 'rectangle' && corners.length === rectangleCorners) {
    return rectangleDrawn(state, { ...under, corners }, scene);
  }
  return going(state, { ...under, corners }, [say({ heard: 'corner', count: corners.length })]);
}

function rectangleDrawn(state: WellState, under: CornersGesture, scene: WellScene): WellStep {
  const geometry: MarkGeometry = { kind: 'rectangle', v: 1, corners: [...under.corners], sides: null };
  if (isMeant(geometry, scene.ground.unit)) return made(state, geometry);
  return rest(state, [say({ heard: 'too-small' })]);
}

/** Closes the outline; with too few corners it goes on, and so does a rectangle, which closes itself. */
export function closeCorners(state: WellState, under: CornersGesture, scene: WellScene): WellStep {
  const { corners, tool } = under;
  if (tool === 'rectangle') return going(state, under, [say({ heard: 'too-few-corners' })]);
  if (corners.length < fewestCorners) return going(state, under, [say({ heard: 'too-few-corners' })]);
  const geometry: MarkGeometry = { kind: 'outline', v: 1, corners: [...corners] };
  if (isMeant(geometry, scene.ground.unit)) return made(state, geometry);
  return going(state, under, [say({ heard: 'too-small' })]);
}

function made(state: WellState, geometry: MarkGeometry): WellStep {
  return rest(state, [say({ heard: 'drawn' }), { deed: 'drawn', geometry }]);
}
