/** Ids that stand twice where each may stand once. */
import type { KnowledgePack, MarkPredicate } from '#shared-types/knowledge-pack.ts';
import { knowledgeTexts } from '#shared-types/texts/knowledge.ts';

import type { PackFault, PackPath } from './pack-place.ts';

const { refusals } = knowledgeTexts;

/**
 * Every list of a pack, in the order of the file. Mechanisms, conditions and marks are the nodes of one net and
 * a cause names any of the first two, so an id may stand only once among all three.
 */
export function* duplicateIds(pack: KnowledgePack): Generator<PackFault> {
  yield* entriesTwice(pack.positions, ['positions']);
  yield* entriesTwice(pack.sides, ['sides']);
  yield* entriesTwice(pack.kinds, ['kinds']);
  yield* entriesTwice(pack.components, ['components']);
  for (const [index, component] of pack.components.entries()) {
    const path = ['components', index];
    yield* wordsTwice(component.positions, [...path, 'positions']);
    yield* entriesTwice(component.zones, [...path, 'zones']);
    for (const [at, zone] of component.zones.entries()) {
      yield* wordsTwice(zone.kinds, [...path, 'zones', at, 'kinds']);
    }
    yield* wordsTwice(component.kinds, [...path, 'kinds']);
  }
  yield* entriesTwice(pack.quantities, ['quantities']);
  yield* nodesTwice(pack);
  for (const [index, condition] of pack.conditions.entries()) {
    yield* causesTwice(condition.causes, ['conditions', index, 'causes']);
  }
  for (const [index, mark] of pack.marks.entries()) {
    yield* predicateTwice(mark.predicate, ['marks', index, 'predicate']);
    yield* causesTwice(mark.causes, ['marks', index, 'causes']);
  }
}

function* entriesTwice(entries: readonly { readonly id: string }[], path: PackPath): Generator<PackFault> {
  const seen = new Set<string>();
  for (const [index, { id }] of entries.entries()) {
    if (seen.has(id)) yield { path: [...path, index, 'id'], reason: refusals.twice(id) };
    seen.add(id);
  }
}

function* wordsTwice(words: readonly string[], path: PackPath): Generator<PackFault> {
  const seen = new Set<string>();
  for (const [index, word] of words.entries()) {
    if (seen.has(word)) yield { path: [...path, index], reason: refusals.twice(word) };
    seen.add(word);
  }
}

function* causesTwice(causes: readonly { readonly from: string }[], path: PackPath): Generator<PackFault> {
  const seen = new Set<string>();
  for (const [index, { from }] of causes.entries()) {
    if (seen.has(from)) yield { path: [...path, index, 'from'], reason: refusals.twice(from) };
    seen.add(from);
  }
}

function* nodesTwice(pack: KnowledgePack): Generator<PackFault> {
  const listOf = new Map<string, string>();
  for (const list of ['mechanisms', 'conditions', 'marks'] as const) {
    for (const [index, { id }] of pack[list].entries()) {
      const taken = listOf.get(id);
      const path = [list, index, 'id'];
      if (taken === list) yield { path, reason: refusals.twice(id) };
      else if (taken !== undefined) yield { path, reason: refusals.takenBy(id, taken) };
      else listOf.set(id, list);
    }
  }
}

function* predicateTwice(predicate: MarkPredicate, path: PackPath): Generator<PackFault> {
  if (predicate.test === 'finding') {
    yield* wordsTwice(predicate.zones, [...path, 'zones']);
    yield* wordsTwice(predicate.kinds, [...path, 'kinds']);
  } else if (predicate.test !== 'measurement') {
    for (const [index, part] of predicate.of.entries()) yield* predicateTwice(part, [...path, 'of', index]);
  }
}
