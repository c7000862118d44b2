import { useEffect, useId, useMemo, useRef, useState, type SyntheticEvent } from 'react';
import { nothingTyped } from '#analysis/text/typed-reading.ts';
import { readTime, writeTime } from '#analysis/text/typed-time.ts';
import { custodyEvents, isHandover, type CustodyEntry, type CustodyEvent } from '#shared-types/custody.ts';
import type { CaseId, CustodyEntryId } from '#shared-types/ids.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { custodyTexts } from '#shared-types/texts/custody.ts';
import { useAnswer, useSend } from '../api/queries.ts';
import { Button } from '../ui/button.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { Select } from '../ui/select.tsx';
import { TextArea, TextField } from '../ui/text-field.tsx';
import { dropDraft, useKeptDraft } from './kept-draft.ts';
import { toldTimeWords } from './told-words.ts';
import { TypedField } from './typed-field.tsx';

const texts = custodyTexts;

type Draft = {
  readonly item: string;
  readonly event: CustodyEvent | '';
  readonly from: string;
  readonly to: string;
  readonly at: string;
  readonly why: string;
};
const emptyDraft: Draft = { item: '', event: '', from: '', to: '', at: '', why: '' };

/** Under which an entry that is being written is kept. */
export const custodyDraft = (caseId: CaseId) => `custody of ${caseId}`;

const eventChoices = custodyEvents.map((value) => ({ value, label: texts.events[value] }));

/** One entry after another: what was entered is in the list at once, and the item stays for the next. */
export function CustodyForm(props: {
  caseId: CaseId;
  entries: readonly CustodyEntry[];
  onEntered: (entry: CustodyEntry) => Promise<void>;
  onDone: () => void;
}) {
  const { caseId, entries, onEntered } = props;
  const draftKey = custodyDraft(caseId);
  const send = useSend('custody.add');
  const [draft, setDraft] = useKeptDraft(draftKey, emptyDraft);
  const [entryId, setEntryId] = useState(newEntryId);
  /** Counts the tries: after each that failed, focus goes to what is to be mended. */
  const [tries, setTries] = useState(0);
  const tried = tries > 0;
  const item = useRef<HTMLInputElement>(null);
  const form = useRef<HTMLFormElement>(null);
  const known = useKnownNames(caseId, entries);
  const listId = useId();

  // Opened at the lower edge it would be out of sight but for its first line.
  useEffect(() => {
    item.current?.focus();
    form.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  useEffect(() => {
    if (tries > 0) form.current?.querySelector<HTMLElement>(firstToMend)?.focus();
  }, [tries]);

  const onDone = () => {
    dropDraft(draftKey);
    props.onDone();
  };
  const change = (more: Partial<Draft>) => setDraft((now) => ({ ...now, ...more }));
  const handover = draft.event === '' || isHandover(draft.event);
  const at = draft.at.trim() === '' ? nothingTyped : readTime(draft.at);
  const faults = faultsOf(draft, at.kind === 'nothing', handover);

  const submit = (event: SyntheticEvent) => {
    event.preventDefault();
    if (send.isPending) return;
    if (draft.event === '' || at.kind !== 'understood' || Object.keys(faults).length > 0) {
      setTries((count) => count + 1);
      return;
    }
    const { event: happened } = draft;
    send.mutate(
      {
        caseId,
        entryId,
        fields: { ...draft, event: happened, to: handover ? draft.to : '', at: at.value },
      },
      {
        onSuccess: (entry) => {
          setDraft(() => ({ ...emptyDraft, item: draft.item }));
          dropDraft(draftKey);
          setEntryId(newEntryId);
          setTries(0);
          item.current?.focus();
          void onEntered(entry);
        },
      },
    );
  };

  const told = (fault: string | undefined) => (tried ? fault : undefined);
  return (
    <form ref={form} className="claim-form" noValidate aria-label={texts.formHead} onSubmit={submit}>
      <h3>{texts.formHead}</h3>
      <div className="custody-fields">
        <TextField
          ref={item}
          label={texts.itemLabel}
          hint={texts.itemHint}
          required
          maxLength={200}
          list={`${listId}-items`}
          value={draft.item}
          error={told(faults.item)}
          onValue={(value) => change({ item: value })}
        />
        <Select
          label={texts.event}
          required
          value={draft.event}
          choices={eventChoices}
          emptyChoice={texts.eventEmpty}
          error={told(faults.event)}
          onValue={(event) => change({ event })}
        />
        <TypedField
          label={texts.at}
          hint={texts.atHint}
          required
          value={draft.at}
          reading={at}
          words={toldTimeWords}
          error={told(faults.at)}
          onValue={(text) => change({ at: text })}
          onSettle={(time) => change({ at: writeTime(time) })}
        />
        <TextField
          label={handover ? texts.fromHandover : texts.fromDeed}
          required
          maxLength={160}
          list={`${listId}-names`}
          value={draft.from}
          error={told(faults.from)}
          onValue={(from) => change({ from })}
        />
        {handover ? (
          <TextField
            label={texts.to}
            required
            maxLength={160}
            list={`${listId}-names`}
            value={draft.to}
            error={told(faults.to)}
            onValue={(to) => change({ to })}
          />
        ) : null}
      </div>
      <TextArea
        label={texts.why}
        maxLength={2_000}
        rows={2}
        value={draft.why}
        onValue={(why) => change({ why })}
      />
      <Known id={`${listId}-items`} words={known.items} />
      <Known id={`${listId}-names`} words={known.names} />
      {send.error === null ? null : <ErrorState inline error={send.error} />}
      <div className="state-actions">
        <Button type="submit" kind="primary" disabled={send.isPending}>
          {texts.enter}
        </Button>
        <Button onClick={onDone}>{commonTexts.close}</Button>
      </div>
    </form>
  );
}

const newEntryId = () => crypto.randomUUID() as CustodyEntryId;

/** The first field that is wrong, or the first answer to what is asked. */
const firstToMend = '[aria-invalid=true], .typed-question button';

type Faults = { readonly [Name in keyof Draft]?: string };

function faultsOf(draft: Draft, timeIsMissing: boolean, handover: boolean): Faults {
  const isEmpty = (text: string) => text.trim() === '';
  return {
    ...(isEmpty(draft.item) ? { item: texts.itemMissing } : {}),
    ...(draft.event === '' ? { event: texts.eventMissing } : {}),
    ...(timeIsMissing ? { at: texts.atMissing } : {}),
    ...(isEmpty(draft.from) ? { from: texts.fromMissing } : {}),
    ...(handover && isEmpty(draft.to) ? { to: texts.toMissing } : {}),
  };
}

/** Names written the same every time join up; so those that are there already are offered. */
function useKnownNames(caseId: CaseId, entries: readonly CustodyEntry[]) {
  const parties = useAnswer('parties.list', { caseId }).data;
  return useMemo(() => {
    const hands = entries.flatMap(({ from, to }) => [from, to]);
    const names = new Set([...(parties ?? []).map(({ name }) => name), ...hands]);
    names.delete('');
    return { names: [...names], items: [...new Set(entries.map(({ item }) => item))] };
  }, [parties, entries]);
}

function Known({ id, words }: { id: string; words: readonly string[] }) {
  return (
    <datalist id={id}>
      {words.map((word) => (
        <option key={word} value={word} />
      ))}
    </datalist>
  );
}
