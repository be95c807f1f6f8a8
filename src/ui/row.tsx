/** Rows: mark in the left margin, text from x 64, figure at the right. The hairline between two starts at the text. */
import type { ComponentChildren } from 'preact';
import styles from './row.module.css';

/** The list around rows. @param label names it for screen readers where no heading does */
export const Rows = ({
  children,
  label,
  long,
}: {
  readonly children: ComponentChildren;
  readonly label?: string | undefined;
  /** So many that only those in view are laid out. */
  readonly long?: boolean;
}) => (
  <ul class={long ? `${styles.rows} ${styles.long}` : styles.rows} aria-label={label}>
    {children}
  </ul>
);

export type RowProps = {
  readonly title: ComponentChildren;
  readonly second?: ComponentChildren;
  /** A `<Mark>`; with none the text starts at the page margin, unless `start` says otherwise. */
  readonly mark?: ComponentChildren;
  /** Instead of a mark: something wider, such as a date or a drawn vessel. */
  readonly lead?: ComponentChildren;
  /** Right side: a `<FigureValue>` or a few words. */
  readonly figure?: ComponentChildren;
  /** Marks the title through, for what is wrong. */
  readonly marked?: boolean | undefined;
  readonly href?: string | undefined;
  /** With `href`: told beside it. */
  readonly onTap?: (() => void) | undefined;
  /** Draws = at the right: the figure was worked out, and the row opens its working. */
  readonly equals?: boolean | undefined;
  readonly start?: 'margin' | 'text' | undefined;
  /** More controls under the text, outside the link. */
  readonly below?: ComponentChildren;
};

const columnOf = ({ mark, lead, start }: RowProps): string | undefined => {
  if (typeof lead === 'string') return `${styles.withLead} ${styles.withDay}`;
  if (lead !== undefined) return styles.withLead;
  if (mark !== undefined || start === 'text') return styles.withMark;
  return styles.bare;
};

const Body = (props: RowProps) => (
  <>
    <span class={styles.mark}>{props.lead ?? props.mark}</span>
    <span class={styles.text}>
      <span class={styles.title}>{props.marked ? <mark>{props.title}</mark> : props.title}</span>
      {props.second !== undefined && <span class={styles.second}>{props.second}</span>}
    </span>
    {props.figure !== undefined && <span class={styles.figure}>{props.figure}</span>}
    {props.equals && (
      <span class={styles.equals} aria-hidden="true">
        =
      </span>
    )}
  </>
);

/** One row. With `href` or `onTap` the whole row is the target. */
export function Row(props: RowProps) {
  const look = `${styles.body} ${columnOf(props)}`;
  return (
    <li class={`${styles.row} ${columnOf(props)}`}>
      {props.href !== undefined ? (
        <a class={look} href={props.href} onClick={props.onTap}>
          <Body {...props} />
        </a>
      ) : props.onTap ? (
        <button type="button" class={look} onClick={props.onTap}>
          <Body {...props} />
        </button>
      ) : (
        <div class={look}>
          <Body {...props} />
        </div>
      )}
      {props.below !== undefined && <div class={styles.below}>{props.below}</div>}
    </li>
  );
}
