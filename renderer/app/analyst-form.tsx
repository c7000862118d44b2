import { useEffect, useRef, useState } from 'react';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { call } from '../api/client.ts';
import { readAgain } from '../api/queries.ts';
import { Button } from '../ui/button.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { TextField } from '../ui/text-field.tsx';
import { changeSettings } from './settings-change.ts';

/** Enters a person and lets them work here from now on. */
export function AnalystForm({ submitLabel, onEntered }: { submitLabel: string; onEntered?: () => void }) {
  const [name, setName] = useState('');
  const [qualification, setQualification] = useState('');
  const [nameMissing, setNameMissing] = useState(false);
  const [failed, setFailed] = useState<unknown>(null);
  const [busy, setBusy] = useState(false);
  const first = useRef<HTMLInputElement>(null);

  useEffect(() => first.current?.focus(), []);

  const enter = async () => {
    if (name.trim() === '') {
      setNameMissing(true);
      return;
    }
    setBusy(true);
    setFailed(null);
    try {
      const analyst = await call('analysts.add', { name, qualification });
      await readAgain('analysts.list');
      // The first one entered works here already.
      const { currentAnalystId } = await call('settings.read', {});
      if (currentAnalystId !== analyst.id) await changeSettings({ currentAnalystId: analyst.id });
      await readAgain('settings.read');
      onEntered?.();
    } catch (error) {
      setFailed(error);
    } finally {
      setBusy(false);
    }
  };

  return (
    <form
      className="analyst-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void enter();
      }}
    >
      <TextField
        ref={first}
        label={shellTexts.analyst.name}
        required
        maxLength={120}
        value={name}
        error={nameMissing && name.trim() === '' ? shellTexts.analyst.nameMissing : undefined}
        onValue={setName}
      />
      <TextField
        label={shellTexts.analyst.qualification}
        hint={shellTexts.analyst.qualificationHint}
        maxLength={300}
        value={qualification}
        onValue={setQualification}
      />
      {failed === null ? null : <ErrorState inline error={failed} />}
      <div>
        <Button type="submit" kind="primary" disabled={busy}>
          {submitLabel}
        </Button>
      </div>
    </form>
  );
}
