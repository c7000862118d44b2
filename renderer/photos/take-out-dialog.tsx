import { useState } from 'react';
import { AppError } from '#shared-types/errors.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { Photo } from '#shared-types/photo.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { pictureAddress } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { TextArea } from '../ui/text-field.tsx';
import { toast } from '../ui/toaster.tsx';
import { sendWaiting } from './photo-order.ts';
import { takeOutPhotos } from './photo-writer.ts';

const texts = photosTexts.takeOut;
/** Of several, as many are named as leave the reason in sight. */
const mostNamed = 4;

/** Photos leave the case with a reason, and what goes out of sight with them is said before. */
export function TakeOutDialog(props: {
  caseId: CaseId;
  /** Those that are to go, each with its number in the case. */
  going: readonly { readonly photo: Photo; readonly number: number }[];
  onClose: () => void;
  onTakenOut: () => void;
}) {
  const { caseId, going, onClose, onTakenOut } = props;
  const bench = useAnswer('bench.read', { caseId });
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const [sending, setSending] = useState(false);
  const [refusal, setRefusal] = useState<AppError | null>(null);
  const count = numberText(going.length);
  const alone = going.length === 1;
  const photoIds = going.map(({ photo }) => photo.id);
  const ids = new Set(photoIds);
  const marks = bench.data?.marks.filter(({ photoId }) => ids.has(photoId)).length;

  const submit = async () => {
    setTried(true);
    if (reason.trim() === '' || sending) return;
    setSending(true);
    sendWaiting(caseId);
    try {
      await takeOutPhotos(caseId, photoIds, reason);
      toast(texts.done(count, alone));
      onTakenOut();
    } catch (error) {
      if (!(error instanceof AppError)) throw error;
      setRefusal(error);
      setSending(false);
    }
  };

  return (
    <Dialog
      open
      title={texts.title(count, alone)}
      onClose={onClose}
      onSubmit={() => void submit()}
      foot={
        <>
          <Button onClick={onClose}>{commonTexts.cancel}</Button>
          <Button type="submit" kind="danger" disabled={sending || bench.data === undefined}>
            {texts.do}
          </Button>
        </>
      }
    >
      <ul className="photos-going">
        {going.slice(0, mostNamed).map(({ photo, number }) => (
          <li key={photo.id}>
            <img className="thumb" src={pictureAddress(photo.derivatives.thumbnail)} alt="" />
            {texts.named(numberText(number), photo.sourceName)}
          </li>
        ))}
        {going.length <= mostNamed ? null : <li>{texts.andMore(numberText(going.length - mostNamed))}</li>}
      </ul>
      <p>{texts.words}</p>
      {bench.error !== null ? (
        <ErrorState inline error={bench.error} onRetry={() => void bench.refetch()} />
      ) : (
        <p role="status">
          {marks === undefined
            ? commonTexts.busy
            : marks === 0
              ? texts.noMarks
              : texts.marks(numberText(marks), marks === 1)}
        </p>
      )}
      <TextArea
        label={texts.reason}
        hint={texts.reasonHint}
        required
        maxLength={2_000}
        value={reason}
        error={tried && reason.trim() === '' ? texts.reasonMissing : undefined}
        onValue={setReason}
      />
      {refusal === null ? null : <ErrorState inline error={refusal} />}
    </Dialog>
  );
}
