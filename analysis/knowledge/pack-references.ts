/** Ids that are named somewhere in a pack and exist nowhere, or do not belong where they are named. */
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { knowledgeTexts } from '#shared-types/texts/knowledge.ts';

import type { PackFault, PackPath } from './pack-place.ts';
import { predicateReferences } from './predicate-references.ts';

const { refusals } = knowledgeTexts;

/** In the order of the file. */
export function* brokenReferences(pack: KnowledgePack): Generator<PackFault> {
  const kinds = idsOf(pack.kinds);
  const positions = idsOf(pack.positions);
  for (const [index, kind] of pack.kinds.entries()) {
    if (kind.narrows !== undefined && !kinds.has(kind.narrows)) {
      yield { path: ['kinds', index, 'narrows'], reason: refusals.unknownId('kind', kind.narrows) };
    }
  }
  for (const [index, component] of pack.components.entries()) {
    const path = ['components', index];
    yield* unknownWords('position', component.positions, positions, [...path, 'positions']);
    for (const [at, zone] of component.zones.entries()) {
      yield* unknownWords('kind', zone.kinds, kinds, [...path, 'zones', at, 'kinds']);
    }
    yield* unknownWords('kind', component.kinds, kinds, [...path, 'kinds']);
  }
  yield* quantityReferences(pack);
  const mechanisms = idsOf(pack.mechanisms);
  const conditions = idsOf(pack.conditions);
  const causes = new Set([...mechanisms, ...conditions]);
  for (const [index, condition] of pack.conditions.entries()) {
    yield* unknownCauses(condition.causes, causes, ['conditions', index, 'causes']);
  }
  for (const [index, mark] of pack.marks.entries()) {
    yield* predicateReferences(pack, mark.predicate, ['marks', index, 'predicate']);
    yield* unknownCauses(mark.causes, causes, ['marks', index, 'causes']);
  }
}

function* quantityReferences(pack: KnowledgePack): Generator<PackFault> {
  for (const [index, quantity] of pack.quantities.entries()) {
    const path = ['quantities', index];
    const { component: componentId, zone } = quantity;
    if (componentId === null) {
      if (zone !== null) yield { path: [...path, 'zone'], reason: refusals.zoneWithoutComponent };
      continue;
    }
    const component = pack.components.find((each) => each.id === componentId);
    if (component === undefined) {
      yield { path: [...path, 'component'], reason: refusals.unknownId('component', componentId) };
    } else if (zone !== null && !component.zones.some((each) => each.id === zone)) {
      yield { path: [...path, 'zone'], reason: refusals.notOfComponent('zone', zone, componentId) };
    }
  }
}

function* unknownCauses(
  causes: readonly { readonly from: string }[],
  known: ReadonlySet<string>,
  path: PackPath,
): Generator<PackFault> {
  for (const [index, { from }] of causes.entries()) {
    if (!known.has(from)) {
      yield { path: [...path, index, 'from'], reason: refusals.unknownId('mechanism or condition', from) };
    }
  }
}

function* unknownWords(
  what: string,
  words: readonly string[],
  known: ReadonlySet<string>,
  path: PackPath,
): Generator<PackFault> {
  for (const [index, word] of words.entries()) {
    if (!known.has(word)) yield { path: [...path, index], reason: refusals.unknownId(what, word) };
  }
}

function idsOf(entries: readonly { readonly id: string }[]): Set<string> {
  return new Set(entries.map((entry) => entry.id));
}
