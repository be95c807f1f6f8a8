/** A form line for a number with its unit: the fault stands at the field as soon as the person has left it. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { afterTap } from '../ui/after-tap';
import { Field } from '../ui/field';
import { type FieldRead, faultOf, type Typed } from './form';
import { words } from './words';

type NumberFieldProps = {
  readonly label: string;
  readonly field: Typed;
  readonly onChange: (field: Typed) => void;
  readonly read: FieldRead<string>;
  /** The person has tried to go on: what is missing is said now. */
  readonly tried?: boolean;
  readonly units: readonly string[];
  readonly evidence?: ComponentChildren;
  /** Null: no hint, not even that it may stay empty. */
  readonly hint?: ComponentChildren;
  /** It may stay empty. */
  readonly optional?: boolean;
  readonly onBlur?: () => void;
};

/** "1,250" or "1.250" may be meant for a thousand: it is taken as written, and said so. */
const mayBeThousand = (typed: string): boolean => /^[1-9]\d{0,2}[.,]\d{3}$/.test(typed.trim());

export function NumberField(props: NumberFieldProps) {
  const { label, field, onChange, read, tried = false, units, evidence, hint, optional = false } = props;
  const [left, setLeft] = useState(false);
  const fault = faultOf(read, tried && !optional);
  const shown = left || tried ? fault : undefined;
  const doubt =
    read.state === 'written' && mayBeThousand(field.typed)
      ? words.number.readAs(field.typed.trim(), field.unit)
      : undefined;
  return (
    <Field
      label={label}
      value={field.typed}
      onInput={(typed) => onChange({ ...field, typed })}
      {...(units.length === 1 && units[0] === '1'
        ? {}
        : { unit: field.unit, units: units.map((unit) => ({ value: unit, label: unit })) })}
      onUnit={(unit) => onChange({ ...field, unit })}
      evidence={evidence}
      hint={doubt ?? (hint === undefined && optional ? words.optional : hint)}
      error={shown}
      onBlur={() => afterTap(() => setLeft(true))}
      required={!optional}
    />
  );
}
