/** A limit of a range: it may stay empty, and may lie below nothing, as in a cold store. */

import { readSigned } from '../../safety/judge-answer';
import type { FieldRead, Typed } from '../form';
import { NumberField } from '../number-field';
import { numberFault } from '../words';

/** Digits as a limit keeps them, empty where there is none. */
export function readLimit(field: Typed): FieldRead<string> {
  if (field.typed.trim() === '') return { state: 'empty' };
  const read = readSigned(field.typed);
  return read.ok
    ? { state: 'written', written: { value: read.value, unit: field.unit } }
    : { state: 'wrong', fault: numberFault(read.failure) };
}

/** A range as it is written; a limit that is not there has no key. Null while a number is wrong. */
export function limitsRead(low: Typed, high: Typed): { readonly min?: string; readonly max?: string } | null {
  const [min, max] = [readLimit(low), readLimit(high)];
  if (min.state === 'wrong' || max.state === 'wrong') return null;
  return {
    ...(min.state === 'written' ? { min: min.written.value } : {}),
    ...(max.state === 'written' ? { max: max.written.value } : {}),
  };
}

export const LimitField = (props: {
  readonly label: string;
  readonly field: Typed;
  readonly onChange: (field: Typed) => void;
  readonly hint?: string | undefined;
  readonly tried: boolean;
}) => (
  <NumberField
    label={props.label}
    field={props.field}
    onChange={props.onChange}
    read={readLimit(props.field)}
    tried={props.tried}
    units={[props.field.unit]}
    hint={props.hint}
    optional
  />
);
