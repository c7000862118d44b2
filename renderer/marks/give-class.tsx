/** The second, small step of a new finding: what it is to the failure, by its letter; Enter leaves it undecided. */
import { useEffect, useRef, type KeyboardEvent } from 'react';
import { damageClasses, type DamageClass } from '#shared-types/finding.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { Button } from '../ui/button.tsx';
import { ClassBadge } from '../ui/class-badge.tsx';
import { PanelHead } from '../ui/side-panel.tsx';

const texts = marksTexts.giving;

export function GiveClass(props: {
  title: string;
  /** What the finding is, in words. */
  finding: string;
  onClass: (chosen: DamageClass) => void;
  onBack: () => void;
}) {
  const { title, finding, onClass, onBack } = props;
  const undecided = useRef<HTMLButtonElement>(null);
  useEffect(() => undecided.current?.focus(), []);

  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const pressed = event.key.toUpperCase();
    const chosen = damageClasses.find((each) => findingsTexts.classKeys[each] === pressed);
    if (event.key === 'Escape') onBack();
    else if (chosen !== undefined) onClass(chosen);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <section className="marks-give" aria-label={title} onKeyDown={onKeyDown}>
      <PanelHead title={title} />
      <p>{finding}</p>
      <div role="group" aria-label={texts.class} className="give-classes">
        <p className="field-label" aria-hidden="true">
          {texts.class}
        </p>
        {damageClasses.map((each) => (
          <Button
            key={each}
            ref={each === 'undecided' ? undecided : undefined}
            className="give-class"
            shortcut={findingsTexts.classKeys[each]}
            title={commonTexts.damageClassMeanings[each]}
            onClick={() => onClass(each)}
          >
            <ClassBadge of={each} named />
          </Button>
        ))}
        <p className="field-hint">{texts.classHint}</p>
      </div>
      <div className="marks-give-foot">
        <Button shortcut="Esc" onClick={onBack}>
          {texts.back}
        </Button>
      </div>
    </section>
  );
}
