import { useRef, useState } from 'react';
import type { TypedReading } from '#analysis/text/typed-reading.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { Button } from '../ui/button.tsx';
import { TextField } from '../ui/text-field.tsx';

const texts = claimTexts.typed;

/**
 * A line in which a number or a time is typed as it comes. Under it stands what was understood; where two things could
 * be meant it asks, and what cannot be read is said once the field is left.
 */
export function TypedField<Value>(props: {
  label: string;
  hint: string;
  value: string;
  reading: TypedReading<Value>;
  words: (value: Value) => string;
  onValue: (text: string) => void;
  onSettle: (value: Value) => void;
  onBlur?: () => void;
  /** What is wrong with it beyond its reading. */
  error?: string | undefined;
  required?: boolean;
  readOnly?: boolean;
}) {
  const { label, hint, value, reading, words, onSettle, error, required = false, readOnly = false } = props;
  const [writing, setWriting] = useState(false);
  const line = useRef<HTMLInputElement>(null);
  const reason = reading.kind === 'wrong' && !writing ? reading.reason : error;
  return (
    <div className="typed-field">
      <TextField
        ref={line}
        label={label}
        required={required}
        maxLength={80}
        readOnly={readOnly}
        value={value}
        error={reason}
        hint={
          <span aria-live="polite">
            {reading.kind === 'understood' ? texts.understood(words(reading.value)) : hint}
          </span>
        }
        onValue={(text) => {
          setWriting(true);
          props.onValue(text);
        }}
        onBlur={() => {
          setWriting(false);
          props.onBlur?.();
        }}
      />
      {reading.kind === 'ambiguous' && !readOnly ? (
        <div className="typed-question" role="group" aria-label={texts.question}>
          <p>{texts.question}</p>
          {reading.values.map((each) => (
            <Button
              key={words(each)}
              onClick={() => {
                onSettle(each);
                line.current?.focus();
              }}
            >
              {words(each)}
            </Button>
          ))}
        </div>
      ) : null}
    </div>
  );
}
