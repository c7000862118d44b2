/** A finding while it is being written: everything as its control holds it, not yet checked. */
import { kindsFor } from '#analysis/knowledge/pack-terms.ts';
import { findingFieldsOf } from '#analysis/marks/bench-state.ts';
import { partLabel } from '#analysis/report/term-labels.ts';
import type { DamageClass, FindingFields, Presence } from '#shared-types/finding.ts';
import type { KnowledgePack, PackZone } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';

export type FindingDraft = {
  readonly part: PartShown | null;
  readonly zone: string | null;
  readonly kind: string | null;
  readonly class: DamageClass;
  readonly presence: Presence;
};

export type DraftErrors = { readonly part?: string; readonly kind?: string };

export function emptyDraft(part: PartShown | null, presence: Presence = 'present'): FindingDraft {
  return { part, zone: null, kind: null, class: 'undecided', presence };
}

/** The draft with another part: zone and kind stay only where the part has them. */
export function withPart(pack: KnowledgePack, draft: FindingDraft, part: PartShown | null): FindingDraft {
  const zones = part === null ? [] : zonesOf(pack, part.component);
  const zone = zones.some((known) => known.id === draft.zone) ? draft.zone : null;
  return withZone(pack, { ...draft, part }, zone);
}

/** The draft with another zone: the kind stays only where it can occur there. */
export function withZone(pack: KnowledgePack, draft: FindingDraft, zone: string | null): FindingDraft {
  const { part, kind } = draft;
  const kinds = part === null ? [] : kindsFor(pack, part.component, zone);
  return { ...draft, zone, kind: kinds.some((known) => known.id === kind) ? kind : null };
}

export function zonesOf(pack: KnowledgePack, component: string): readonly PackZone[] {
  return pack.components.find((known) => known.id === component)?.zones ?? [];
}

/** Every part of the machine kind, a part with several places once for each and once without saying which. */
export function partsOf(
  pack: KnowledgePack,
): readonly { readonly part: PartShown; readonly label: string }[] {
  return pack.components.flatMap((component) =>
    [null, ...component.positions].map((position) => {
      const part = { component: component.id, position };
      return { part, label: partLabel(pack, part) };
    }),
  );
}

/** One string for a part, as the value of a choice. */
export function partKey(part: PartShown | null): string {
  return part === null ? '' : `${part.component}/${part.position ?? ''}`;
}

export function partOfKey(key: string): PartShown | null {
  const [component = '', position = ''] = key.split('/');
  return component === '' ? null : { component, position: position === '' ? null : position };
}

/** The draft as fields, or what is missing of it. */
export function fieldsOfDraft(
  draft: FindingDraft,
): { readonly fields: FindingFields } | { readonly errors: DraftErrors } {
  const { part, zone, kind, presence } = draft;
  if (part === null || kind === null) {
    return {
      errors: {
        ...(part === null ? { part: findingsTexts.needsPart } : {}),
        ...(kind === null ? { kind: findingsTexts.needsKind } : {}),
      },
    };
  }
  return {
    fields: {
      ...part,
      zone,
      kind,
      // Only what is there began the failure or followed from it.
      class: presence === 'present' ? draft.class : 'undecided',
      presence,
      severity: null,
      extent: null,
      bend: null,
      note: '',
    },
  };
}

/** Place and kind of a finding as a draft, to be changed together. */
export function draftOfFields(fields: FindingFields): FindingDraft {
  const { component, position, zone, kind, presence } = findingFieldsOf(fields);
  return { part: { component, position }, zone, kind, class: fields.class, presence };
}
