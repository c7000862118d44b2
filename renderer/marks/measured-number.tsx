/** A number of a scale, typed as it comes and kept when the field is left or Enter is pressed. */
import { useEffect, useRef, useState } from 'react';
import { readNumber, writeNumber } from '#analysis/text/typed-number.ts';
import { keptWithin } from '#analysis/text/typed-reading.ts';
import { TypedField } from '../claim/typed-field.tsx';
import { decimalSign, numberText } from '../ui/number-words.ts';

const mostDecimals = 4;

export function MeasuredNumber(props: {
  label: string;
  hint: string;
  /** Null where none was entered. */
  value: number | null;
  readOnly: boolean;
  /** Why a number that can be read will not do; null where it will. */
  fault: (value: number) => string | null;
  onNumber: (value: number) => void;
  /** Enter was pressed and the number is kept. */
  onDone?: () => void;
  /** The keyboard goes here when it appears. */
  autoFocus?: boolean;
}) {
  const { label, hint, value, readOnly, fault, onNumber, autoFocus = false } = props;
  const kept = value === null ? '' : writeNumber(value, decimalSign);
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? kept;
  const reading = keptWithin(readNumber(text), fault);
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!autoFocus) return;
    // A press on the photo gives the photo the keyboard once its handlers have run: this comes after.
    const next = requestAnimationFrame(() => frame.current?.querySelector('input')?.focus());
    return () => cancelAnimationFrame(next);
  }, [autoFocus]);
  const settle = (number: number) => {
    setTyped(null);
    if (number !== value) onNumber(number);
  };
  const leave = () => {
    if (typed !== null && reading.kind === 'understood') settle(reading.value);
  };
  return (
    <div
      ref={frame}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || reading.kind !== 'understood') return;
        leave();
        props.onDone?.();
      }}
    >
      <TypedField
        label={label}
        hint={hint}
        value={text}
        reading={reading}
        words={(number) => numberText(number, decimalsOf(number))}
        readOnly={readOnly}
        onValue={setTyped}
        onSettle={settle}
        onBlur={leave}
      />
    </div>
  );
}

function decimalsOf(value: number): number {
  return Math.min(mostDecimals, value.toString().split('.')[1]?.length ?? 0);
}
