import { useState } from 'react';
import type { TeardownCase } from '#shared-types/case.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { putAnswer, useSend } from '../api/queries.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { TextArea } from '../ui/text-field.tsx';
import { toast } from '../ui/toaster.tsx';
import type { FieldKeeper } from './field-keeper.ts';

const texts = claimTexts.withdraw;

/** A case is never deleted: it is withdrawn, with a reason. */
export function WithdrawDialog({
  keeper,
  teardownCase,
}: {
  keeper: FieldKeeper;
  teardownCase: TeardownCase;
}) {
  const caseId = teardownCase.id;
  const send = useSend('cases.withdraw');
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);

  const submit = async () => {
    setTried(true);
    if (reason.trim() === '' || send.isPending) return;
    await keeper.flush();
    send.mutate(
      { caseId, revision: keeper.revision(), reason },
      {
        onSuccess: (withdrawn) => {
          setOpen(false);
          putAnswer('cases.read', { caseId }, withdrawn);
          toast(texts.done(withdrawn.number));
        },
      },
    );
  };

  return (
    <>
      <Button kind="quiet" onClick={() => setOpen(true)}>
        {texts.open}
      </Button>
      <Dialog
        open={open}
        title={texts.title}
        onClose={() => setOpen(false)}
        onSubmit={() => void submit()}
        foot={
          <>
            <Button onClick={() => setOpen(false)}>{commonTexts.cancel}</Button>
            <Button type="submit" kind="danger" disabled={send.isPending}>
              {texts.do}
            </Button>
          </>
        }
      >
        <p>{texts.words}</p>
        <TextArea
          label={texts.reason}
          required
          maxLength={2_000}
          value={reason}
          error={tried && reason.trim() === '' ? texts.reasonMissing : undefined}
          onValue={setReason}
        />
        {send.error === null ? null : <ErrorState inline error={send.error} />}
      </Dialog>
    </>
  );
}
