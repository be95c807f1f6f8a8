/** How far a list has got: a peg a question, done ones tall, the present one wide. No percentages. */
import styles from './pegs.module.css';

export type PegsProps = {
  /** 1 for the first. */
  readonly at: number;
  readonly of: number;
  /** Said to screen readers and shown at the right, e.g. "4 of 8". */
  readonly words: string;
  /** Left of it, e.g. "Filter the leach liquor, B‑18". */
  readonly task?: string | undefined;
};

export const Pegs = ({ at, of, words, task }: PegsProps) => (
  <div class={styles.pegs}>
    <p class={styles.words}>
      <span>{task}</span>
      <span class={styles.count}>{words}</span>
    </p>
    <div class={styles.line} aria-hidden="true">
      {Array.from({ length: of }, (_, index) => (
        <span
          key={index}
          class={index + 1 < at ? styles.done : index + 1 === at ? styles.now : styles.rest}
        />
      ))}
    </div>
  </div>
);
