/** A form line for words: one line, a telephone number, a date or time, or several lines. */
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { FieldNotes } from './field';
import styles from './field.module.css';

export type TextFieldProps = {
  readonly label: string;
  readonly value: string;
  readonly onInput: (typed: string) => void;
  /** `lines` gives room for several; the others choose the phone's keyboard. */
  readonly kind?:
    | 'text'
    | 'tel'
    | 'email'
    | 'date'
    | 'time'
    | 'datetime-local'
    | 'password'
    | 'pin'
    | 'lines'
    | undefined;
  readonly rows?: number | undefined;
  readonly second?: ComponentChildren;
  readonly hint?: ComponentChildren;
  readonly error?: ComponentChildren;
  readonly required?: boolean | undefined;
  readonly disabled?: boolean | undefined;
  /** An HTML autocomplete token such as "name" or "tel". */
  readonly autoComplete?: string | undefined;
  readonly maxLength?: number | undefined;
  readonly onBlur?:
    | ((event: { readonly currentTarget: HTMLInputElement | HTMLTextAreaElement }) => void)
    | undefined;
};

export function TextField(props: TextFieldProps) {
  const id = useId();
  const kind = props.kind ?? 'text';
  // A password that is shown is a text to the browser: it would put capitals into it, and ask its maker how it is spelt.
  const isSecret = props.autoComplete?.endsWith('password');
  const shared = {
    id,
    class: `${styles.input} ${styles.text}`,
    value: props.value,
    required: props.required,
    disabled: props.disabled,
    maxLength: props.maxLength,
    autoComplete: props.autoComplete ?? 'off',
    ...(isSecret && ({ autoCapitalize: 'none', autoCorrect: 'off', spellCheck: 'false' } as const)),
    'aria-invalid': props.error ? ('true' as const) : undefined,
    'aria-describedby':
      [props.hint && `${id}-hint`, props.error && `${id}-error`].filter(Boolean).join(' ') || undefined,
    onBlur: props.onBlur,
  };
  return (
    <div class={styles.field}>
      <div class={`${styles.line} ${styles.stacked} ${props.error ? styles.wrong : ''}`}>
        <div class={styles.words}>
          <label class={styles.label} for={id}>
            {props.label}
          </label>
          {props.second !== undefined && <div class={styles.evidence}>{props.second}</div>}
        </div>
        {kind === 'lines' ? (
          <textarea
            {...shared}
            rows={props.rows ?? 3}
            onInput={(event) => props.onInput(event.currentTarget.value)}
          />
        ) : (
          <input
            {...shared}
            type={(kind === 'pin' ? 'password' : kind) as 'text'}
            inputMode={kind === 'pin' ? 'numeric' : undefined}
            onInput={(event) => props.onInput(event.currentTarget.value)}
          />
        )}
      </div>
      <FieldNotes id={id} hint={props.hint} error={props.error} />
    </div>
  );
}
