/** The one red page: STOP, what and why, then the doors. The last door lets the truth be written down. */
import type { ComponentChildren } from 'preact';
import { octagon } from './mark-shapes';
import { Page } from './page';
import styles from './stop-page.module.css';
import type { TopLineProps } from './top-line';

export type StopPageProps = {
  /** Says what is wrong, with its figure, e.g. "Paper filter, acid 1.3 mol/L." */
  readonly title: ComponentChildren;
  readonly why: ComponentChildren;
  /** Heading over the doors, e.g. "What makes it right". */
  readonly doorsTitle: string;
  /** `<Button>`s, the primary first. */
  readonly doors: ComponentChildren;
  readonly bar: ComponentChildren;
  /** The word in the octagon. */
  readonly word?: string | undefined;
  readonly top?: TopLineProps | undefined;
  readonly focusKey?: string | undefined;
};

export const StopPage = (props: StopPageProps) => (
  <Page
    tone="stop"
    top={props.top}
    title={props.title}
    focusKey={props.focusKey}
    bar={props.bar}
    above={
      <div class={styles.sign}>
        <svg viewBox="0 0 36 36" aria-hidden="true">
          <path d={octagon(17.6)} class={styles.edge} />
          <path d={octagon(15.4)} class={styles.ground} />
        </svg>
        <span class={styles.word}>{props.word ?? 'STOP'}</span>
      </div>
    }
    second={<span class={styles.why}>{props.why}</span>}
  >
    <section class={styles.doors}>
      <h2>{props.doorsTitle}</h2>
      {props.doors}
    </section>
  </Page>
);
