/** A clearance as a tag with cut corners and a hole that fills the page: what may start, until when, for what. */
import type { ComponentChildren } from 'preact';
import styles from './tag.module.css';

export type TagProps = {
  /** Small word over the hour, e.g. "until". */
  readonly untilWord: string;
  readonly until: string;
  readonly facts: readonly { readonly term: ComponentChildren; readonly fact: ComponentChildren }[];
  /** The sentence of the tag, e.g. "Filtration may start."; leave out where the page's title says it. */
  readonly children?: ComponentChildren;
};

export const Tag = ({ untilWord, until, facts, children }: TagProps) => (
  <div class={styles.tag}>
    <svg class={styles.string} viewBox="0 0 60 96" width="60" height="96" aria-hidden="true">
      <path d="M52 0C38 12 21 24 21 50" />
      <circle cx="21" cy="70" r="18" />
    </svg>
    <div class={styles.words}>
      {children}
      <p class={styles.untilWord}>{untilWord}</p>
      <p class={styles.until}>{until}</p>
      <dl class={styles.facts}>
        {facts.map(({ term, fact }, at) => (
          <div key={at}>
            <dt>{term}</dt>
            <dd>{fact}</dd>
          </div>
        ))}
      </dl>
    </div>
  </div>
);
