import { useEffect, useRef, useState, type SyntheticEvent } from 'react';
import { isHandover, type CustodyEntry } from '#shared-types/custody.ts';
import type { CaseId, CustodyEntryId } from '#shared-types/ids.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { custodyTexts } from '#shared-types/texts/custody.ts';
import { readAgain, useSend } from '../api/queries.ts';
import { Button } from '../ui/button.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorState } from '../ui/error-state.tsx';
import { dayAndClockText } from '../ui/number-words.ts';
import { TextField } from '../ui/text-field.tsx';
import { useFocusAgain } from './focus-again.ts';
import { toldTimeWords } from './told-words.ts';

const texts = custodyTexts;

export function CustodyTable(props: {
  caseId: CaseId;
  entries: readonly CustodyEntry[];
  closed: boolean;
  onEntry: (caseId: CaseId, entry: CustodyEntry) => Promise<void>;
}) {
  const { caseId, entries, closed, onEntry } = props;
  const [striking, setStriking] = useState<CustodyEntryId | null>(null);
  const place = useRef<HTMLDivElement>(null);
  const focusNext = useFocusAgain(place);

  return (
    <div
      className="table-scroll custody-scroll"
      ref={place}
      tabIndex={0}
      role="group"
      aria-label={texts.table}
    >
      <table className="data-table custody-table">
        <caption className="only-read-out">{texts.table}</caption>
        <thead>
          <tr>
            <th scope="col">{texts.when}</th>
            <th scope="col">{texts.item}</th>
            <th scope="col">{texts.what}</th>
            {closed ? null : (
              <th scope="col">
                <span className="only-read-out">{texts.strikeColumn}</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {entries.map((entry) => (
            <tr key={entry.id} className={classNames(entry.struck !== null && 'custody-struck')}>
              <td>{struckOut(entry, toldTimeWords(entry.at))}</td>
              <td>{struckOut(entry, entry.item)}</td>
              <td>
                <Happened entry={entry} />
                {striking === entry.id && entry.struck === null && !closed ? (
                  <StrikeForm
                    entry={entry}
                    onStruck={(struck) => {
                      setStriking(null);
                      place.current?.focus();
                      return onEntry(caseId, struck);
                    }}
                    onRefused={() => void readAgain('custody.list', { caseId })}
                    onCancel={() => {
                      focusNext(entry.id);
                      setStriking(null);
                    }}
                  />
                ) : null}
              </td>
              {closed ? null : (
                <td className="cell-end">
                  {entry.struck === null && striking !== entry.id ? (
                    <Button
                      kind="quiet"
                      data-focus={entry.id}
                      aria-label={texts.strikeOf(entry.item, toldTimeWords(entry.at))}
                      onClick={() => setStriking(entry.id)}
                    >
                      {texts.strike}
                    </Button>
                  ) : null}
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** A struck entry stays to be read, marked as struck for eyes and for screen readers. */
function struckOut(entry: CustodyEntry, words: string) {
  return entry.struck === null ? words : <s>{words}</s>;
}

function Happened({ entry }: { entry: CustodyEntry }) {
  const event = texts.events[entry.event];
  const words = isHandover(entry.event)
    ? texts.handover(event, entry.from, entry.to)
    : texts.deed(event, entry.from);
  return (
    <>
      <p>{struckOut(entry, words)}</p>
      {entry.why.trim() === '' ? null : <p className="custody-why">{struckOut(entry, entry.why)}</p>}
      {entry.struck === null ? null : (
        <p>
          <strong>{texts.struck(entry.struck.by, dayAndClockText(entry.struck.at))}</strong>{' '}
          {entry.struck.reason}
        </p>
      )}
      <p className="secondary-words">{texts.enteredBy(entry.enteredBy, dayAndClockText(entry.enteredAt))}</p>
    </>
  );
}

function StrikeForm(props: {
  entry: CustodyEntry;
  onStruck: (entry: CustodyEntry) => Promise<void>;
  onRefused: () => void;
  onCancel: () => void;
}) {
  const { entry, onStruck, onRefused, onCancel } = props;
  const send = useSend('custody.strike');
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const line = useRef<HTMLInputElement>(null);
  const reasonIsMissing = reason.trim() === '';

  useEffect(() => line.current?.focus(), []);

  const submit = (event: SyntheticEvent) => {
    event.preventDefault();
    setTried(true);
    if (reasonIsMissing || send.isPending) return;
    send.mutate(
      { entryId: entry.id, revision: entry.revision, reason },
      { onSuccess: (struck) => void onStruck(struck), onError: onRefused },
    );
  };

  return (
    <form className="claim-form" noValidate onSubmit={submit}>
      <TextField
        ref={line}
        label={texts.strikeReason}
        hint={texts.strikeReasonHint}
        required
        maxLength={2_000}
        value={reason}
        error={tried && reasonIsMissing ? texts.strikeReasonMissing : undefined}
        onValue={setReason}
      />
      {send.error === null ? null : <ErrorState inline error={send.error} />}
      <div className="state-actions">
        <Button type="submit" kind="danger" disabled={send.isPending}>
          {texts.doStrike}
        </Button>
        <Button onClick={onCancel}>{commonTexts.cancel}</Button>
      </div>
    </form>
  );
}
