import { presences, type Presence } from '#shared-types/finding.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { Select } from '../ui/select.tsx';

const choices = presences.map((value) => ({ value, label: findingsTexts.presenceChoices[value] }));

export function PresenceSelect({ value, onValue }: { value: Presence; onValue: (value: Presence) => void }) {
  return (
    <Select
      label={findingsTexts.presence}
      value={value}
      choices={choices}
      onValue={(chosen) => {
        if (chosen !== '') onValue(chosen);
      }}
    />
  );
}
