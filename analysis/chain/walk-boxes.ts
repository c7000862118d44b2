/** From box to box by arrow keys, and which box lies under a point. Points of the figure. */
import type { Box, Spot } from './chain-layout.ts';

export type WalkDirection = 'left' | 'right' | 'up' | 'down';

type Placed = Box & { readonly id: string };

/** How much a step aside counts against a step ahead. */
const aside = 2;

/** The nearest box whose middle lies in that direction, those straight ahead first; null where there is none. */
export function nextBox<Id extends string>(
  boxes: readonly (Placed & { readonly id: Id })[],
  fromId: Id,
  direction: WalkDirection,
): Id | null {
  const from = boxes.find((box) => box.id === fromId);
  if (from === undefined) return null;
  const level = direction === 'left' || direction === 'right';
  const sign = direction === 'right' || direction === 'down' ? 1 : -1;
  let best: { readonly id: Id; readonly cost: number } | null = null;
  for (const box of boxes) {
    const dx = box.x + box.width / 2 - (from.x + from.width / 2);
    const dy = box.y + box.height / 2 - (from.y + from.height / 2);
    const ahead = sign * (level ? dx : dy);
    if (box.id === fromId || ahead <= 0.5) continue;
    const cost = ahead + aside * Math.abs(level ? dy : dx);
    if (best === null || cost < best.cost) best = { id: box.id, cost };
  }
  return best?.id ?? null;
}

export function boxAt<Id extends string>(
  boxes: readonly (Placed & { readonly id: Id })[],
  { x, y }: Spot,
): Id | null {
  const found = boxes.find(
    (box) => x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height,
  );
  return found?.id ?? null;
}
