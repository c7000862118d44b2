/**
 * Which way blades are bent, beside the way the rotor turns. A blade that rubs its housing while turning bends opposite
 * to the rotation; one bent with it points to a strike at rest, to handling or to a foreign object, and asks for
 * another look. Common practice of the trade, without a published source.
 */
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { SeenTurning } from '#shared-types/rotation.ts';

import { axisEndOf, knowsAxisEnds, senseFrom } from './turning.ts';

/**
 * Why nothing can be said:
 * - pack-silent: this version of the machine kind's data does not say which sides look along the axis;
 * - bend-side, rotation-side: that side does not look along the axis, so no sense of turning is seen from it;
 * - no-rotation: which way the rotor turns was not entered.
 */
export type Undecided = 'pack-silent' | 'bend-side' | 'no-rotation' | 'rotation-side';

export type BendReading =
  { readonly reads: 'against' | 'with' } | { readonly reads: 'not-decided'; readonly because: Undecided };

/** Of several reasons, the one is told that the analyst can do something about first. */
export function bendAgainstRotation(
  pack: KnowledgePack,
  rotation: SeenTurning | null,
  bend: SeenTurning,
): BendReading {
  if (!knowsAxisEnds(pack)) return undecided('pack-silent');
  if (axisEndOf(pack, bend.seenFrom) === null) return undecided('bend-side');
  if (rotation === null) return undecided('no-rotation');
  const turns = senseFrom(pack, rotation, bend.seenFrom);
  if (turns === null) return undecided('rotation-side');
  return { reads: turns === bend.sense ? 'with' : 'against' };
}

function undecided(because: Undecided): BendReading {
  return { reads: 'not-decided', because };
}
