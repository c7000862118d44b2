import type { ComponentProps } from 'react';
import { classNames } from './class-names.ts';
import { Field, type FieldFrame } from './field.tsx';

type Framed<Element extends 'input' | 'textarea'> = FieldFrame &
  Omit<ComponentProps<Element>, keyof FieldFrame | 'id' | 'onChange' | 'value'> & {
    value: string;
    onValue: (value: string) => void;
    /** Class of the control itself; `className` is the field's. */
    controlClassName?: string | undefined;
  };

export type TextFieldProps = Framed<'input'>;
export type TextAreaProps = Framed<'textarea'>;

/** One line of text. */
export function TextField(props: TextFieldProps) {
  const { label, hint, error, required, labelHidden, className, controlClassName, onValue, ...rest } = props;
  return (
    <Field {...{ label, hint, error, required, labelHidden, className }}>
      {(wiring) => (
        <input
          type="text"
          autoComplete="off"
          {...rest}
          {...wiring}
          className={classNames('control', controlClassName)}
          onChange={(event) => onValue(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}

/** Several lines of text; grows with what is written. */
export function TextArea(props: TextAreaProps) {
  const { label, hint, error, required, labelHidden, className, controlClassName, onValue, ...rest } = props;
  return (
    <Field {...{ label, hint, error, required, labelHidden, className }}>
      {(wiring) => (
        <textarea
          rows={3}
          {...rest}
          {...wiring}
          className={classNames('control', 'control-area', controlClassName)}
          onChange={(event) => onValue(event.currentTarget.value)}
        />
      )}
    </Field>
  );
}
