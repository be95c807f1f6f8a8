/** How far something is: a bar that fills as it is done, what is being done above it. It moves only when told. */
import styles from './progress-bar.module.css';

export type ProgressBarProps = {
  /** What is being made; for screen readers. */
  readonly name: string;
  /** What is being done now, and how many of how many. */
  readonly says: string;
  /** From 0 to 100. */
  readonly percent: number;
};

export const ProgressBar = ({ name, says, percent }: ProgressBarProps) => (
  <div class={styles.progress}>
    <p class={styles.says}>{says}</p>
    <div
      class={styles.bar}
      role="progressbar"
      aria-label={name}
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={percent}
      aria-valuetext={says}
      style={{ '--share': String(percent / 100) }}
    />
  </div>
);
