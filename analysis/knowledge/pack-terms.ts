/** Look-ups in a loaded pack by id, and the words its terms stand for. */
import { AppError } from '#shared-types/errors.ts';
import type { FindingFields } from '#shared-types/finding.ts';
import type {
  KnowledgePack,
  PackComponent,
  PackKind,
  PackQuantity,
  PackSide,
  PackZone,
} from '#shared-types/knowledge-pack.ts';
import { knowledgeTexts } from '#shared-types/texts/knowledge.ts';

const { lists } = knowledgeTexts;

/** What a finding is about: the terms it names, without what is said of them. */
export type FindingTerms = Pick<FindingFields, 'component' | 'position' | 'zone' | 'kind'> &
  Partial<Pick<FindingFields, 'bend'>>;

/** @throws AppError `term-unknown` {list, id} */
export function componentOf(pack: KnowledgePack, componentId: string): PackComponent {
  return termOf(pack.components, lists.component, componentId);
}

/** @throws AppError `term-unknown` {list, id} for the component, or for a zone that it does not have */
export function zoneOf(pack: KnowledgePack, componentId: string, zoneId: string): PackZone {
  const component = componentOf(pack, componentId);
  return termOf(component.zones, lists.zone(component.label), zoneId);
}

/** @throws AppError `term-unknown` {list, id} */
export function kindOf(pack: KnowledgePack, kindId: string): PackKind {
  return termOf(pack.kinds, lists.kind, kindId);
}

/** @throws AppError `term-unknown` {list, id} */
export function quantityOf(pack: KnowledgePack, quantityId: string): PackQuantity {
  return termOf(pack.quantities, lists.quantity, quantityId);
}

/** @throws AppError `term-unknown` {list, id} */
export function positionLabel(pack: KnowledgePack, positionId: string): string {
  return termOf(pack.positions, lists.position, positionId).label;
}

/** @throws AppError `term-unknown` {list, id} */
export function sideOf(pack: KnowledgePack, sideId: string): PackSide {
  return termOf(pack.sides, lists.side, sideId);
}

/** @throws AppError `term-unknown` {list, id} */
export function sideLabel(pack: KnowledgePack, sideId: string): string {
  return sideOf(pack, sideId).label;
}

/**
 * The kinds of damage that can occur at a zone: the zone's own, then those of the part as a whole. Without a
 * zone: those of the part as a whole, then those of all its zones. Each once, in the order of the file.
 *
 * @throws AppError `term-unknown` {list, id}
 */
export function kindsFor(pack: KnowledgePack, componentId: string, zoneId: string | null): PackKind[] {
  const component = componentOf(pack, componentId);
  const ids =
    zoneId === null
      ? [...component.kinds, ...component.zones.flatMap((zone) => zone.kinds)]
      : [...zoneOf(pack, componentId, zoneId).kinds, ...component.kinds];
  return [...new Set(ids)].map((id) => kindOf(pack, id));
}

/** The kind itself, then every kind that is a case of it, at any remove. */
export function kindAndItsCases(pack: KnowledgePack, kindId: string): string[] {
  const cases = pack.kinds.filter((kind) => kind.narrows === kindId);
  return [kindId, ...cases.flatMap((kind) => kindAndItsCases(pack, kind.id))];
}

/**
 * "Journal bearing, turbine side, bore: scoring". Whether the damage is there or not is not part of the title.
 *
 * @throws AppError `term-unknown` {list, id}
 */
export function findingTitle(pack: KnowledgePack, terms: FindingTerms): string {
  const place = placeLabel(pack, terms);
  return knowledgeTexts.findingTitle(place, kindOf(pack, terms.kind).label);
}

/**
 * Passes when every term a finding names exists and belongs where it is named. A part with positions may stand
 * without one: it was not said, or could not be told, which of them it is.
 *
 * @throws AppError `term-unknown` {list, id} for the first that does not
 */
export function checkFindingTerms(pack: KnowledgePack, fields: FindingTerms): void {
  const component = componentOf(pack, fields.component);
  if (fields.position !== null) {
    positionLabel(pack, fields.position);
    if (!component.positions.includes(fields.position)) {
      throw new AppError('term-unknown', { list: lists.positionOf(component.label), id: fields.position });
    }
  }
  if (fields.zone !== null) zoneOf(pack, component.id, fields.zone);
  if (fields.bend !== undefined && fields.bend !== null) sideOf(pack, fields.bend.seenFrom);
  const kind = kindOf(pack, fields.kind);
  if (!kindsFor(pack, component.id, fields.zone).includes(kind)) {
    throw new AppError('term-unknown', { list: lists.kindAt(placeLabel(pack, fields)), id: kind.id });
  }
}

function placeLabel(pack: KnowledgePack, { component, position, zone }: FindingTerms): string {
  const words = [componentOf(pack, component).label];
  if (position !== null) words.push(positionLabel(pack, position));
  if (zone !== null) words.push(zoneOf(pack, component, zone).label);
  return knowledgeTexts.place(words);
}

function termOf<Term extends { readonly id: string }>(
  terms: readonly Term[],
  list: string,
  id: string,
): Term {
  const term = terms.find((each) => each.id === id);
  if (term === undefined) throw new AppError('term-unknown', { list, id });
  return term;
}
