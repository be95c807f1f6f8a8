/** The workshop's own number pad: 72 px keys for gloves, nothing but digits, the decimal sign and two acts. */
import type { ComponentChildren } from 'preact';
import styles from './pad.module.css';

export type PadProps = {
  /** What has been keyed so far. */
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onEnter: () => void;
  /** As the person writes it. */
  readonly decimalSign?: '.' | ',' | undefined;
  /** The digits of a PIN: no decimal sign, and a 0 in front is one of them. */
  readonly pin?: boolean | undefined;
  readonly enterLabel: ComponentChildren;
  readonly enterDisabled?: boolean | undefined;
  readonly clearLabel: string;
  /** Name of the decimal key for screen readers, e.g. "decimal point". */
  readonly decimalLabel?: string | undefined;
  /** Takes the last key back, e.g. "Back one digit". */
  readonly backLabel: string;
  /** Name of the whole pad, e.g. "Number pad". */
  readonly label: string;
  readonly maxLength?: number | undefined;
  /** Steps by one last digit, where a signed reading or a fine change is wanted. */
  readonly onStep?: ((direction: 1 | -1) => void) | undefined;
  readonly stepLabels?: { readonly up: string; readonly down: string } | undefined;
};

/**
 * What the text becomes when a key is pressed: one decimal sign, no leading zeros before a digit, at most `maxLength`.
 * @example keyed('0', '7', '.', 9) // '7'
 */
export function keyed(value: string, key: string, decimalSign: string, maxLength: number): string {
  if (key === decimalSign) return value.includes(decimalSign) ? value : `${value || '0'}${decimalSign}`;
  if (value.length >= maxLength) return value;
  return value === '0' ? key : value + key;
}

const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;

export function Pad(props: PadProps) {
  const sign = props.decimalSign ?? '.';
  const most = props.maxLength ?? 9;
  const press = (key: string) =>
    props.onChange(props.pin ? (props.value + key).slice(0, most) : keyed(props.value, key, sign, most));
  const key = (label: ComponentChildren, onTap: () => void, area: string, name?: string) => (
    <button type="button" class={`${styles.key} ${styles[area]}`} aria-label={name} onClick={onTap}>
      {label}
    </button>
  );
  return (
    <fieldset class={`${styles.pad} ${props.onStep ? styles.steps : ''}`} aria-label={props.label}>
      {digits.map((digit) => (
        <button type="button" class={styles.key} key={digit} onClick={() => press(digit)}>
          {digit}
        </button>
      ))}
      {!props.pin && key(sign, () => press(sign), 'sign', props.decimalLabel)}
      {key('0', () => press('0'), 'zero')}
      {key(props.clearLabel, () => props.onChange(''), 'clear')}
      {key('⌫', () => props.onChange(props.value.slice(0, -1)), 'back', props.backLabel)}
      {props.onStep && key('+', () => props.onStep?.(1), 'up', props.stepLabels?.up)}
      {props.onStep && key('−', () => props.onStep?.(-1), 'down', props.stepLabels?.down)}
      <button
        type="button"
        class={`${styles.key} ${styles.enter}`}
        disabled={props.enterDisabled}
        onClick={props.onEnter}
      >
        {props.enterLabel}
      </button>
    </fieldset>
  );
}
