import { useState, type Ref } from 'react';
import type { CaseId } from '#shared-types/ids.ts';
import type { CameraPlace, RegisterEntry } from '#shared-types/photo.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { pictureAddress } from '../api/client.ts';
import { Button } from '../ui/button.tsx';
import { classNames } from '../ui/class-names.ts';
import { bytesText, dayAndClockText, numberText, wallTimeText } from '../ui/number-words.ts';
import { toast } from '../ui/toaster.tsx';
import { putPhotoBack } from './photo-writer.ts';

const texts = photosTexts.register;

export const registerColumns = [
  { key: 'number', head: texts.number },
  { key: 'file', head: texts.file },
  { key: 'sha256', head: photosTexts.sha256 },
  { key: 'taken', head: texts.taken },
  { key: 'added', head: photosTexts.added },
  { key: 'place', head: texts.cameraPlace },
  { key: 'out', head: texts.takenOut },
] as const;

/** Enough to tell any two photos of a case apart at a glance. */
const shortHash = 10;

export function RegisterLine(props: {
  caseId: CaseId;
  entry: RegisterEntry;
  index: number;
  /** Null for one that was taken out. */
  number: number | null;
  readOnly: boolean;
  ref: Ref<HTMLTableRowElement>;
}) {
  const { caseId, entry, index, number, readOnly, ref } = props;
  const { photo, cameraPlace, takenOut, absences } = entry;
  const [sending, setSending] = useState(false);
  const putBack = async () => {
    setSending(true);
    if (await putPhotoBack(caseId, photo)) toast(texts.isBack(photo.sourceName));
    setSending(false);
  };
  return (
    <tr
      ref={ref}
      data-index={index}
      data-photo={photo.id}
      aria-rowindex={index + 2}
      className={classNames(takenOut !== null && 'register-line-out')}
    >
      <td className="register-number">
        {takenOut !== null ? texts.out : number === null ? '' : numberText(number)}
      </td>
      <td className="register-file">
        <span className="register-file-named">
          <img className="thumb" src={pictureAddress(photo.derivatives.thumbnail)} alt="" />
          <span>
            {photo.sourceName}
            <span className="secondary-words">{bytesText(photo.bytes)}</span>
          </span>
        </span>
      </td>
      <td className="register-sha256">
        <Hash name={photo.sourceName} sha256={photo.sha256} />
      </td>
      <td className="register-taken">
        {photo.takenAt === null ? photosTexts.notKnown : wallTimeText(photo.takenAt)}
        <span className="secondary-words">{photo.camera}</span>
      </td>
      <td className="register-added">
        {dayAndClockText(photo.addedAt)}
        <span className="secondary-words">{photo.addedBy}</span>
      </td>
      <td className="register-place">{cameraPlace === null ? commonTexts.none : placeText(cameraPlace)}</td>
      <td className="register-out">
        {absences.map((absence) => (
          <span key={absence.at} className="secondary-words">
            {texts.wasOut(
              dayAndClockText(absence.at),
              dayAndClockText(absence.backAt),
              commonTexts.quoted(absence.reason),
            )}
          </span>
        ))}
        {takenOut === null ? (
          absences.length === 0 && commonTexts.none
        ) : (
          <>
            {dayAndClockText(takenOut.at)}
            <span className="secondary-words">{takenOut.by}</span>
            <span className="register-reason">{commonTexts.quoted(takenOut.reason)}</span>
            {readOnly ? null : (
              <Button
                disabled={sending}
                aria-label={texts.putBackNamed(photo.sourceName)}
                onClick={() => void putBack()}
              >
                {texts.putBack}
              </Button>
            )}
          </>
        )}
      </td>
    </tr>
  );
}

function Hash({ name, sha256 }: { name: string; sha256: string }) {
  const [whole, setWhole] = useState(false);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(sha256);
      toast(texts.hashCopied(name));
    } catch (refusal) {
      if (!(refusal instanceof DOMException)) throw refusal;
      setWhole(true);
      toast(texts.hashNotCopied, { kind: 'error' });
    }
  };
  return (
    <>
      <button
        type="button"
        className="register-hash"
        aria-expanded={whole}
        aria-label={texts.hashOf(name, whole ? sha256 : sha256.slice(0, shortHash))}
        onClick={() => setWhole(!whole)}
      >
        {whole ? sha256 : `${sha256.slice(0, shortHash)}…`}
      </button>
      <Button kind="quiet" aria-label={texts.copyHashOf(name)} onClick={() => void copy()}>
        {texts.copyHash}
      </Button>
    </>
  );
}

/** Five decimals of a degree are about a metre: finer than a telephone knows where it is. */
function placeText({ latitude, longitude, altitude }: CameraPlace): string {
  return texts.place(
    numberText(Math.abs(latitude), 5),
    latitude < 0 ? 'S' : 'N',
    numberText(Math.abs(longitude), 5),
    longitude < 0 ? 'W' : 'E',
    altitude === null ? null : numberText(altitude),
  );
}
