import type { ComponentProps } from 'react';
import { classNames } from './class-names.ts';
import { Field, type FieldFrame } from './field.tsx';

export type Choice<Value extends string> = {
  readonly value: Value;
  readonly label: string;
  readonly disabled?: boolean;
};

export type SelectProps<Value extends string> = FieldFrame &
  Omit<ComponentProps<'select'>, keyof FieldFrame | 'id' | 'onChange' | 'value' | 'multiple'> & {
    /** The empty string stands for "nothing chosen". */
    value: Value | '';
    choices: readonly Choice<Value>[];
    /** Words of the choice that means nothing; without it there is no such choice. */
    emptyChoice?: string | undefined;
    onValue: (value: Value | '') => void;
    controlClassName?: string | undefined;
  };

/** One of a list, with the browser's own list box: it works with every keyboard and screen reader. */
export function Select<Value extends string>(props: SelectProps<Value>) {
  const { label, hint, error, required, labelHidden, className, controlClassName, ...others } = props;
  const { value, choices, emptyChoice, onValue, ...rest } = others;
  return (
    <Field {...{ label, hint, error, required, labelHidden, className }}>
      {(wiring) => (
        <select
          {...rest}
          {...wiring}
          className={classNames('control', 'control-select', controlClassName)}
          value={value}
          onChange={(event) => onValue(event.currentTarget.value as Value | '')}
        >
          {emptyChoice === undefined ? null : <option value="">{emptyChoice}</option>}
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value} disabled={choice.disabled}>
              {choice.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
