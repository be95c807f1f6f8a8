/** A question with big answers. Boxes are square and all look alike until one is given: none looks right or wrong. */
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import styles from './choices.module.css';

export type Choice<V extends string> = {
  readonly value: V;
  readonly label: ComponentChildren;
  readonly second?: ComponentChildren;
  readonly disabled?: boolean | undefined;
};

export type ChoicesProps<V extends string> = {
  readonly legend: ComponentChildren;
  /** Hidden to the eye only where the page's title asks the question. */
  readonly legendHidden?: boolean | undefined;
  readonly choices: readonly Choice<V>[];
  readonly value: V | undefined;
  readonly onChoose: (value: V) => void;
  readonly hint?: ComponentChildren;
  readonly error?: ComponentChildren;
};

/** One of several: a radio group; arrow keys move inside it. */
export function Choices<V extends string>(props: ChoicesProps<V>) {
  const id = useId();
  const described = [props.hint && `${id}-hint`, props.error && `${id}-error`].filter(Boolean).join(' ');
  return (
    <fieldset
      class={styles.group}
      data-wrong={props.error ? 'true' : undefined}
      aria-describedby={described || undefined}
    >
      <legend class={props.legendHidden ? 'visually-hidden' : styles.legend}>{props.legend}</legend>
      {props.hint && (
        <p id={`${id}-hint`} class={styles.hint}>
          {props.hint}
        </p>
      )}
      {props.choices.map((choice) => (
        <label class={styles.choice} key={choice.value}>
          <input
            type="radio"
            name={id}
            value={choice.value}
            checked={choice.value === props.value}
            disabled={choice.disabled}
            onChange={() => props.onChoose(choice.value)}
          />
          <span class={styles.box} aria-hidden="true" />
          <span>
            {choice.label}
            {choice.second !== undefined && <span class={styles.second}>{choice.second}</span>}
          </span>
        </label>
      ))}
      {props.error && (
        <p id={`${id}-error`} class={styles.error}>
          {props.error}
        </p>
      )}
    </fieldset>
  );
}

export type TickProps = {
  readonly label: ComponentChildren;
  readonly second?: ComponentChildren;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly disabled?: boolean | undefined;
};

/** One box to tick, in the same dress; several of them under a legend make "any of these". */
export const Tick = ({ label, second, checked, onChange, disabled }: TickProps) => (
  <label class={styles.choice}>
    <input
      type="checkbox"
      checked={checked}
      disabled={disabled}
      onChange={(event) => onChange(event.currentTarget.checked)}
    />
    <span class={styles.box} aria-hidden="true" />
    <span>
      {label}
      {second !== undefined && <span class={styles.second}>{second}</span>}
    </span>
  </label>
);

export type TickGroupProps = {
  readonly legend: ComponentChildren;
  readonly hint?: ComponentChildren;
  readonly error?: ComponentChildren;
  readonly children: ComponentChildren;
};

/** Any of several: boxes to tick under one question. */
export function TickGroup({ legend, hint, error, children }: TickGroupProps) {
  const id = useId();
  const described = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ');
  return (
    <fieldset
      class={styles.group}
      data-wrong={error ? 'true' : undefined}
      aria-describedby={described || undefined}
    >
      <legend class={styles.legend}>{legend}</legend>
      {hint && (
        <p id={`${id}-hint`} class={styles.hint}>
          {hint}
        </p>
      )}
      {children}
      {error && (
        <p id={`${id}-error`} class={styles.error}>
          {error}
        </p>
      )}
    </fieldset>
  );
}
