/**
 * A sense of turning seen from one side, as it is seen from another. From the two ends of an axis it is each other's
 * mirror: plain geometry, and common practice of the trade without a published source.
 */
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { SeenTurning, TurningSense } from '#shared-types/rotation.ts';

export type AxisEnd = 'first' | 'second';

/** From which end a side looks along the axis; null where it does not, or where the pack has no such side. */
export function axisEndOf(pack: KnowledgePack, sideId: string): AxisEnd | null {
  return pack.sides.find((side) => side.id === sideId)?.axisEnd ?? null;
}

/** Whether the pack says of any side that it looks along the axis; its first versions did not. */
export function knowsAxisEnds(pack: KnowledgePack): boolean {
  return pack.sides.some((side) => side.axisEnd !== undefined);
}

export function mirrored(sense: TurningSense): TurningSense {
  return sense === 'clockwise' ? 'anticlockwise' : 'clockwise';
}

/** The sense as it is seen from `side`; null where either side does not look along the axis. */
export function senseFrom(pack: KnowledgePack, turning: SeenTurning, side: string): TurningSense | null {
  const seenAt = axisEndOf(pack, turning.seenFrom);
  const wanted = axisEndOf(pack, side);
  if (seenAt === null || wanted === null) return null;
  return seenAt === wanted ? turning.sense : mirrored(turning.sense);
}
