/** Low, likely and high of one figure, both ends labelled by what they are for. */
import styles from './range-bar.module.css';

export type RangeBarProps = {
  /** Formatted; the unit belongs to the high end. */
  readonly low: string;
  readonly likely: string;
  readonly high: string;
  readonly unit: string;
  /** What each end is used for, e.g. "first portions" and "buy this much". */
  readonly lowUse: string;
  readonly highUse: string;
  /** Where the likely value stands between the ends, 0 to 1. */
  readonly likelyShare: number;
  /** Whole sentence for screen readers, e.g. "332 to 465 g, likely 387 g". */
  readonly name: string;
};

export const RangeBar = (props: RangeBarProps) => {
  const share = Math.min(1, Math.max(0, props.likelyShare));
  // Kept away from the ends' own figures; the tick still stands at the true place.
  const crowded = share < 0.2 || share > 0.72;
  return (
    <figure class={styles.range} style={{ '--likely': String(share) }} aria-label={props.name}>
      <div class={styles.values} aria-hidden="true">
        <span>{props.low}</span>
        {!crowded && <span class={styles.likely}>{props.likely}</span>}
        <span>
          {props.high}
          <span class={styles.unit}>{`\u2009${props.unit}`}</span>
        </span>
      </div>
      <div class={styles.bar} aria-hidden="true">
        <span class={styles.tick} />
      </div>
      <figcaption class={styles.uses}>
        <span>{props.lowUse}</span>
        <span>{props.highUse}</span>
      </figcaption>
    </figure>
  );
};
