import { useId, type ReactNode } from 'react';
import { commonTexts } from '#shared-types/texts/common.ts';
import { classNames } from './class-names.ts';

/** What the control inside a field takes over, so that its label, hint and error belong to it. */
export type FieldWiring = {
  id: string;
  'aria-describedby': string | undefined;
  'aria-invalid': true | undefined;
  'aria-required': true | undefined;
};

export type FieldFrame = {
  label: ReactNode;
  /** Stands under the label: why it matters, or how to write it. */
  hint?: ReactNode;
  /** What is wrong and what to do; its presence marks the control as invalid. */
  error?: ReactNode;
  required?: boolean | undefined;
  /** The label is read out but not shown: for a box that says itself what it is. */
  labelHidden?: boolean | undefined;
  className?: string | undefined;
};

export function Field({
  label,
  hint,
  error,
  required = false,
  labelHidden = false,
  className,
  children,
}: FieldFrame & { children: (wiring: FieldWiring) => ReactNode }) {
  const id = useId();
  const hasHint = hint !== undefined && hint !== null;
  const hasError = error !== undefined && error !== null && error !== '';
  const describedBy = [hasHint ? `${id}-hint` : '', hasError ? `${id}-error` : ''].filter(Boolean).join(' ');
  return (
    <div className={classNames('field', hasError && 'field-wrong', className)}>
      <label className={labelHidden ? 'only-read-out' : 'field-label'} htmlFor={id}>
        {label}
        {required ? <span className="field-required"> {commonTexts.required}</span> : null}
      </label>
      {children({
        id,
        'aria-describedby': describedBy === '' ? undefined : describedBy,
        'aria-invalid': hasError || undefined,
        'aria-required': required || undefined,
      })}
      {hasHint ? (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      {hasError ? (
        <p className="field-error" id={`${id}-error`} role="alert">
          {error}
        </p>
      ) : null}
    </div>
  );
}
