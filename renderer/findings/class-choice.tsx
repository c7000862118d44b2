/** One of the four classes, by pointer, by arrow keys, or by its letter. */
import { useId, type KeyboardEvent } from 'react';
import { damageClasses, type DamageClass } from '#shared-types/finding.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { ClassBadge } from '../ui/class-badge.tsx';
import './class-choice.css';

export function ClassChoice({
  value,
  onValue,
}: {
  value: DamageClass;
  onValue: (value: DamageClass) => void;
}) {
  const name = useId();
  const byLetter = (event: KeyboardEvent<HTMLFieldSetElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const pressed = event.key.toUpperCase();
    const chosen = damageClasses.find((each) => findingsTexts.classKeys[each] === pressed);
    if (chosen === undefined) return;
    event.preventDefault();
    onValue(chosen);
    event.currentTarget.querySelector<HTMLInputElement>(`input[value=${chosen}]`)?.focus();
  };
  return (
    <fieldset className="class-choice" onKeyDown={byLetter}>
      <legend className="field-label">{findingsTexts.class}</legend>
      <div className="class-choice-row">
        {damageClasses.map((each) => (
          <label key={each} className="class-choice-one">
            <input
              type="radio"
              name={name}
              value={each}
              checked={value === each}
              aria-keyshortcuts={findingsTexts.classKeys[each]}
              onChange={() => onValue(each)}
            />
            <ClassBadge of={each} named />
          </label>
        ))}
      </div>
      <p className="field-hint">
        {commonTexts.damageClassMeanings[value]}. {findingsTexts.classHint}
      </p>
    </fieldset>
  );
}
