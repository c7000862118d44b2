import { useEffect, useRef, useState, type SyntheticEvent } from 'react';
import { AppError } from '#shared-types/errors.ts';
import { partyRoles, type Party, type PartyFields, type PartyRole } from '#shared-types/party.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { partiesTexts } from '#shared-types/texts/parties.ts';
import { Button } from '../ui/button.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { TextArea, TextField } from '../ui/text-field.tsx';
import { dropDraft, useKeptDraft } from './kept-draft.ts';

const texts = partiesTexts;
const nobody: PartyFields = { name: '', roles: [], details: '' };

/** One party, new or as the library has it; saved as a whole. */
export function PartyForm(props: {
  title: string;
  party: Party | null;
  /** Under which what is written is kept meanwhile; null where it is not. */
  draftKey: string | null;
  /** @throws what the library refuses with */
  onSave: (fields: PartyFields) => Promise<void>;
  onDone: () => void;
}) {
  const { title, party, draftKey, onSave } = props;
  const [fields, setFields] = useKeptDraft<PartyFields>(draftKey, fieldsOf(party ?? nobody));
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const name = useRef<HTMLInputElement>(null);
  const form = useRef<HTMLFormElement>(null);

  const onDone = () => {
    if (draftKey !== null) dropDraft(draftKey);
    props.onDone();
  };

  // Opened at the lower edge it would be out of sight but for its first line.
  useEffect(() => {
    name.current?.focus();
    form.current?.scrollIntoView({ block: 'nearest' });
  }, []);

  const change = (more: Partial<PartyFields>) => setFields((now) => ({ ...now, ...more }));
  const nameIsMissing = fields.name.trim() === '';

  const submit = async (event: SyntheticEvent) => {
    event.preventDefault();
    setTried(true);
    if (nameIsMissing) name.current?.focus();
    if (nameIsMissing || busy) return;
    setBusy(true);
    try {
      await onSave(fields);
      onDone();
    } catch (refused) {
      setError(refused);
      setBusy(false);
    }
  };

  return (
    <form
      ref={form}
      className="claim-form"
      noValidate
      aria-label={title}
      onSubmit={(event) => void submit(event)}
    >
      <h3>{title}</h3>
      <TextField
        ref={name}
        label={texts.name}
        required
        maxLength={160}
        value={fields.name}
        error={tried && nameIsMissing ? texts.nameMissing : undefined}
        onValue={(value) => change({ name: value })}
      />
      <Roles roles={fields.roles} onRoles={(roles) => change({ roles })} />
      <TextArea
        label={texts.details}
        hint={texts.detailsHint}
        maxLength={2_000}
        rows={2}
        value={fields.details}
        onValue={(details) => change({ details })}
      />
      {error === null ? null : <ErrorState inline error={error} />}
      {party !== null && error instanceof AppError && error.code === 'stale-revision' ? (
        <p className="secondary-words">
          {texts.inLibrary}: {party.name}
          {party.roles.map((role) => `, ${texts.roles[role]}`)}
          {party.details === '' ? null : ` — ${party.details}`}
        </p>
      ) : null}
      <div className="state-actions">
        <Button type="submit" kind="primary" disabled={busy}>
          {texts.save}
        </Button>
        <Button onClick={onDone}>{commonTexts.cancel}</Button>
      </div>
    </form>
  );
}

const fieldsOf = ({ name, roles, details }: PartyFields): PartyFields => ({ name, roles, details });

function Roles(props: { roles: readonly PartyRole[]; onRoles: (roles: PartyRole[]) => void }) {
  const { roles, onRoles } = props;
  return (
    <fieldset className="role-choice">
      <legend className="field-label">{texts.rolesLegend}</legend>
      <div className="role-choice-row">
        {partyRoles.map((role) => (
          <label key={role}>
            <input
              type="checkbox"
              checked={roles.includes(role)}
              onChange={(event) => {
                const { checked } = event.currentTarget;
                onRoles(partyRoles.filter((each) => (each === role ? checked : roles.includes(each))));
              }}
            />
            {texts.roles[role]}
          </label>
        ))}
      </div>
      <p className="field-hint">{texts.rolesHint}</p>
    </fieldset>
  );
}
