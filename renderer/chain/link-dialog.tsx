/** Why the one led to the other, and how sure that is: asked when a link is made, and when it is changed. */
import { useState } from 'react';
import { linkCertainties, mostReasonWords, type LinkCertainty } from '#shared-types/chain.ts';
import { chainFigureTexts, chainTexts } from '#shared-types/texts/chain.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { TextArea } from '../ui/text-field.tsx';

export type LinkWords = { readonly reason: string; readonly certainty: LinkCertainty };

export function LinkDialog(props: {
  cause: string;
  effect: string;
  /** What it says so far; null for a new link. */
  said: LinkWords | null;
  onClose: () => void;
  onDone: (words: LinkWords) => void;
}) {
  const { said, onClose, onDone } = props;
  const [reason, setReason] = useState(said?.reason ?? '');
  const [certainty, setCertainty] = useState<LinkCertainty>(said?.certainty ?? 'likely');
  const texts = chainTexts.linkForm;
  return (
    <Dialog
      open
      title={said === null ? texts.title : texts.titleChange}
      onClose={onClose}
      onSubmit={() => onDone({ reason: reason.trim(), certainty })}
      foot={
        <>
          <Button onClick={onClose}>{commonTexts.cancel}</Button>
          <Button kind="primary" type="submit">
            {said === null ? texts.make : texts.change}
          </Button>
        </>
      }
    >
      <dl className="fact-list">
        <dt>{texts.cause}</dt>
        <dd>{props.cause}</dd>
        <dt>{texts.effect}</dt>
        <dd>{props.effect}</dd>
      </dl>
      <TextArea
        label={texts.reason}
        hint={texts.reasonHint}
        value={reason}
        maxLength={mostReasonWords}
        onValue={setReason}
      />
      <fieldset className="chain-certainty">
        <legend className="field-label">{texts.certainty}</legend>
        {linkCertainties.map((each) => (
          <label key={each}>
            <input
              type="radio"
              name="certainty"
              checked={certainty === each}
              onChange={() => setCertainty(each)}
            />
            <span>{chainFigureTexts.certainties[each]}</span>
            <span className="secondary-words">{texts.hints[each]}</span>
          </label>
        ))}
      </fieldset>
    </Dialog>
  );
}
