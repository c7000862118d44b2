/** Another class for a finding, with the reason that is kept with it. */
import { useState } from 'react';
import type { HeldFinding } from '#analysis/marks/bench-state.ts';
import type { CaseId } from '#shared-types/ids.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { benchOfCase } from '../marks/bench-store.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { TextArea } from '../ui/text-field.tsx';
import { ClassChoice } from './class-choice.tsx';

const texts = findingsTexts.classify;

export function ClassifyDialog(props: { caseId: CaseId; finding: HeldFinding; onClose: () => void }) {
  const { caseId, finding, onClose } = props;
  const [chosen, setChosen] = useState(finding.class);
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const [sending, setSending] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const same = chosen === finding.class;
  const noReason = reason.trim() === '';

  const submit = async () => {
    setTried(true);
    if (same || noReason || sending) return;
    setSending(true);
    setError(null);
    try {
      await benchOfCase(caseId).classify(finding.id, chosen, reason.trim());
      onClose();
    } catch (refusal) {
      setError(refusal);
      setSending(false);
    }
  };

  return (
    <Dialog
      open
      title={texts.title(finding.number)}
      onClose={onClose}
      onSubmit={() => void submit()}
      foot={
        <>
          <Button onClick={onClose}>{commonTexts.cancel}</Button>
          <Button kind="primary" type="submit" disabled={sending}>
            {texts.save}
          </Button>
        </>
      }
    >
      <p className="secondary-words">{texts.words}</p>
      <ClassChoice value={chosen} onValue={setChosen} />
      {tried && same ? (
        <p className="field-error" role="alert">
          {texts.same}
        </p>
      ) : null}
      <TextArea
        label={texts.reason}
        value={reason}
        onValue={setReason}
        required
        maxLength={2_000}
        error={tried && noReason ? texts.needsReason : undefined}
      />
      {error === null ? null : <ErrorState inline error={error} />}
    </Dialog>
  );
}
