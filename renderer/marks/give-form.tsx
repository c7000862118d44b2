/** Says what a mark shows: a finding that is listed already, or a new one. */
import { useEffect, useRef, useState, type KeyboardEvent, type SubmitEvent } from 'react';
import type { HeldFinding } from '#analysis/marks/bench-state.ts';
import { kindLabel, placeLabel } from '#analysis/report/term-labels.ts';
import type { FindingFields } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { ClassChoice } from '../findings/class-choice.tsx';
import { emptyDraft, fieldsOfDraft } from '../findings/finding-draft.ts';
import { FindingPlaceFields } from '../findings/finding-place-fields.tsx';
import { PresenceSelect } from '../findings/presence-select.tsx';
import { submitWithEnter } from '../findings/submit-with-enter.ts';
import { Button } from '../ui/button.tsx';
import { Select } from '../ui/select.tsx';
import { PanelHead } from '../ui/side-panel.tsx';

const texts = marksTexts.giving;

export function GiveForm(props: {
  pack: KnowledgePack;
  /** Of the case, by number. */
  findings: readonly HeldFinding[];
  /** The finding the mark is given to now. */
  givenTo: FindingId | null;
  label: string;
  /** What the photo shows, where that is known. */
  part: PartShown | null;
  onNew: (fields: FindingFields) => void;
  onListed: (id: FindingId) => void;
  onLater: () => void;
}) {
  const { pack, findings, givenTo, label, part, onNew, onListed, onLater } = props;
  const [listed, setListed] = useState<FindingId | ''>(givenTo ?? '');
  const [draft, setDraft] = useState(() => emptyDraft(part));
  const [tried, setTried] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const checked = fieldsOfDraft(draft);

  useEffect(() => {
    form.current?.querySelector('select')?.focus();
  }, []);

  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    setTried(true);
    if (listed !== '') onListed(listed);
    else if ('fields' in checked) onNew(checked.fields);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLFormElement>) => {
    if (event.key === 'Escape') {
      event.preventDefault();
      onLater();
    } else submitWithEnter(event);
  };

  return (
    <form
      ref={form}
      className="marks-give"
      noValidate
      aria-label={texts.title(label)}
      onSubmit={submit}
      onKeyDown={onKeyDown}
    >
      <PanelHead title={texts.title(label)} />
      <Select
        label={texts.finding}
        value={listed}
        choices={findings.map((finding) => ({
          value: finding.id,
          label: findingsTexts.heldAs(
            finding.number,
            kindLabel(pack, finding.kind),
            placeLabel(pack, finding),
          ),
        }))}
        emptyChoice={texts.fresh}
        onValue={setListed}
      />
      {listed === '' ? (
        <>
          <FindingPlaceFields
            pack={pack}
            draft={draft}
            onDraft={setDraft}
            {...(tried && 'errors' in checked ? { errors: checked.errors } : {})}
          />
          <ClassChoice value={draft.class} onValue={(chosen) => setDraft({ ...draft, class: chosen })} />
          <PresenceSelect value={draft.presence} onValue={(presence) => setDraft({ ...draft, presence })} />
        </>
      ) : null}
      <div className="marks-give-foot">
        <Button onClick={onLater} shortcut="Esc" title={texts.laterHint}>
          {texts.later}
        </Button>
        <Button kind="primary" type="submit" shortcut="↵">
          {texts.save}
        </Button>
      </div>
    </form>
  );
}
