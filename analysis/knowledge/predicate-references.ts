/** What a mark's predicate names that its pack does not have, or that could never come true. */
import type { KnowledgePack, MarkPredicate, PackComponent } from '#shared-types/knowledge-pack.ts';
import { knowledgeTexts } from '#shared-types/texts/knowledge.ts';

import type { PackFault, PackPath } from './pack-place.ts';

const { refusals } = knowledgeTexts;

type FindingPattern = Extract<MarkPredicate, { test: 'finding' }>;
type MeasurementPattern = Extract<MarkPredicate, { test: 'measurement' }>;

/** `path` leads to the predicate itself. */
export function* predicateReferences(
  pack: KnowledgePack,
  predicate: MarkPredicate,
  path: PackPath,
): Generator<PackFault> {
  if (predicate.test === 'finding') yield* findingPattern(pack, predicate, path);
  else if (predicate.test === 'measurement') yield* measurementPattern(pack, predicate, path);
  else {
    for (const [index, part] of predicate.of.entries()) {
      yield* predicateReferences(pack, part, [...path, 'of', index]);
    }
  }
}

function* findingPattern(pack: KnowledgePack, pattern: FindingPattern, path: PackPath): Generator<PackFault> {
  const component = pack.components.find((each) => each.id === pattern.component);
  if (component === undefined) {
    yield { path: [...path, 'component'], reason: refusals.unknownId('component', pattern.component) };
    return;
  }
  yield* wrongPosition(pack, component, pattern.position, path);
  for (const [index, zone] of pattern.zones.entries()) {
    if (!component.zones.some((each) => each.id === zone)) {
      const reason = refusals.notOfComponent('zone', zone, component.id);
      yield { path: [...path, 'zones', index], reason };
    }
  }
  yield* kindsNowhere(pack, component, pattern, path);
  yield* shareOfNothing(component, pattern, path);
}

/** A kind that none of the zones can show makes a mark that nobody could ever find. */
function* kindsNowhere(
  pack: KnowledgePack,
  component: PackComponent,
  pattern: FindingPattern,
  path: PackPath,
): Generator<PackFault> {
  const zones = pattern.zones.length === 0 ? component.zones : zonesNamed(component, pattern);
  const possible = new Set([...component.kinds, ...zones.flatMap((zone) => zone.kinds)]);
  for (const [index, kind] of pattern.kinds.entries()) {
    const place = [...path, 'kinds', index];
    if (!pack.kinds.some((each) => each.id === kind)) {
      yield { path: place, reason: refusals.unknownId('kind', kind) };
    } else if (!possible.has(kind)) {
      yield { path: place, reason: refusals.kindNowhere(kind) };
    }
  }
}

function* shareOfNothing(
  component: PackComponent,
  pattern: FindingPattern,
  path: PackPath,
): Generator<PackFault> {
  if (pattern.leastShare === null) return;
  const place = [...path, 'leastShare'];
  if (pattern.zones.length === 0) yield { path: place, reason: refusals.shareNeedsZones };
  for (const zone of zonesNamed(component, pattern)) {
    if (zone.counts === null) yield { path: place, reason: refusals.nothingCounted(zone.id) };
  }
}

function* measurementPattern(
  pack: KnowledgePack,
  pattern: MeasurementPattern,
  path: PackPath,
): Generator<PackFault> {
  const quantity = pack.quantities.find((each) => each.id === pattern.quantity);
  if (quantity === undefined) {
    yield { path: [...path, 'quantity'], reason: refusals.unknownId('quantity', pattern.quantity) };
    return;
  }
  if (pattern.position === null) return;
  if (quantity.component === null) {
    yield { path: [...path, 'position'], reason: refusals.positionWithoutComponent(quantity.id) };
    return;
  }
  const component = pack.components.find((each) => each.id === quantity.component);
  if (component !== undefined) yield* wrongPosition(pack, component, pattern.position, path);
}

function* wrongPosition(
  pack: KnowledgePack,
  component: PackComponent,
  position: string | null,
  path: PackPath,
): Generator<PackFault> {
  if (position === null) return;
  const place = [...path, 'position'];
  if (!pack.positions.some((each) => each.id === position)) {
    yield { path: place, reason: refusals.unknownId('position', position) };
  } else if (!component.positions.includes(position)) {
    yield { path: place, reason: refusals.notOfComponent('position', position, component.id) };
  }
}

function zonesNamed(component: PackComponent, pattern: FindingPattern): PackComponent['zones'] {
  return component.zones.filter((zone) => pattern.zones.includes(zone.id));
}
