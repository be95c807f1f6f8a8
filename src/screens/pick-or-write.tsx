/** Something that is mostly one of a few, and now and then another: picked, or written when it is none of them. */
import { useState } from 'preact/hooks';
import { SelectField } from '../ui/select-field';
import { TextField } from '../ui/text-field';
import { words } from './words';

type Props = {
  readonly label: string;
  readonly value: string;
  readonly onInput: (value: string) => void;
  /** What it mostly is; with none of them it is written. */
  readonly known: readonly string[];
  /** It may stay empty. */
  readonly optional?: boolean;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly maxLength?: number;
};

/** Names are trimmed: none begins so. */
const another = ' another';
const none = ' none';

export function PickOrWrite(props: Props) {
  const { label, value, onInput, known, optional = false, hint, error, maxLength = 120 } = props;
  const names = [...new Set(known.map((name) => name.trim()).filter((name) => name !== ''))];
  const [writing, setWriting] = useState(value !== '' && !names.includes(value));
  const written = (
    <TextField
      label={names.length === 0 ? label : words.pick.write(label)}
      value={value}
      onInput={onInput}
      maxLength={maxLength}
      hint={hint ?? (optional ? words.optional : undefined)}
      error={error}
      required={!optional}
    />
  );
  if (names.length === 0) return written;
  return (
    <>
      <SelectField
        label={label}
        value={writing ? another : value === '' ? (optional ? none : undefined) : value}
        none={words.choose}
        options={[
          ...(optional ? [{ value: none, label: words.pick.none }] : []),
          ...names.map((name) => ({ value: name, label: name })),
          { value: another, label: words.pick.another },
        ]}
        onChoose={(chosen) => {
          setWriting(chosen === another);
          onInput(chosen === another || chosen === none ? '' : chosen);
        }}
        hint={writing ? undefined : hint}
        error={writing || error === undefined ? undefined : words.choice.missing}
      />
      {writing && written}
    </>
  );
}
