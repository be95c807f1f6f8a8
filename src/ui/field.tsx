/** A line of a form for one number: label, how it is known, the figure at the right, its unit. Lines, not boxes. */
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import styles from './field.module.css';

export type UnitChoice = { readonly value: string; readonly label: string };

export type FieldProps = {
  readonly label: string;
  /** As typed; the screen reads it, not this component. */
  readonly value: string;
  readonly onInput: (typed: string) => void;
  /** A fixed unit, or several to choose from. */
  readonly unit?: string | undefined;
  readonly units?: readonly UnitChoice[] | undefined;
  readonly onUnit?: ((unit: string) => void) | undefined;
  /** Second line under the label: how the value is known; may be a control. */
  readonly evidence?: ComponentChildren;
  readonly hint?: ComponentChildren;
  readonly error?: ComponentChildren;
  readonly required?: boolean | undefined;
  readonly disabled?: boolean | undefined;
  readonly onBlur?: (() => void) | undefined;
};

const Unit = ({ label, unit, units, onUnit, disabled }: FieldProps) =>
  units && units.length > 1 ? (
    <select
      class={styles.unitChoice}
      aria-label={`${label}, unit`}
      value={unit}
      disabled={disabled}
      onChange={(event) => onUnit?.(event.currentTarget.value)}
    >
      {units.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ))}
    </select>
  ) : (
    <span class={styles.unit}>{unit ?? units?.[0]?.label}</span>
  );

export function Field(props: FieldProps) {
  const id = useId();
  const hasUnit = props.unit !== undefined || props.units !== undefined;
  const single = (props.units?.length ?? 0) < 2;
  const described = [
    hasUnit && single && `${id}-unit`,
    props.hint && `${id}-hint`,
    props.error && `${id}-error`,
  ].filter(Boolean);
  return (
    <div class={styles.field}>
      <div class={`${styles.line} ${props.error ? styles.wrong : ''}`}>
        <div class={styles.words}>
          <label class={styles.label} for={id}>
            {props.label}
          </label>
          {props.evidence !== undefined && <div class={styles.evidence}>{props.evidence}</div>}
        </div>
        <div class={styles.entry}>
          <input
            id={id}
            class={styles.input}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            enterKeyHint="next"
            value={props.value}
            required={props.required}
            disabled={props.disabled}
            aria-invalid={props.error ? 'true' : undefined}
            aria-describedby={described.join(' ') || undefined}
            onInput={(event) => props.onInput(event.currentTarget.value)}
            onBlur={props.onBlur}
          />
          {hasUnit && (
            <span id={single ? `${id}-unit` : undefined}>
              <Unit {...props} />
            </span>
          )}
        </div>
      </div>
      <FieldNotes id={id} hint={props.hint} error={props.error} />
    </div>
  );
}

/** Hint and error under a line, with the identifiers that the input's `aria-describedby` names. */
export const FieldNotes = ({
  id,
  hint,
  error,
}: {
  readonly id: string;
  readonly hint?: ComponentChildren;
  readonly error?: ComponentChildren;
}) => (
  <>
    {hint && (
      <p id={`${id}-hint`} class={styles.hint}>
        {hint}
      </p>
    )}
    {error && (
      <p id={`${id}-error`} class={styles.error}>
        {error}
      </p>
    )}
  </>
);
