/** What a mark can be given to: the findings there are, and new ones of the parts that the photo shows. */
import type { FindingFields } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';
import { kindsFor } from '../knowledge/pack-terms.ts';
import { kindLabel, placeLabel } from '../report/term-labels.ts';
import type { HeldFinding } from './bench-state.ts';

export type NewFindingTerms = Pick<FindingFields, 'component' | 'position' | 'zone' | 'kind'>;

/** `kind` and `place` are the words that it is listed with. */
export type GiveOffer = { readonly kind: string; readonly place: string } & (
  | { readonly offer: 'finding'; readonly finding: HeldFinding }
  | { readonly offer: 'new'; readonly terms: NewFindingTerms }
);

export type GiveQuestion = {
  readonly pack: KnowledgePack;
  readonly findings: readonly HeldFinding[];
  /** Those marks were given to, the last one first. */
  readonly recent: readonly FindingId[];
  readonly parts: readonly PartShown[];
  readonly typed: string;
};

/**
 * Findings of the case, the one last given to first, then by number from the newest, those that say something is not
 * there last: a mark shows what is there. Below them new ones in the order of the machine kind's data. What is typed narrows both: digits to findings whose number begins so, the very
 * number first; words to what has a word beginning with each of them, kinds of damage before places.
 */
export function giveOffers(question: GiveQuestion): readonly GiveOffer[] {
  const typed = question.typed.trim().toLowerCase();
  const found = findingOffers(question);
  if (/^\d+$/.test(typed)) return byNumber(found, typed);
  const listed = narrowed(found, typed);
  return [...listed, ...narrowed(newOffers(question), typed)];
}

type FindingOffer = Extract<GiveOffer, { offer: 'finding' }>;

function findingOffers({ pack, findings, recent }: GiveQuestion): FindingOffer[] {
  const place = (id: FindingId) => {
    const index = recent.indexOf(id);
    return index < 0 ? recent.length : index;
  };
  const absent = ({ presence }: HeldFinding) => (presence === 'present' ? 0 : 1);
  return [...findings]
    .sort(
      (one, other) =>
        absent(one) - absent(other) || place(one.id) - place(other.id) || other.number - one.number,
    )
    .map((finding) => ({
      offer: 'finding',
      finding,
      kind: kindLabel(pack, finding.kind),
      place: placeLabel(pack, finding),
    }));
}

function newOffers({ pack, parts }: GiveQuestion): GiveOffer[] {
  return parts.flatMap((part) => {
    const component = pack.components.find(({ id }) => id === part.component);
    if (component === undefined) return [];
    const ofZones = component.zones.flatMap(({ id, kinds }) => kinds.map((kind) => ({ zone: id, kind })));
    const ofWhole = component.kinds.map((kind) => ({ zone: null, kind }));
    return [...ofZones, ...ofWhole]
      .filter(({ zone, kind }) => kindsFor(pack, component.id, zone).some(({ id }) => id === kind))
      .map(({ zone, kind }): GiveOffer => {
        const terms = { ...part, zone, kind };
        return { offer: 'new', terms, kind: kindLabel(pack, kind), place: placeLabel(pack, terms) };
      });
  });
}

function byNumber(found: readonly FindingOffer[], digits: string): readonly GiveOffer[] {
  return found
    .filter(({ finding }) => String(finding.number).startsWith(digits))
    .sort((one, other) => one.finding.number - other.finding.number);
}

function narrowed<Offer extends GiveOffer>(offers: readonly Offer[], typed: string): readonly Offer[] {
  if (typed === '') return offers;
  return offers
    .map((offer) => ({ offer, rank: rankOf(offer, typed) }))
    .filter(({ rank }) => rank !== null)
    .sort((one, other) => (one.rank ?? 0) - (other.rank ?? 0))
    .map(({ offer }) => offer);
}

/** 0 where the kind begins so, 1 where its words do, 2 where words of kind and place do; null where not all do. */
function rankOf({ kind, place }: GiveOffer, typed: string): number | null {
  if (kind.toLowerCase().startsWith(typed)) return 0;
  const begun = typed.split(/[\s,:]+/).filter((word) => word !== '');
  const all = (words: readonly string[]) =>
    begun.every((part) => words.some((word) => word.startsWith(part)));
  const ofKind = wordsOf(kind);
  if (all(ofKind)) return 1;
  return all([...ofKind, ...wordsOf(place)]) ? 2 : null;
}

function wordsOf(label: string): readonly string[] {
  return label
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}
