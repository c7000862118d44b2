/**
 * What the machine kind's data say can occur, place by place, each with what the findings make of it: a list to look
 * through. The states are those of knowledge/testimony.ts, so "no rub" also answers for "rub all round".
 */
import { findingTestimony, type FindingEvidence } from '#analysis/knowledge/finding-testimony.ts';
import { findingPlaces, placeKey } from '#analysis/knowledge/mark-places.ts';
import type { MarkState } from '#analysis/knowledge/mark-state.ts';
import { hear, type Testimony } from '#analysis/knowledge/testimony.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack, PackComponent, PackKind } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';

export type ExpectedKind = {
  /** The same text for the same place. */
  readonly key: string;
  readonly zone: string | null;
  readonly kind: PackKind;
  /** How many wider kinds stand above it here: a rub all round stands under the rub. */
  readonly depth: number;
  /** `unknown`: still to be looked for. */
  readonly state: MarkState;
  /** Findings of exactly this place and kind, in the order they were handed in. */
  readonly own: readonly FindingId[];
  /** Every finding that bears on the state. */
  readonly heard: readonly FindingId[];
};

/** Null where it concerns the part as a whole. */
export type ExpectedZone = {
  readonly zone: string | null;
  readonly label: string | null;
  readonly kinds: readonly ExpectedKind[];
};

export type ExpectedPart = {
  readonly part: PartShown;
  readonly zones: readonly ExpectedZone[];
};

/** Every part of the pack in the order of assembly, one with positions once for each. */
export function everyPart(pack: KnowledgePack): PartShown[] {
  return pack.components.flatMap((component) => partsOfComponent(component, null));
}

/**
 * The parts that are there to look at: those that photos show and findings name, in the order of assembly. Where the
 * position was not said, each position of the part.
 */
export function partsAtHand(
  pack: KnowledgePack,
  named: readonly { readonly component: string; readonly position: string | null }[],
): PartShown[] {
  return pack.components.flatMap((component) => {
    const here = named.filter((part) => part.component === component.id);
    const wanted = here.flatMap(({ position }) => partsOfComponent(component, position)).map(partKey);
    return partsOfComponent(component, null).filter((part) => wanted.includes(partKey(part)));
  });
}

function partsOfComponent({ id, positions }: PackComponent, position: string | null): PartShown[] {
  if (position !== null) return [{ component: id, position }];
  return positions.length === 0
    ? [{ component: id, position: null }]
    : positions.map((each) => ({ component: id, position: each }));
}

function partKey({ component, position }: PartShown): string {
  return `${component} ${position ?? ''}`;
}

/** What can occur at one part. `findings` may be all of the case. */
export function expectationsOf(
  pack: KnowledgePack,
  part: PartShown,
  findings: readonly FindingEvidence[],
): ExpectedPart {
  const component = pack.components.find((each) => each.id === part.component);
  if (component === undefined) return { part, zones: [] };
  const here = findings.filter((finding) => finding.component === component.id);
  const known = new Map(pack.kinds.map((kind) => [kind.id, kind]));
  const families = Map.groupBy(
    here.flatMap((finding) => {
      const testimony = findingTestimony(pack, finding);
      return testimony === null ? [] : [{ testimony, family: widestOf(known, finding.kind) }];
    }),
    ({ family }) => family,
  );
  const zones = [
    { zone: null, label: null, kinds: component.kinds },
    ...component.zones.map(({ id, label, kinds }) => ({ zone: id, label, kinds })),
  ].filter(({ kinds }) => kinds.length > 0);
  return {
    part,
    zones: zones.map(({ zone, label, kinds }) => ({
      zone,
      label,
      kinds: asTree(known, kinds).map(({ kind, depth }): ExpectedKind => {
        const { position } = part;
        const place = { component: component.id, position, zone, kind: kind.id };
        const testimonies = families.get(widestOf(known, kind.id))?.map((each) => each.testimony) ?? [];
        const { state, heard } = answer(pack, place, testimonies);
        const own = here.filter(
          (finding) => finding.position === position && finding.zone === zone && finding.kind === kind.id,
        );
        return {
          key: placeKey({ test: 'finding', ...place }),
          zone,
          kind,
          depth,
          state,
          own: own.map(({ id }) => id),
          heard,
        };
      }),
    })),
  };
}

type Place = {
  readonly component: string;
  readonly position: string | null;
  readonly zone: string | null;
  readonly kind: string;
};

function answer(
  pack: KnowledgePack,
  { component, position, zone, kind }: Place,
  testimonies: readonly Testimony<FindingId>[],
): { readonly state: MarkState; readonly heard: readonly FindingId[] } {
  if (testimonies.length === 0) return { state: 'unknown', heard: [] };
  // What concerns the part as a whole is asked of the whole, not of each of its zones.
  const reach = { component, position, zones: zone === null ? [] : [zone], kinds: [kind] };
  const asked = findingPlaces(pack, reach).map(placeKey);
  return hear(new Set(asked), testimonies, null);
}

/** The widest kind of which this one is a case. */
function widestOf(known: ReadonlyMap<string, PackKind>, kindId: string): string {
  const wider = known.get(kindId)?.narrows;
  return wider === undefined ? kindId : widestOf(known, wider);
}

/** Each kind under the wider one of which it is a case, where that is in the list too. */
function asTree(
  known: ReadonlyMap<string, PackKind>,
  ids: readonly string[],
): { readonly kind: PackKind; readonly depth: number }[] {
  const listed = new Set(ids);
  const above = (kind: PackKind): string | undefined => {
    const wider = kind.narrows === undefined ? undefined : known.get(kind.narrows);
    return wider === undefined || listed.has(wider.id) ? wider?.id : above(wider);
  };
  const kinds = ids.flatMap((id) => known.get(id) ?? []);
  const under = (parent: string | undefined, depth: number): { kind: PackKind; depth: number }[] =>
    kinds
      .filter((kind) => above(kind) === parent)
      .flatMap((kind) => [{ kind, depth }, ...under(kind.id, depth + 1)]);
  return under(undefined, 0);
}
