/** Things that would follow from themselves: a net with a loop has no answer, a kind cannot narrow itself. */
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { knowledgeTexts } from '#shared-types/texts/knowledge.ts';

import type { PackFault } from './pack-place.ts';

/** What each id leads to; ids that are no key lead nowhere. */
type Leads = ReadonlyMap<string, readonly string[]>;

/** Mechanisms have no causes and nothing follows from a mark, so only conditions can run in a loop. */
export function* packLoops(pack: KnowledgePack): Generator<PackFault> {
  const wider = new Map(
    pack.kinds.map((kind) => [kind.id, kind.narrows === undefined ? [] : [kind.narrows]]),
  );
  const kindLoop = findLoop(wider);
  if (kindLoop !== null) yield faultAt(['kinds', indexOf(pack.kinds, kindLoop), 'narrows'], kindLoop);

  const effects = new Map<string, string[]>(pack.conditions.map((condition) => [condition.id, []]));
  for (const condition of pack.conditions) {
    for (const cause of condition.causes) effects.get(cause.from)?.push(condition.id);
  }
  const loop = findLoop(effects);
  if (loop !== null) yield faultAt(['conditions', indexOf(pack.conditions, loop), 'causes'], loop);
}

/**
 * One loop as the ids met on the way round, the first again at the end (`a, b, a`), begun at the id that comes
 * first among the keys; null where there is none. Depth first; every id is left once and for all.
 */
export function findLoop(leads: Leads): string[] | null {
  const order = [...leads.keys()];
  const cleared = new Set<string>();

  function follow(id: string, trail: readonly string[]): string[] | null {
    if (trail.includes(id)) return trail.slice(trail.indexOf(id));
    if (cleared.has(id)) return null;
    for (const to of leads.get(id) ?? []) {
      const round = follow(to, [...trail, id]);
      if (round !== null) return round;
    }
    cleared.add(id);
    return null;
  }

  for (const start of order) {
    const round = follow(start, []);
    if (round !== null) return fromFirst(round, order);
  }
  return null;
}

function fromFirst(round: readonly string[], order: readonly string[]): string[] {
  const places = round.map((id) => order.indexOf(id));
  const first = places.indexOf(Math.min(...places));
  const turned = [...round.slice(first), ...round.slice(0, first)];
  return [...turned, ...turned.slice(0, 1)];
}

function indexOf(entries: readonly { readonly id: string }[], loop: readonly string[]): number {
  return entries.findIndex((entry) => entry.id === loop[0]);
}

function faultAt(path: PackFault['path'], loop: readonly string[]): PackFault {
  return { path, reason: knowledgeTexts.refusals.loop(loop.join(' -> ')) };
}
