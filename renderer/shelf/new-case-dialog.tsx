import { useEffect, useRef, useState, type Dispatch, type SetStateAction } from 'react';
import { useLocation } from 'wouter';
import type { CaseDraft } from '#shared-types/case.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { shelfTexts } from '#shared-types/texts/shelf.ts';
import { useAnswer, useSend } from '../api/queries.ts';
import { stationAddress } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { Select } from '../ui/select.tsx';
import { TextArea, TextField } from '../ui/text-field.tsx';

const texts = shelfTexts.dialog;
const nothingEntered: CaseDraft = {
  number: '',
  unit: { maker: '', model: '', serial: '', partNumber: '' },
  customer: '',
  claim: '',
  machineKind: '',
};

/** Opens a case with what the job card says; only its number and the kind of machine must be there. */
export function NewCaseDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  // What was entered outlives the dialog: Escape closes it, and loses nothing.
  const [entered, setEntered] = useState(nothingEntered);
  return open ? <NewCaseForm {...{ onClose, entered, setEntered }} /> : null;
}

function NewCaseForm({
  onClose,
  entered,
  setEntered,
}: {
  onClose: () => void;
  entered: CaseDraft;
  setEntered: Dispatch<SetStateAction<CaseDraft>>;
}) {
  const [, navigate] = useLocation();
  const kinds = useAnswer('machine-kinds.list', {});
  const send = useSend('cases.open');
  const [tries, setTries] = useState(0);
  const tried = tries > 0;

  const onlyKind = kinds.data?.length === 1 ? kinds.data[0]?.id : undefined;
  const draft: CaseDraft = { ...entered, machineKind: entered.machineKind || (onlyKind ?? '') };
  const numberMissing = draft.number.trim() === '';
  const numberTaken = send.error?.code === 'case-number-taken' && send.variables?.number === draft.number;

  const enter = (fields: Partial<CaseDraft>) => setEntered((before) => ({ ...before, ...fields }));
  const enterUnit = (fields: Partial<CaseDraft['unit']>) =>
    setEntered((before) => ({ ...before, unit: { ...before.unit, ...fields } }));
  const wrong = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // The form may be longer than the window: what has to be mended is brought into sight.
    if (tries > 0) wrong.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [tries, send.error]);
  const submit = () => {
    setTries((before) => before + 1);
    if (numberMissing || draft.machineKind === '' || send.isPending) return;
    send.mutate(draft, {
      onSuccess: ({ caseId }) => {
        onClose();
        setEntered(nothingEntered);
        navigate(stationAddress(caseId, 'claim'));
      },
    });
  };

  return (
    <Dialog
      open
      title={texts.title}
      onClose={onClose}
      onSubmit={submit}
      foot={
        <>
          <Button onClick={onClose}>{commonTexts.cancel}</Button>
          <Button type="submit" kind="primary" disabled={send.isPending}>
            {texts.open}
          </Button>
        </>
      }
    >
      <div ref={wrong} className="new-case-form">
        <TextField
          label={texts.number}
          hint={texts.numberHint}
          required
          maxLength={40}
          value={draft.number}
          error={tried && numberMissing ? texts.numberMissing : numberTaken ? send.error?.message : undefined}
          onValue={(number) => enter({ number })}
        />
        {kinds.error === null ? null : (
          <ErrorState inline error={kinds.error} onRetry={() => void kinds.refetch()} />
        )}
        <Select
          label={texts.kind}
          hint={kinds.data?.length === 0 ? texts.noKinds : texts.kindHint}
          required
          value={draft.machineKind}
          emptyChoice={texts.chooseKind}
          choices={(kinds.data ?? []).map((kind) => ({ value: kind.id, label: kind.label }))}
          error={tried && draft.machineKind === '' ? texts.kindMissing : undefined}
          onValue={(machineKind) => enter({ machineKind })}
        />
        <fieldset className="new-case-unit">
          <legend className="only-read-out">{texts.unit}</legend>
          <TextField
            label={texts.maker}
            maxLength={120}
            value={draft.unit.maker}
            onValue={(maker) => enterUnit({ maker })}
          />
          <TextField
            label={texts.model}
            maxLength={120}
            value={draft.unit.model}
            onValue={(model) => enterUnit({ model })}
          />
          <TextField
            label={texts.serial}
            hint={texts.serialHint}
            maxLength={80}
            value={draft.unit.serial}
            onValue={(serial) => enterUnit({ serial })}
          />
          <TextField
            label={texts.partNumber}
            maxLength={80}
            value={draft.unit.partNumber}
            onValue={(partNumber) => enterUnit({ partNumber })}
          />
        </fieldset>
        <TextField
          label={texts.customer}
          maxLength={160}
          value={draft.customer}
          onValue={(customer) => enter({ customer })}
        />
        <TextArea
          label={texts.claim}
          hint={texts.claimHint}
          maxLength={20_000}
          controlClassName="control-said"
          value={draft.claim}
          onValue={(claim) => enter({ claim })}
        />
        {send.error === null || numberTaken ? null : <ErrorState inline error={send.error} />}
      </div>
    </Dialog>
  );
}
