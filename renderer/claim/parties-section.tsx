import { memo, useEffect, useRef, useState } from 'react';
import type { CaseId, PartyId } from '#shared-types/ids.ts';
import type { Party, PartyFields, PartyRole } from '#shared-types/party.ts';
import { partiesTexts } from '#shared-types/texts/parties.ts';
import { call } from '../api/client.ts';
import { putAnswer, readAgain, useAnswer } from '../api/queries.ts';
import { queryClient } from '../api/query-client.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { StatusWord } from '../ui/status-word.tsx';
import { toast, toastError } from '../ui/toaster.tsx';
import { claimPlaces } from './claim-places.ts';
import { ClaimSection } from './claim-section.tsx';
import { useFocusAgain } from './focus-again.ts';
import { isDraftKept } from './kept-draft.ts';
import { PartyForm } from './party-form.tsx';

const texts = partiesTexts;
const leading = ['claims', 'instructs', 'pays'] as const satisfies readonly PartyRole[];

type Open = PartyId | 'new' | null;

/** Who has to do with the case: entered, changed and removed in place. */
export const PartiesSection = memo(function PartiesSection(props: {
  caseId: CaseId;
  closed: boolean;
  onForm: (isOpen: boolean) => void;
}) {
  const { caseId, closed, onForm } = props;
  const answer = useAnswer('parties.list', { caseId });
  const [open, setOpen] = useState<Open>(() => (isDraftKept(newPartyDraft(caseId)) ? 'new' : null));
  const place = useRef<HTMLDivElement>(null);
  const focusNext = useFocusAgain(place);
  const parties = answer.data;
  const formIsOpen = open !== null && !closed;

  useEffect(() => onForm(formIsOpen), [onForm, formIsOpen]);

  const close = (focus: string) => {
    focusNext(focus);
    setOpen(null);
  };

  const remove = async (party: Party) => {
    try {
      await call('parties.remove', { partyId: party.id, revision: party.revision });
    } catch (error) {
      toastError(error);
      await readAgain('parties.list', { caseId });
      return;
    }
    focusNext('new');
    await changeList(caseId, (list) => list.filter(({ id }) => id !== party.id));
    toast(texts.removed(party.name), {
      action: { label: texts.putBack, run: () => void putBack(caseId, party) },
    });
  };

  return (
    <ClaimSection
      place={claimPlaces.parties}
      note={parties === undefined || parties.length === 0 ? undefined : numberText(parties.length)}
    >
      <div className="claim-fields" ref={place}>
        {parties === undefined ? (
          answer.error === null ? (
            <BusyState />
          ) : (
            <ErrorState inline error={answer.error} onRetry={() => void answer.refetch()} />
          )
        ) : (
          <>
            <LeadingRoles parties={parties} />
            {parties.length === 0 ? <p className="secondary-words">{texts.nobodyAtAll}</p> : null}
            {parties.length === 0 ? null : (
              <ul className="party-list">
                {parties.map((party) => (
                  <li key={party.id}>
                    {open === party.id && !closed ? (
                      <PartyForm
                        key={party.id}
                        title={texts.formOf(party.name)}
                        draftKey={null}
                        party={party}
                        onSave={(fields) => putParty(caseId, party.id, party.revision, fields)}
                        onDone={() => close(party.id)}
                      />
                    ) : (
                      <PartyRow
                        party={party}
                        {...(closed
                          ? {}
                          : { onEdit: () => setOpen(party.id), onRemove: () => void remove(party) })}
                      />
                    )}
                  </li>
                ))}
              </ul>
            )}
            {closed ? null : open === 'new' ? (
              <NewParty caseId={caseId} onDone={() => close('new')} />
            ) : (
              <div>
                <Button data-focus="new" onClick={() => setOpen('new')}>
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

const newPartyDraft = (caseId: CaseId) => `party of ${caseId}`;

function NewParty({ caseId, onDone }: { caseId: CaseId; onDone: () => void }) {
  // One id for as long as the form stands: sent twice, it is still one party.
  const [id] = useState(() => crypto.randomUUID() as PartyId);
  return (
    <PartyForm
      title={texts.formNew}
      party={null}
      draftKey={newPartyDraft(caseId)}
      onSave={(fields) => putParty(caseId, id, null, fields)}
      onDone={onDone}
    />
  );
}

/** Who claims, who instructs, who pays; a gap there is said with what it leaves open. */
function LeadingRoles({ parties }: { parties: readonly Party[] }) {
  return (
    <dl className="fact-list">
      {leading.map((role) => {
        const { label, missing } = texts.leading[role];
        const names = parties.filter(({ roles }) => roles.includes(role)).map(({ name }) => name);
        return (
          <div key={role} className="fact-row">
            <dt>{label}</dt>
            <dd>
              {names.length > 0 ? (
                <strong>{names.join(', ')}</strong>
              ) : (
                <>
                  <StatusWord tone="warn">{texts.nobody}</StatusWord>
                  <p className="secondary-words">{missing}</p>
                </>
              )}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}

function PartyRow(props: { party: Party; onEdit?: () => void; onRemove?: () => void }) {
  const { party, onEdit, onRemove } = props;
  const roles = party.roles.map((role) => texts.roles[role]).join(', ');
  return (
    <div className="party-row">
      <div>
        <p>
          <strong>{party.name}</strong>{' '}
          <span className="party-roles">{roles === '' ? texts.roleUnknown : roles}</span>
        </p>
        {party.details.trim() === '' ? null : <p className="party-details">{party.details}</p>}
      </div>
      {onEdit === undefined ? null : (
        <div className="party-actions">
          <Button kind="quiet" data-focus={party.id} aria-label={texts.editOf(party.name)} onClick={onEdit}>
            {texts.edit}
          </Button>
          <Button kind="quiet" aria-label={texts.removeOf(party.name)} onClick={onRemove}>
            {texts.remove}
          </Button>
        </div>
      )}
    </div>
  );
}

/** @throws AppError what the library refuses with; what is there now is read again then */
async function putParty(
  caseId: CaseId,
  partyId: PartyId,
  revision: number | null,
  fields: PartyFields,
): Promise<void> {
  try {
    const now = await call('parties.put', { caseId, partyId, revision, fields });
    await changeList(caseId, (list) =>
      list.some(({ id }) => id === partyId)
        ? list.map((known) => (known.id === partyId ? now : known))
        : [...list, now],
    );
  } catch (error) {
    await readAgain('parties.list', { caseId });
    throw error;
  }
}

async function putBack(caseId: CaseId, { name, roles, details }: Party): Promise<void> {
  try {
    await putParty(caseId, crypto.randomUUID() as PartyId, null, { name, roles, details });
  } catch (error) {
    toastError(error);
  }
}

async function changeList(caseId: CaseId, change: (list: Party[]) => Party[]): Promise<void> {
  // An older list that is just being read must not come after this one.
  await queryClient.cancelQueries({ queryKey: ['parties.list', { caseId }] });
  const list = queryClient.getQueryData<Party[]>(['parties.list', { caseId }]);
  if (list !== undefined) putAnswer('parties.list', { caseId }, change(list));
}
