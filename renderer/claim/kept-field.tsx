/** Controls over the field keeper: what is typed or chosen goes to it, and it says what is shown. */
import { Select, type Choice } from '../ui/select.tsx';
import { TextArea, TextField, type TextAreaProps, type TextFieldProps } from '../ui/text-field.tsx';
import type { FieldName } from './case-field.ts';
import type { FieldKeeper, KeeperView } from './field-keeper.ts';
import { TypedField } from './typed-field.tsx';
import type { TypedName, TypedValue } from './service-text.ts';

export type Kept = { readonly keeper: FieldKeeper; readonly view: KeeperView; readonly closed: boolean };

type Owned = 'value' | 'onValue' | 'onBlur' | 'readOnly' | 'name';

export function KeptLine({
  kept,
  name,
  ...rest
}: { kept: Kept; name: FieldName } & Omit<TextFieldProps, Owned>) {
  return <TextField {...rest} {...wiring(kept, name)} readOnly={kept.closed} />;
}

export function KeptArea({
  kept,
  name,
  ...rest
}: { kept: Kept; name: FieldName } & Omit<TextAreaProps, Owned>) {
  return <TextArea maxLength={20_000} {...rest} {...wiring(kept, name)} readOnly={kept.closed} />;
}

export function KeptChoice<Value extends string>(props: {
  kept: Kept;
  name: FieldName;
  label: string;
  hint?: string;
  choices: readonly Choice<Value>[];
  emptyChoice?: string;
  disabled?: boolean;
}) {
  const { kept, name, disabled = false, ...rest } = props;
  return (
    <Select<Value>
      {...rest}
      disabled={kept.closed || disabled}
      value={kept.view.values[name] as Value | ''}
      onValue={(value) => void kept.keeper.choose(name, value)}
      onBlur={() => void kept.keeper.leave(name)}
    />
  );
}

/** Choices of a list of words. */
export function choicesOf<Value extends string>(words: Readonly<Record<Value, string>>): Choice<Value>[] {
  return (Object.keys(words) as Value[]).map((value) => ({ value, label: words[value] }));
}

export function KeptTyped<Name extends TypedName>(props: {
  kept: Kept;
  name: Name;
  label: string;
  hint: string;
  words: (value: TypedValue[Name]) => string;
}) {
  const { kept, name, label, hint, words } = props;
  return (
    <TypedField<TypedValue[Name]>
      label={label}
      hint={hint}
      words={words}
      reading={kept.view.readings[name]}
      readOnly={kept.closed}
      onSettle={(value) => void kept.keeper.settle(name, value)}
      {...wiring(kept, name)}
    />
  );
}

function wiring({ keeper, view }: Kept, name: FieldName) {
  return {
    value: view.values[name],
    onValue: (value: string) => keeper.edit(name, value),
    onBlur: () => void keeper.leave(name),
  };
}
