/** What a mark can be given to: the findings there are, and new ones of the parts that the photo shows. */
import type { FindingFields } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';
import { kindsFor } from '../knowledge/pack-terms.ts';
import { kindLabel, placeLabel } from '../report/term-labels.ts';
import type { HeldFinding } from './bench-state.ts';

export type NewFindingTerms = Pick<FindingFields, 'component' | 'position' | 'zone' | 'kind'>;

/** Its number was typed; or it lies at a part that the photo shows, and marks were given to it before or not; or neither. */
export type Nearness = 'numbered' | 'given' | 'shown' | 'elsewhere';

/** `kind` and `place` are the words that it is listed with. */
export type GiveOffer = { readonly kind: string; readonly place: string } & (
  | { readonly offer: 'finding'; readonly nearness: Nearness; readonly finding: HeldFinding }
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
 * Findings first: those given to before, the latest first; then those at the parts that the photo shows; then all
 * others. Within these by number from the newest, and after what is present what was looked for and not found: a mark
 * shows what is there. Below them new ones in the order of the machine kind's data. What is typed narrows all: digits to
 * findings whose number begins so, the very number first; words to what has a word beginning with each of them, kinds of
 * damage before places.
 */
export function giveOffers(question: GiveQuestion): readonly GiveOffer[] {
  const typed = question.typed.trim().toLowerCase();
  const found = findingOffers(question);
  if (/^\d+$/.test(typed)) return byNumber(found, typed);
  const listed = nearestFirst.flatMap((nearness) =>
    narrowed(
      found.filter((offer) => offer.nearness === nearness),
      typed,
    ),
  );
  return [...listed, ...narrowed(newOffers(question), typed)];
}

const nearestFirst: readonly Nearness[] = ['given', 'shown', 'elsewhere'];

type FindingOffer = Extract<GiveOffer, { offer: 'finding' }>;

/**
 * Which offer Enter takes before another is chosen; -1 where there is none. What lies at a part that is not on the photo,
 * or was looked for and not found, is passed over while something likelier is offered.
 */
export function likeliestOffer(offers: readonly GiveOffer[]): number {
  const likely = offers.findIndex(
    (one) =>
      one.offer === 'new' ||
      one.nearness === 'numbered' ||
      one.nearness === 'given' ||
      (one.nearness === 'shown' && one.finding.presence === 'present'),
  );
  return likely >= 0 ? likely : offers.length === 0 ? -1 : 0;
}

function findingOffers({ pack, findings, recent, parts }: GiveQuestion): FindingOffer[] {
  const nearnessOf = (finding: HeldFinding): Nearness => {
    // Of a photo that does not say what it shows, what was last given to is the best guess.
    const may = parts.length === 0 || parts.some((part) => shows(part, finding));
    if (!may) return 'elsewhere';
    return recent.includes(finding.id) ? 'given' : parts.length === 0 ? 'elsewhere' : 'shown';
  };
  const absent = ({ presence }: HeldFinding) => (presence === 'present' ? 0 : 1);
  return findings
    .map((finding): FindingOffer => ({
      offer: 'finding',
      nearness: nearnessOf(finding),
      finding,
      kind: kindLabel(pack, finding.kind),
      place: placeLabel(pack, finding),
    }))
    .sort(
      ({ finding: one, ...near }, { finding: other, ...far }) =>
        nearestFirst.indexOf(near.nearness) - nearestFirst.indexOf(far.nearness) ||
        recent.indexOf(one.id) - recent.indexOf(other.id) ||
        absent(one) - absent(other) ||
        other.number - one.number,
    );
}

/** A part named without its place may be any of them. */
function shows(part: PartShown, { component, position }: HeldFinding): boolean {
  return (
    part.component === component &&
    (part.position === null || position === null || part.position === position)
  );
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
    .sort((one, other) => one.finding.number - other.finding.number)
    .map((offer) => ({ ...offer, nearness: 'numbered' }));
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
