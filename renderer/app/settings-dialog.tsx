import { useState } from 'react';
import type { AnalystId } from '#shared-types/ids.ts';
import type { SettingsFields } from '#shared-types/settings.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { useAnswer } from '../api/queries.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { Select, type Choice } from '../ui/select.tsx';
import { AnalystForm } from './analyst-form.tsx';
import { changeSettings } from './settings-change.ts';

const texts = shellTexts.settings;

/** Each choice takes effect and is saved at once. */
export function SettingsDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  return (
    <Dialog
      open={open}
      title={texts.title}
      onClose={onClose}
      foot={<Button onClick={onClose}>{commonTexts.close}</Button>}
    >
      <SettingsFieldsForm />
    </Dialog>
  );
}

function SettingsFieldsForm() {
  const settings = useAnswer('settings.read', {});
  const analysts = useAnswer('analysts.list', {});
  const [adding, setAdding] = useState(false);
  const [failed, setFailed] = useState<unknown>(null);

  const change = (fields: Partial<SettingsFields>) => {
    setFailed(null);
    changeSettings(fields).catch(setFailed);
  };

  const unread = settings.error ?? analysts.error;
  if (unread !== null) return <ErrorState inline error={unread} onRetry={() => void settings.refetch()} />;
  if (settings.data === undefined || analysts.data === undefined) return <BusyState />;
  const { theme, paper, lengthUnit, currentAnalystId } = settings.data;

  return (
    <>
      <Select
        label={texts.theme}
        value={theme}
        choices={choicesOf(texts.themes)}
        onValue={(value) => value !== '' && change({ theme: value })}
      />
      <Select
        label={texts.paper}
        value={paper}
        choices={choicesOf(texts.papers)}
        onValue={(value) => value !== '' && change({ paper: value })}
      />
      <Select
        label={texts.lengthUnit}
        value={lengthUnit}
        choices={choicesOf(texts.lengthUnits)}
        onValue={(value) => value !== '' && change({ lengthUnit: value })}
      />
      <Select<AnalystId>
        label={texts.analyst}
        hint={texts.analystHint}
        value={currentAnalystId ?? ''}
        choices={analysts.data.map(({ id, name }) => ({ value: id, label: name }))}
        onValue={(value) => value !== '' && change({ currentAnalystId: value })}
      />
      {adding ? (
        <AnalystForm submitLabel={shellTexts.analyst.add} onEntered={() => setAdding(false)} />
      ) : (
        <div>
          <Button onClick={() => setAdding(true)}>{texts.addAnalyst}</Button>
        </div>
      )}
      {failed === null ? null : <ErrorState inline error={failed} />}
    </>
  );
}

function choicesOf<Value extends string>(words: Readonly<Record<Value, string>>): Choice<Value>[] {
  return (Object.keys(words) as Value[]).map((value) => ({ value, label: words[value] }));
}
