/** Part, zone and kind of damage, each limited to what the machine kind has there. */
import { useMemo } from 'react';
import { kindsFor } from '#analysis/knowledge/pack-terms.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { Select } from '../ui/select.tsx';
import {
  partKey,
  partOfKey,
  partsOf,
  withPart,
  withZone,
  zonesOf,
  type DraftErrors,
  type FindingDraft,
} from './finding-draft.ts';

export function FindingPlaceFields(props: {
  pack: KnowledgePack;
  draft: FindingDraft;
  errors?: DraftErrors;
  onDraft: (draft: FindingDraft) => void;
}) {
  const { pack, draft, errors = {}, onDraft } = props;
  const parts = useMemo(
    () => partsOf(pack).map(({ part, label }) => ({ value: partKey(part), label })),
    [pack],
  );
  const component = draft.part?.component ?? null;
  const zones = component === null ? [] : zonesOf(pack, component);
  const kinds = component === null ? [] : kindsFor(pack, component, draft.zone);
  const meaning = kinds.find((kind) => kind.id === draft.kind)?.meaning;

  return (
    <>
      <Select
        label={findingsTexts.part}
        value={partKey(draft.part)}
        choices={parts}
        emptyChoice={draft.part === null ? findingsTexts.choosePart : undefined}
        error={errors.part}
        onValue={(key) => onDraft(withPart(pack, draft, partOfKey(key)))}
      />
      <Select
        label={findingsTexts.zone}
        value={draft.zone ?? ''}
        choices={zones.map(({ id, label }) => ({ value: id, label }))}
        emptyChoice={findingsTexts.noZone}
        disabled={component === null}
        onValue={(zone) => onDraft(withZone(pack, draft, zone === '' ? null : zone))}
      />
      <Select
        label={findingsTexts.kind}
        value={draft.kind ?? ''}
        choices={kinds.map(({ id, label }) => ({ value: id, label }))}
        emptyChoice={draft.kind === null ? findingsTexts.chooseKind : undefined}
        hint={meaning}
        error={errors.kind}
        disabled={component === null}
        onValue={(kind) => onDraft({ ...draft, kind: kind === '' ? null : kind })}
      />
    </>
  );
}
