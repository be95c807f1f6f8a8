/** A figure with its smaller unit, and the range or spread under it. Takes text already formatted: it knows no number. */
import styles from './figure-value.module.css';

export type FigureValueProps = {
  /** As printed, e.g. "6.70" or "141 to 188". */
  readonly value: string;
  readonly unit?: string | undefined;
  /** Second line, e.g. "36 to 44". */
  readonly range?: string | undefined;
  /** Spread after the unit, without the sign, e.g. "16" gives "118 g ± 16". */
  readonly spread?: string | undefined;
  readonly size?: 'inline' | 'row' | 'large' | 'main' | undefined;
  /** Draws the sign of a worked-out figure before it. */
  readonly equals?: boolean | undefined;
};

/** Keeps codes such as C-07 on one line: the hyphen becomes one that does not break. */
export const unbroken = (code: string): string => code.replaceAll('-', '\u2011');

export const FigureValue = ({ value, unit, range, spread, size = 'row', equals }: FigureValueProps) => (
  <span class={`${styles.figure} ${styles[size]}`}>
    <span class={styles.value}>
      {equals && '= '}
      {value}
      {unit !== undefined && <span class={styles.unit}>{`\u2009${unit}`}</span>}
      {spread !== undefined && <span class={styles.spread}>{` ±\u2009${spread}`}</span>}
    </span>
    {range !== undefined && <span class={styles.range}>{range}</span>}
  </span>
);
