/** A finding that no mark shows: looked for and not there, could not be examined. */
import { useState } from 'react';
import type { FindingFields } from '#shared-types/finding.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { ClassChoice } from './class-choice.tsx';
import { emptyDraft, fieldsOfDraft } from './finding-draft.ts';
import { FindingPlaceFields } from './finding-place-fields.tsx';
import { PresenceSelect } from './presence-select.tsx';

export function AddFindingDialog(props: {
  pack: KnowledgePack;
  onAdd: (fields: FindingFields) => void;
  onClose: () => void;
}) {
  const { pack, onAdd, onClose } = props;
  const [draft, setDraft] = useState(() => emptyDraft(null, 'looked-for-absent'));
  const [tried, setTried] = useState(false);
  const checked = fieldsOfDraft(draft);
  return (
    <Dialog
      open
      title={findingsTexts.addTitle}
      onClose={onClose}
      onSubmit={() => {
        setTried(true);
        if ('fields' in checked) onAdd(checked.fields);
      }}
      foot={
        <>
          <Button onClick={onClose}>{commonTexts.cancel}</Button>
          <Button kind="primary" type="submit">
            {findingsTexts.saveNew}
          </Button>
        </>
      }
    >
      <p className="secondary-words">{findingsTexts.addWords}</p>
      <PresenceSelect value={draft.presence} onValue={(presence) => setDraft({ ...draft, presence })} />
      <FindingPlaceFields
        pack={pack}
        draft={draft}
        onDraft={setDraft}
        {...(tried && 'errors' in checked ? { errors: checked.errors } : {})}
      />
      {draft.presence === 'present' ? (
        <ClassChoice value={draft.class} onValue={(chosen) => setDraft({ ...draft, class: chosen })} />
      ) : null}
    </Dialog>
  );
}
