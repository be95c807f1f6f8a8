/** A small drawing beside a question: what to look at, in ink lines. It is looked at, never tapped. */
import { type Drawing, drawings } from './drawings';
import styles from './sketch.module.css';

/** @param label what it shows, for screen readers */
export const Sketch = ({ of, label }: { readonly of: Drawing; readonly label: string }) => (
  <svg class={styles.sketch} viewBox="0 0 96 96" role="img" aria-label={label}>
    {drawings[of].map((path) => (
      <path key={path} class={path.endsWith('Z') ? styles.shape : styles.line} d={path} />
    ))}
  </svg>
);
