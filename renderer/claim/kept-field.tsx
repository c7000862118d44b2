/** Controls over the field keeper: what is typed goes to it, and it says what is shown. */
import { Select } from '../ui/select.tsx';
import { TextArea, TextField, type TextAreaProps, type TextFieldProps } from '../ui/text-field.tsx';
import type { FieldName } from './case-field.ts';
import type { FieldKeeper, KeeperView } from './field-keeper.ts';

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
  words: Readonly<Record<Value, string>>;
}) {
  const { kept, name, label, hint, words } = props;
  const { value, onValue, onBlur } = wiring(kept, name);
  return (
    <Select<Value>
      label={label}
      hint={hint}
      disabled={kept.closed}
      value={value as Value}
      choices={(Object.keys(words) as Value[]).map((one) => ({ value: one, label: words[one] }))}
      onValue={onValue}
      onBlur={onBlur}
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
