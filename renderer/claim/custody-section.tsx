import { memo, useEffect, useMemo, useRef, useState } from 'react';
import { custodyGaps, type CustodyGap } from '#analysis/custody/custody-gaps.ts';
import type { CustodyEntry } from '#shared-types/custody.ts';
import type { CaseId } from '#shared-types/ids.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { custodyTexts } from '#shared-types/texts/custody.ts';
import { putAnswer, useAnswer } from '../api/queries.ts';
import { queryClient } from '../api/query-client.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { claimPlaces } from './claim-places.ts';
import { ClaimSection } from './claim-section.tsx';
import { CustodyForm, custodyDraft } from './custody-form.tsx';
import { CustodyTable } from './custody-table.tsx';
import { useFocusAgain } from './focus-again.ts';
import { isDraftKept } from './kept-draft.ts';
import { toldTimeWords } from './told-words.ts';

const texts = custodyTexts;

/** Who had which item when; entered and struck in place, never changed. */
export const CustodySection = memo(function CustodySection(props: {
  caseId: CaseId;
  closed: boolean;
  onForm: (isOpen: boolean) => void;
}) {
  const { caseId, closed, onForm } = props;
  const answer = useAnswer('custody.list', { caseId });
  const [adding, setAdding] = useState(() => isDraftKept(custodyDraft(caseId)));
  const place = useRef<HTMLDivElement>(null);
  const focusNext = useFocusAgain(place);
  const entries = answer.data;
  const formIsOpen = adding && !closed;

  useEffect(() => onForm(formIsOpen), [onForm, formIsOpen]);

  return (
    <ClaimSection
      place={claimPlaces.custody}
      note={entries === undefined || entries.length === 0 ? undefined : numberText(entries.length)}
    >
      <div className="claim-fields" ref={place}>
        <p className="field-hint">{texts.intro}</p>
        {entries === undefined ? (
          answer.error === null ? (
            <BusyState />
          ) : (
            <ErrorState inline error={answer.error} onRetry={() => void answer.refetch()} />
          )
        ) : (
          <>
            <Gaps entries={entries} />
            {entries.length === 0 ? (
              <p className="secondary-words">{texts.none}</p>
            ) : (
              <CustodyTable caseId={caseId} entries={entries} closed={closed} onEntry={takeIn} />
            )}
            {closed ? null : adding ? (
              <CustodyForm
                caseId={caseId}
                entries={entries}
                onEntered={(entry) => takeIn(caseId, entry)}
                onDone={() => {
                  focusNext('add');
                  setAdding(false);
                }}
              />
            ) : (
              <div>
                <Button data-focus="add" onClick={() => setAdding(true)}>
                  {texts.add}
                </Button>
              </div>
            )}
          </>
        )}
      </div>
    </ClaimSection>
  );
});

/** The entry as the library has it now, in its place in the list: by the time told, then as entered. */
async function takeIn(caseId: CaseId, entry: CustodyEntry): Promise<void> {
  // An older list that is just being read must not come after this one.
  await queryClient.cancelQueries({ queryKey: ['custody.list', { caseId }] });
  const list = queryClient.getQueryData<CustodyEntry[]>(['custody.list', { caseId }]);
  if (list === undefined) return;
  const others = list.filter(({ id }) => id !== entry.id);
  const after = others.findIndex(
    ({ at, enteredAt }) =>
      at.local > entry.at.local || (at.local === entry.at.local && enteredAt > entry.enteredAt),
  );
  putAnswer('custody.list', { caseId }, others.toSpliced(after === -1 ? others.length : after, 0, entry));
}

const shownAtFirst = 6;

function Gaps({ entries }: { entries: readonly CustodyEntry[] }) {
  const gaps = useMemo(() => custodyGaps(entries), [entries]);
  const [all, setAll] = useState(false);
  if (gaps.length === 0) return null;
  const shown = all ? gaps : gaps.slice(0, shownAtFirst);
  return (
    <div className="claim-warning">
      <p>
        <strong>{texts.gaps.head(numberText(gaps.length))}</strong>
      </p>
      <ul>
        {shown.map((gap) => (
          <li key={`${gap.kind} ${gap.entry.id}`}>{gapWords(gap)}</li>
        ))}
      </ul>
      {shown.length === gaps.length ? null : (
        <Button kind="quiet" onClick={() => setAll(true)}>
          {texts.gaps.showAll(numberText(gaps.length))}
        </Button>
      )}
    </div>
  );
}

function gapWords(gap: CustodyGap): string {
  const { entry } = gap;
  const item = commonTexts.quoted(entry.item);
  const when = toldTimeWords(entry.at);
  if (gap.kind === 'not-yet-received') {
    return texts.gaps.notYetReceived(item, texts.events[entry.event], entry.from, when);
  }
  const { before } = gap;
  return texts.gaps.otherHands(item, before.to, toldTimeWords(before.at), entry.from, when);
}
