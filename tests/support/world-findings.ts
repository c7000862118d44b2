/** Findings as an analyst might enter them, from the parts, zones and kinds a machine kind really has. */
import { kindsFor } from '#analysis/knowledge/pack-terms.ts';
import { damageClasses, severities, type FindingFields } from '#shared-types/finding.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { turningSenses } from '#shared-types/rotation.ts';

import type { Chance } from './world-chance.ts';
import { remarks } from './world-words.ts';

export function drawFinding(pack: KnowledgePack, chance: Chance): FindingFields {
  // Squared, so that the first parts turn up often and the last seldom: a tag is shared by some cases, not by all.
  const place = Math.floor((chance.integer(1_000) / 1_000) ** 2 * pack.components.length);
  const component = pack.components[place] ?? chance.pick(pack.components);
  const zone = chance.happens(0.85) ? chance.pick(component.zones) : null;
  const kind = chance.pick(kindsFor(pack, component.id, zone?.id ?? null));
  const presence = chance.happens(0.75)
    ? 'present'
    : chance.pick(['looked-for-absent', 'not-examined'] as const);
  return {
    component: component.id,
    position: component.positions.length > 0 && chance.happens(0.8) ? chance.pick(component.positions) : null,
    zone: zone?.id ?? null,
    kind: kind.id,
    class: chance.pick(damageClasses),
    presence,
    severity: presence === 'present' && chance.happens(0.6) ? chance.pick(severities) : null,
    extent: presence === 'present' && zone !== null && zone.counts !== null ? drawExtent(chance) : null,
    bend: presence === 'present' && chance.happens(0.1) ? drawBend(pack, chance) : null,
    note: drawWords(chance, [0, 3]),
  };
}

const drawBend = (pack: KnowledgePack, chance: Chance) => ({
  sense: chance.pick(turningSenses),
  seenFrom: chance.pick(pack.sides).id,
});

function drawExtent(chance: Chance) {
  const of = chance.between([3, 14]);
  return { affected: chance.between([0, of]), of };
}

/** Some remarks one after the other; none is an empty text. */
export function drawWords(chance: Chance, range: readonly [number, number]): string {
  return Array.from({ length: chance.between(range) }, () => chance.pick(remarks)).join('; ');
}
