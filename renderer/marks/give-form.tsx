/** A new finding of any part, with all that the box does not offer. */
import { useEffect, useRef, useState, type KeyboardEvent, type SubmitEvent } from 'react';
import type { FindingFields } from '#shared-types/finding.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { ClassChoice } from '../findings/class-choice.tsx';
import { emptyDraft, fieldsOfDraft } from '../findings/finding-draft.ts';
import { FindingPlaceFields } from '../findings/finding-place-fields.tsx';
import { submitWithEnter } from '../findings/submit-with-enter.ts';
import { Button } from '../ui/button.tsx';
import { PanelHead } from '../ui/side-panel.tsx';

const texts = marksTexts.giving;

export function GiveForm(props: {
  pack: KnowledgePack;
  title: string;
  /** What the photo shows, where that is known. */
  part: PartShown | null;
  onNew: (fields: FindingFields) => void;
  /** To the box; null where the box would have nothing to offer. */
  onBack: (() => void) | null;
  onLater: () => void;
}) {
  const { pack, title, part, onNew, onBack, onLater } = props;
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
    if ('fields' in checked) onNew(checked.fields);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLFormElement>) => {
    if (event.key === 'Escape') {
      event.preventDefault();
      (onBack ?? onLater)();
    } else submitWithEnter(event);
  };

  return (
    <form
      ref={form}
      className="marks-give"
      noValidate
      aria-label={title}
      onSubmit={submit}
      onKeyDown={onKeyDown}
    >
      <PanelHead title={title} />
      <FindingPlaceFields
        pack={pack}
        draft={draft}
        onDraft={setDraft}
        {...(tried && 'errors' in checked ? { errors: checked.errors } : {})}
      />
      <ClassChoice value={draft.class} onValue={(chosen) => setDraft({ ...draft, class: chosen })} />
      <div className="marks-give-foot">
        {onBack === null ? null : (
          <Button kind="quiet" onClick={onBack}>
            {texts.back}
          </Button>
        )}
        <Button onClick={onLater} {...(onBack === null ? { shortcut: 'Esc' } : {})} title={texts.laterHint}>
          {texts.later}
        </Button>
        <Button kind="primary" type="submit" shortcut="↵">
          {texts.save}
        </Button>
      </div>
    </form>
  );
}
