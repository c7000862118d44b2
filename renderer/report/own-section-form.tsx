/** One section of the analyst's own: where it stands, its heading and words, and what it refers to. */
import { useLayoutEffect, useRef } from 'react';
import type { LooseReason } from '#analysis/report/references.ts';
import type { OwnSection } from '#shared-types/report-plan.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { Button } from '../ui/button.tsx';
import { Select, type Choice } from '../ui/select.tsx';
import { TextArea, TextField } from '../ui/text-field.tsx';

export type LooseReference = { readonly raw: string; readonly reason: LooseReason };

export function OwnSectionForm(props: {
  section: OwnSection;
  /** How it is called where its buttons are read out. */
  name: string;
  fieldId: string;
  closed: boolean;
  references: readonly Choice<string>[];
  loose: readonly LooseReference[];
  onWords: (change: Partial<OwnSection>) => void;
  onBlur: () => void;
  /** Null at the end of its list. */
  onEarlier: (() => void) | null;
  onLater: (() => void) | null;
  onRemove: () => void;
}) {
  const { section, name, closed, references, onWords, onBlur, onEarlier, onLater, onRemove } = props;
  const texts = reportScreenTexts;
  const form = useRef<HTMLElement>(null);
  const caret = useRef<number | null>(null);

  /** Where the caret goes once the words are there that were put in before it. */
  const caretAfter = useRef<number | null>(null);

  const insert = (reference: string) => {
    const at = caret.current ?? section.words.length;
    caretAfter.current = at + reference.length;
    onWords({ words: section.words.slice(0, at) + reference + section.words.slice(at) });
  };
  useLayoutEffect(() => {
    const area = form.current?.querySelector('textarea');
    if (caretAfter.current === null) return;
    area?.focus();
    area?.setSelectionRange(caretAfter.current, caretAfter.current);
    caretAfter.current = null;
  }, [section.words]);

  return (
    <section className="own-section" ref={form} id={props.fieldId} tabIndex={-1} aria-label={name}>
      <TextField
        label={texts.sectionHeading}
        value={section.heading}
        maxLength={200}
        readOnly={closed}
        onValue={(heading) => onWords({ heading })}
        onBlur={onBlur}
      />
      <TextArea
        label={texts.words}
        hint={texts.wordsHint}
        value={section.words}
        rows={4}
        maxLength={20_000}
        readOnly={closed}
        controlClassName="own-section-words"
        onValue={(words) => onWords({ words })}
        onBlur={onBlur}
        onSelect={(event) => {
          caret.current = event.currentTarget.selectionEnd;
        }}
      />
      <LooseReferences loose={props.loose} />
      {closed ? null : (
        <div className="own-section-deeds">
          <Select
            label={texts.refer}
            labelHidden
            value=""
            choices={references}
            emptyChoice={texts.referEmpty}
            disabled={references.length === 0}
            onValue={(reference) => {
              if (reference !== '') insert(reference);
            }}
          />
          <Button
            kind="quiet"
            disabled={onEarlier === null}
            aria-label={texts.named(texts.earlier, name)}
            onClick={() => onEarlier?.()}
          >
            {texts.earlier}
          </Button>
          <Button
            kind="quiet"
            disabled={onLater === null}
            aria-label={texts.named(texts.later, name)}
            onClick={() => onLater?.()}
          >
            {texts.later}
          </Button>
          <Button kind="quiet" aria-label={texts.named(texts.remove, name)} onClick={onRemove}>
            {texts.remove}
          </Button>
        </div>
      )}
    </section>
  );
}

/** What will be printed as it was written, and why. */
export function LooseReferences({ loose }: { loose: readonly LooseReference[] }) {
  const texts = reportScreenTexts.loose;
  if (loose.length === 0) return null;
  return (
    <div className="loose-references" role="status">
      <p>{texts.head}</p>
      <ul>
        {loose.map(({ raw, reason }) => (
          <li key={raw}>{texts[reason](raw)}</li>
        ))}
      </ul>
    </div>
  );
}
