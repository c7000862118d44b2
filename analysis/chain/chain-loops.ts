/** Cause and effect can be drawn only where nothing leads back to itself: finds a loop and says which way it goes. */
import type { ChainNodeId } from '#shared-types/ids.ts';

export type Leads = { readonly causeId: ChainNodeId; readonly effectId: ChainNodeId };

/**
 * A shortest loop among the links, as the nodes along it in the direction of the arrows: the first is the cause of the
 * latest link that lies on one of the shortest, and stands at the end again. Null where there is no loop.
 */
export function findLoop(links: readonly Leads[]): readonly ChainNodeId[] | null {
  const onLoops = withoutLooseEnds(links);
  const effectsOf = byCause(onLoops);
  let shortest: readonly ChainNodeId[] | null = null;
  for (const { causeId, effectId } of onLoops) {
    const back = shortestWay(effectsOf, effectId, causeId);
    if (back !== null && (shortest === null || back.length + 1 <= shortest.length)) {
      shortest = [causeId, ...back];
    }
  }
  return shortest;
}

/** Whether `from` is `to`, or leads there. */
export function leadsTo(links: readonly Leads[], from: ChainNodeId, to: ChainNodeId): boolean {
  return shortestWay(byCause(links), from, to) !== null;
}

/** Every node that leads to `nodeId`, over any number of links; not the node itself. */
export function upstreamOf(links: readonly Leads[], nodeId: ChainNodeId): ReadonlySet<ChainNodeId> {
  return reached(
    links.map(({ causeId, effectId }) => ({ causeId: effectId, effectId: causeId })),
    nodeId,
  );
}

/** Every node that follows from `nodeId`, over any number of links; not the node itself. */
export function downstreamOf(links: readonly Leads[], nodeId: ChainNodeId): ReadonlySet<ChainNodeId> {
  return reached(links, nodeId);
}

function reached(links: readonly Leads[], start: ChainNodeId): ReadonlySet<ChainNodeId> {
  const effectsOf = byCause(links);
  const found = new Set<ChainNodeId>();
  const waiting = [start];
  for (let here = waiting.pop(); here !== undefined; here = waiting.pop()) {
    for (const next of effectsOf.get(here) ?? []) {
      if (found.has(next)) continue;
      found.add(next);
      waiting.push(next);
    }
  }
  found.delete(start);
  return found;
}

/** Only links between nodes that have both a cause and an effect left, again and again: what is left are the loops. */
function withoutLooseEnds(links: readonly Leads[]): readonly Leads[] {
  let left = links;
  for (;;) {
    const causes = new Set(left.map((link) => link.causeId));
    const effects = new Set(left.map((link) => link.effectId));
    const kept = left.filter(({ causeId, effectId }) => effects.has(causeId) && causes.has(effectId));
    if (kept.length === left.length) return left;
    left = kept;
  }
}

function byCause(links: readonly Leads[]): ReadonlyMap<ChainNodeId, readonly ChainNodeId[]> {
  const effectsOf = new Map<ChainNodeId, ChainNodeId[]>();
  for (const { causeId, effectId } of links) {
    const known = effectsOf.get(causeId);
    if (known === undefined) effectsOf.set(causeId, [effectId]);
    else known.push(effectId);
  }
  return effectsOf;
}

/** The nodes from `from` to `to` in the direction of the arrows, both ends with them; null where there is no way. */
function shortestWay(
  effectsOf: ReadonlyMap<ChainNodeId, readonly ChainNodeId[]>,
  from: ChainNodeId,
  to: ChainNodeId,
): readonly ChainNodeId[] | null {
  const before = new Map<ChainNodeId, ChainNodeId | null>([[from, null]]);
  const waiting = [from];
  for (const here of waiting) {
    if (here === to) {
      const way: ChainNodeId[] = [];
      for (let at: ChainNodeId | null = here; at !== null; at = before.get(at) ?? null) way.unshift(at);
      return way;
    }
    for (const next of effectsOf.get(here) ?? []) {
      if (before.has(next)) continue;
      before.set(next, here);
      waiting.push(next);
    }
  }
  return null;
}
