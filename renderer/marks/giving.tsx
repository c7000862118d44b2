/** Says what the chosen marks show: the box, the class of a new finding, or the whole form. */
import { useState } from 'react';
import type { GiveOffer, NewFindingTerms } from '#analysis/marks/give-offers.ts';
import type { HeldFinding } from '#analysis/marks/bench-state.ts';
import { kindLabel, placeLabel } from '#analysis/report/term-labels.ts';
import type { DamageClass, FindingFields } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { GiveBox } from './give-box.tsx';
import { GiveClass } from './give-class.tsx';
import { GiveForm } from './give-form.tsx';
import type { LabelledMark } from './labelled-marks.ts';

const texts = marksTexts.giving;

type Asking = { readonly ask: 'box' | 'form' } | { readonly ask: 'class'; readonly terms: NewFindingTerms };

export function Giving(props: {
  pack: KnowledgePack;
  marks: readonly LabelledMark[];
  findings: readonly HeldFinding[];
  recent: readonly FindingId[];
  /** What the photo shows. */
  parts: readonly PartShown[];
  onNew: (fields: FindingFields) => void;
  onListed: (id: FindingId) => void;
  onLater: () => void;
}) {
  const { pack, marks, findings, recent, parts, onNew, onListed, onLater } = props;
  const boxIsEmpty = findings.length === 0 && parts.length === 0;
  const [asking, setAsking] = useState<Asking>({ ask: boxIsEmpty ? 'form' : 'box' });
  const [one] = marks;
  const title =
    one !== undefined && marks.length === 1
      ? texts.title(one.label, one.mark.geometry.kind)
      : texts.several(marks.length);

  const take = (offer: GiveOffer) => {
    if (offer.offer === 'finding') onListed(offer.finding.id);
    else setAsking({ ask: 'class', terms: offer.terms });
  };
  const toBox = () => setAsking({ ask: 'box' });

  switch (asking.ask) {
    case 'box':
      return (
        <GiveBox
          question={{ pack, findings, recent, parts }}
          title={title}
          givenTo={
            marks.every(({ finding }) => finding?.id === one?.finding?.id) ? (one?.finding?.id ?? null) : null
          }
          onOffer={take}
          onMore={() => setAsking({ ask: 'form' })}
          onLater={onLater}
        />
      );
    case 'class':
      return (
        <GiveClass
          title={title}
          finding={texts.newFinding(kindLabel(pack, asking.terms.kind), placeLabel(pack, asking.terms))}
          onClass={(chosen) => onNew(newFields(asking.terms, chosen))}
          onBack={toBox}
        />
      );
    case 'form':
      return (
        <GiveForm
          pack={pack}
          title={title}
          part={parts[0] ?? null}
          onNew={onNew}
          onBack={boxIsEmpty ? null : toBox}
          onLater={onLater}
        />
      );
  }
}

/** A mark shows what is there: the finding is present. */
function newFields(terms: NewFindingTerms, damageClass: DamageClass): FindingFields {
  return {
    ...terms,
    class: damageClass,
    presence: 'present',
    severity: null,
    extent: null,
    bend: null,
    note: '',
  };
}
