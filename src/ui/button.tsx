/** Buttons: the one primary ink block of a screen, outlined doors below it, and plain ones. */
import type { ComponentChildren } from 'preact';
import styles from './button.module.css';

export type ButtonProps = {
  readonly children: ComponentChildren;
  /** Second line in smaller type. */
  readonly second?: ComponentChildren;
  readonly look?: 'primary' | 'door' | 'plain' | 'call' | undefined;
  /** Serif for the act that begins something; sans for answers and doors. */
  readonly voice?: 'serif' | 'sans' | undefined;
  readonly href?: string | undefined;
  /** The link saves a file under this name instead of going somewhere. */
  readonly download?: string | undefined;
  /** The link opens beside the app. */
  readonly beside?: boolean | undefined;
  /** With `href`: told beside it. */
  readonly onTap?: (() => void) | undefined;
  readonly type?: 'button' | 'submit' | undefined;
  readonly disabled?: boolean | undefined;
  readonly centred?: boolean | undefined;
  /** Element that says why it is disabled or what it will do. */
  readonly describedBy?: string | undefined;
};

/** A button, or a link that looks like one when `href` is given. */
export function Button(props: ButtonProps) {
  const look = [
    styles.button,
    styles[props.look ?? 'door'],
    props.voice === 'serif' && styles.serif,
    props.centred && styles.centred,
  ]
    .filter(Boolean)
    .join(' ');
  const words = (
    <>
      <span class={styles.label}>{props.children}</span>
      {props.second !== undefined && <span class={styles.second}>{props.second}</span>}
    </>
  );
  return props.href !== undefined && !props.disabled ? (
    <a
      class={look}
      href={props.href}
      download={props.download}
      target={props.beside ? '_blank' : undefined}
      rel={props.beside ? 'noopener noreferrer' : undefined}
      aria-describedby={props.describedBy}
      onClick={props.onTap}
    >
      {words}
    </a>
  ) : (
    <button
      class={look}
      type={props.type ?? 'button'}
      onClick={props.onTap}
      disabled={props.disabled}
      aria-describedby={props.describedBy}
    >
      {words}
    </button>
  );
}

/** Buttons under each other, or side by side where they fit with their words whole. */
export const Buttons = ({
  children,
  side = false,
}: {
  readonly children: ComponentChildren;
  readonly side?: boolean;
}) => <div class={side ? styles.side : styles.stack}>{children}</div>;
