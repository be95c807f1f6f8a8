/** A form line that is picked from a list: the phone's own list, so that nothing has to be typed. */
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { FieldNotes } from './field';
import styles from './field.module.css';

export type SelectOption<V extends string> = {
  readonly value: V;
  readonly label: string;
  readonly disabled?: boolean | undefined;
};

export type SelectFieldProps<V extends string> = {
  readonly label: string;
  readonly value: V | undefined;
  readonly options: readonly SelectOption<V>[];
  readonly onChoose: (value: V) => void;
  /** Words of the empty first line, shown until something is chosen, e.g. "Choose". */
  readonly none?: string | undefined;
  readonly second?: ComponentChildren;
  readonly hint?: ComponentChildren;
  readonly error?: ComponentChildren;
  readonly required?: boolean | undefined;
  readonly disabled?: boolean | undefined;
};

export function SelectField<V extends string>(props: SelectFieldProps<V>) {
  const id = useId();
  return (
    <div class={styles.field}>
      <div class={`${styles.line} ${styles.stacked} ${props.error ? styles.wrong : ''}`}>
        <div class={styles.words}>
          <label class={styles.label} for={id}>
            {props.label}
          </label>
          {props.second !== undefined && <div class={styles.evidence}>{props.second}</div>}
        </div>
        <select
          id={id}
          class={styles.choice}
          value={props.value ?? ''}
          required={props.required}
          disabled={props.disabled}
          aria-invalid={props.error ? 'true' : undefined}
          aria-describedby={
            [props.hint && `${id}-hint`, props.error && `${id}-error`].filter(Boolean).join(' ') || undefined
          }
          onChange={(event) => props.onChoose(event.currentTarget.value as V)}
        >
          {props.value === undefined && (
            <option value="" disabled>
              {props.none}
            </option>
          )}
          {props.options.map((option) => (
            <option key={option.value} value={option.value} disabled={option.disabled}>
              {option.label}
            </option>
          ))}
        </select>
      </div>
      <FieldNotes id={id} hint={props.hint} error={props.error} />
    </div>
  );
}
