/** The single places at which a pattern can come true, each a question with its own answer. */
import type { KnowledgePack, MarkPredicate } from '#shared-types/knowledge-pack.ts';

import { componentOf, kindAndItsCases, kindsFor, quantityOf } from './pack-terms.ts';

/**
 * One kind of damage at one zone of one part. `position` is null where the part is single; `zone` is null for
 * what can only be said of the part as a whole.
 */
export type FindingPlace = {
  readonly test: 'finding';
  readonly component: string;
  readonly position: string | null;
  readonly zone: string | null;
  readonly kind: string;
};

/** One quantity at one part. `position` is null where the part is single. */
export type MeasurementPlace = {
  readonly test: 'measurement';
  readonly quantity: string;
  readonly position: string | null;
};

export type MarkPlace = FindingPlace | MeasurementPlace;

/** Null position: each of the part's. No zones: each of them, and the part as a whole. */
export type FindingReach = {
  readonly component: string;
  readonly position: string | null;
  readonly zones: readonly string[];
  readonly kinds: readonly string[];
};

/**
 * Every place that the words take in, with the narrower cases of each kind; a kind counts only where the pack
 * says that it can occur.
 *
 * @throws AppError `term-unknown` {list, id}
 */
export function findingPlaces(pack: KnowledgePack, reach: FindingReach): FindingPlace[] {
  const component = componentOf(pack, reach.component);
  const zones = reach.zones.length > 0 ? reach.zones : [...component.zones.map((zone) => zone.id), null];
  const kinds = new Set(reach.kinds.flatMap((kind) => kindAndItsCases(pack, kind)));
  const places: FindingPlace[] = [];
  for (const zone of zones) {
    const possible = zone === null ? component.kinds : kindsFor(pack, component.id, zone).map(({ id }) => id);
    for (const position of positionsNamed(component.positions, reach.position)) {
      for (const kind of possible) {
        if (kinds.has(kind)) places.push({ test: 'finding', component: component.id, position, zone, kind });
      }
    }
  }
  return places;
}

/** @throws AppError `term-unknown` {list, id} */
export function measurementPlaces(
  pack: KnowledgePack,
  reach: { readonly quantity: string; readonly position: string | null },
): MeasurementPlace[] {
  const { id, component } = quantityOf(pack, reach.quantity);
  const positions = component === null ? [] : componentOf(pack, component).positions;
  return positionsNamed(positions, reach.position).map((position) => ({
    test: 'measurement',
    quantity: id,
    position,
  }));
}

/** Where a single pattern can come true. */
export function placesOfPattern(
  pack: KnowledgePack,
  pattern: Extract<MarkPredicate, { test: 'finding' | 'measurement' }>,
): MarkPlace[] {
  return pattern.test === 'finding' ? findingPlaces(pack, pattern) : measurementPlaces(pack, pattern);
}

/** The same text for the same place, different for different ones: ids hold no space. */
export function placeKey(place: MarkPlace): string {
  return place.test === 'finding'
    ? [place.component, place.position ?? '', place.zone ?? '', place.kind].join(' ')
    : [place.quantity, place.position ?? ''].join(' ');
}

function positionsNamed(all: readonly string[], named: string | null): readonly (string | null)[] {
  if (named !== null) return [named];
  return all.length > 0 ? all : [null];
}
