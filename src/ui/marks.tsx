/**
 * The marks, nine of states and seven of a container's life: a state has a word, a shape and a place. Beside its own words a mark is decoration; where it stands
 * alone, give it a `word`, which screen readers then hear.
 */
import type { ComponentChildren } from 'preact';
import { octagon, seal, wedge } from './mark-shapes';
import styles from './marks.module.css';

export type MarkKind =
  | 'stop'
  | 'wrong'
  | 'due'
  | 'overdue'
  | 'unknown'
  | 'candidate'
  | 'confirmed'
  | 'refused'
  | 'clearance'
  | LifeMark;

/** Where a container is in its life; one that is in use has no mark. */
export type LifeMark = 'full' | 'closed' | 'held' | 'leaving' | 'gone' | 'emptied' | 'damaged';

export type MarkProps = {
  readonly kind: MarkKind;
  /** Only for `due`: share of the time that is left, 0 to 1. */
  readonly share?: number | undefined;
  /** Given only when no word stands beside the mark. */
  readonly word?: string | undefined;
  /** Side in px; 36 in the left margin. */
  readonly sizePx?: number | undefined;
};

const drawings: Readonly<Record<MarkKind, (share: number) => ComponentChildren>> = {
  stop: () => (
    <>
      <path d={octagon(17)} class={styles.stopEdge} />
      <path d={octagon(14.2)} class={styles.stopFill} />
      <path d="M9 15h18v6H9z" class={styles.paper} />
    </>
  ),
  wrong: () => (
    <>
      <path d="M18 3.4 34 32H2Z" class={styles.wrong} />
      <path d="M16.2 12.4h3.6v9h-3.6z" class={styles.onMarker} />
      <circle cx="18" cy="26" r="2.2" class={styles.onMarker} />
    </>
  ),
  due: (share) => (
    <>
      <circle cx="18" cy="18" r="15.6" class={styles.line} />
      <path d={wedge(share, 11)} class={styles.ink} />
    </>
  ),
  overdue: () => (
    <>
      <circle cx="18" cy="18" r="17" class={styles.ink} />
      <path d="M18 7v12l7.5 5.2" class={styles.hands} />
    </>
  ),
  unknown: () => (
    <>
      <circle cx="18" cy="18" r="15.6" class={styles.dashed} />
      <path
        d="M12.6 14.6c0-3.4 2.4-5.5 5.7-5.5 3.2 0 5.4 1.8 5.4 4.7 0 4-4.9 4.4-4.9 8"
        class={styles.question}
      />
      <circle cx="18.8" cy="26" r="2.1" class={styles.ink} />
    </>
  ),
  candidate: () => (
    <>
      <path d={seal(13.4)} class={styles.line} />
      <circle cx="11.6" cy="18" r="2.2" class={styles.ink} />
      <circle cx="18" cy="18" r="2.2" class={styles.ink} />
      <circle cx="24.4" cy="18" r="2.2" class={styles.ink} />
    </>
  ),
  confirmed: () => (
    <>
      <path d={seal(14.2)} class={styles.ink} />
      <path d="m10.6 18.6 5.2 5.2 9.8-11" class={styles.check} />
    </>
  ),
  refused: () => (
    <>
      <path d={seal(13.4)} class={styles.line} />
      <path d="M10.4 18h15.2" class={styles.line} />
    </>
  ),
  clearance: () => (
    <>
      <path d="M10.4 3h23v30h-23L2.6 25V11Z" class={styles.line} />
      <circle cx="11.6" cy="18" r="3.4" class={styles.ink} />
    </>
  ),
  full: () => (
    <>
      <path d="M6 4v29h24V4" class={styles.line} />
      <path d="M10 9h16v20H10z" class={styles.ink} />
    </>
  ),
  closed: () => (
    <>
      <path d="M6 13h24v20H6z" class={styles.line} />
      <path d="M10.5 2.5h15v8h-15z" class={styles.ink} />
    </>
  ),
  held: () => (
    <>
      <path d="M4 4h28v28H4z" class={styles.line} />
      <path d="M11.5 11h4.5v14h-4.5zM20 11h4.5v14H20z" class={styles.ink} />
    </>
  ),
  leaving: () => (
    <>
      <path d="M19 4h13v28H19" class={styles.line} />
      <path d="M2 15.4h12V9.6L24 18l-10 8.4v-5.8H2z" class={styles.ink} />
    </>
  ),
  gone: () => (
    <>
      <path d="M4 6h18v24H4z" class={styles.dashed} />
      <path d="M12 15.4h12V9.6L34 18l-10 8.4v-5.8H12z" class={styles.ink} />
    </>
  ),
  emptied: () => (
    <>
      <path d="M6 4v29h24V4" class={styles.line} />
      <path d="M12 27h12" class={styles.line} />
    </>
  ),
  damaged: () => (
    <>
      <path d="M6 4v29h24V4" class={styles.line} />
      <path d="M19 4l-5 9 8 5-7 8 3 7" class={styles.line} />
    </>
  ),
};

/** A state's mark. @example <Mark kind="due" share={0.3} word="due in 8 min" /> */
export const Mark = ({ kind, share = 0.25, word, sizePx = 36 }: MarkProps) => (
  <svg
    class={styles.mark}
    width={sizePx}
    height={sizePx}
    viewBox="0 0 36 36"
    role={word === undefined ? undefined : 'img'}
    aria-label={word}
    aria-hidden={word === undefined ? 'true' : undefined}
  >
    {drawings[kind](share)}
  </svg>
);
