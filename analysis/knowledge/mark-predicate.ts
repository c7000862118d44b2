/**
 * The state of a mark, derived from the findings and measurements of a case. A state is never stored.
 *
 * A pattern asks whether any of its kinds is there at any of its zones and positions: places, as mark-places.ts
 * lists them; testimony.ts says what the findings make of them. From that follows, for the analyst:
 * - "scoring looked for and not there" says nothing about smearing: each kind a mark asks for is looked for;
 * - a wider kind denied denies its cases (no rub: no rub all round either); a case found is the wider kind found;
 * - a finding without a zone or position speaks of the part as a whole: absent is absent everywhere, present is
 *   present somewhere, so it makes a mark present only when everywhere it can be is a place of that mark;
 * - findings contradict each other when one says present and others deny every place it could mean;
 * - with a least share, damage found on fewer blades or pads counts as the mark looked for and absent.
 *
 * The class of a finding and its severity are not asked: the class is the analyst's conclusion, and a weighing
 * that began from it would end at it.
 */
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack, MarkPredicate } from '#shared-types/knowledge-pack.ts';

import { findingTestimony, type FindingEvidence } from './finding-testimony.ts';
import { measurementPlaces, placeKey, placesOfPattern, type MarkPlace } from './mark-places.ts';
import { allState, anyState, type MarkState } from './mark-state.ts';
import { componentOf } from './pack-terms.ts';
import { hear, placesOf, type Testimony } from './testimony.ts';

export type { FindingEvidence };

/** A measurement beside its limit, uncertainty taken into account. */
export type MeasurementEvidence = {
  readonly id: string;
  readonly quantity: string;
  /** Null where the part is single, or where it was not said which of several it is. */
  readonly position: string | null;
  readonly status: 'inside' | 'outside' | 'not-decided';
};

export type CaseEvidence = {
  readonly findings: readonly FindingEvidence[];
  readonly measurements: readonly MeasurementEvidence[];
};

export type EvidenceSource =
  | { readonly from: 'finding'; readonly id: FindingId }
  | { readonly from: 'measurement'; readonly id: string };

export type MarkReading = {
  readonly state: MarkState;
  /** Everything that touches the mark, each once. */
  readonly heard: readonly EvidenceSource[];
  /** What among it contradicts itself: to be shown even where another finding makes the mark present. */
  readonly disputed: readonly EvidenceSource[];
  /** Places of the mark about which nothing is recorded: what there is to look at. */
  readonly open: readonly MarkPlace[];
};

/**
 * `predicate` is one of the pack's own, or uses its ids. Evidence about terms that the pack does not have, left
 * from another version of it, is passed over.
 *
 * @throws AppError `term-unknown` {list, id} for a predicate with terms that the pack does not have
 */
export function readMark(pack: KnowledgePack, predicate: MarkPredicate, evidence: CaseEvidence): MarkReading {
  if (predicate.test === 'finding' || predicate.test === 'measurement') {
    return readPattern(pack, predicate, evidence);
  }
  const parts = predicate.of.map((part) => readMark(pack, part, evidence));
  const states = parts.map((part) => part.state);
  return {
    state: predicate.test === 'all' ? allState(states) : anyState(states),
    heard: eachOnce(parts.flatMap((part) => part.heard)),
    disputed: eachOnce(parts.flatMap((part) => part.disputed)),
    open: [...new Map(parts.flatMap((part) => part.open).map((place) => [placeKey(place), place])).values()],
  };
}

function readPattern(
  pack: KnowledgePack,
  pattern: Extract<MarkPredicate, { test: 'finding' | 'measurement' }>,
  evidence: CaseEvidence,
): MarkReading {
  const places = placesOfPattern(pack, pattern);
  const testimonies =
    pattern.test === 'finding'
      ? findingTestimonies(pack, pattern.component, evidence.findings)
      : measurementTestimonies(pack, pattern, evidence.measurements);
  const leastShare = pattern.test === 'finding' ? pattern.leastShare : null;
  const { state, heard, disputed } = hear(keysOf(places), testimonies, leastShare);
  const spokenOf = placesOf(testimonies);
  return { state, heard, disputed, open: places.filter((place) => !spokenOf.has(placeKey(place))) };
}

function findingTestimonies(
  pack: KnowledgePack,
  component: string,
  findings: readonly FindingEvidence[],
): Testimony<EvidenceSource>[] {
  const { id } = componentOf(pack, component);
  return findings
    .filter((each) => each.component === id)
    .flatMap((each) => findingTestimony(pack, each) ?? [])
    .map((testimony) => ({ ...testimony, source: { from: 'finding', id: testimony.source } }));
}

/**
 * A measurement that was not decided against its limit, like none, answers nothing. One that does not say which
 * of several like parts it was taken on is true of one of them: it can bring the status looked for, not rule it out.
 */
function measurementTestimonies(
  pack: KnowledgePack,
  pattern: Extract<MarkPredicate, { test: 'measurement' }>,
  measurements: readonly MeasurementEvidence[],
): Testimony<EvidenceSource>[] {
  return measurements
    .filter((each) => each.quantity === pattern.quantity && each.status !== 'not-decided')
    .map((each) => ({
      id: each.id,
      fits: each.status === pattern.status,
      places: measurementPlaces(pack, each),
    }))
    .filter(({ fits, places }) => fits || places.length === 1)
    .map(({ id, fits, places }) => ({
      source: { from: 'measurement', id },
      says: fits ? 'present' : 'absent',
      places: keysOf(places),
      share: null,
    }));
}

function keysOf(places: readonly MarkPlace[]): Set<string> {
  return new Set(places.map(placeKey));
}

function eachOnce(sources: readonly EvidenceSource[]): EvidenceSource[] {
  return [...new Map(sources.map((source) => [`${source.from} ${source.id}`, source])).values()];
}
