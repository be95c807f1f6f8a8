/** A slider under a plot that moves an upright line over it, and says what is there. */
import { useId } from 'preact/hooks';
import styles from './plot.module.css';
import type { PlotGeometry } from './plot-geometry';

/** For an even axis of x; in decades the thumb would not stand under the line. */
export type PlotCursor = {
  /** Name of the slider, e.g. "Read at a pH". */
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** Where it stands at first. */
  readonly start: number;
  /** What the plot says at x, one sentence with units; also read out while the slider moves. */
  readonly onAt: (x: number) => string;
};

export const CursorLine = ({ geometry, at }: { readonly geometry: PlotGeometry; readonly at: number }) => {
  const x = geometry.xPlace(at);
  return <path class={styles.cursor} d={`M${x} ${geometry.frame.bottom}V${geometry.frame.top}`} />;
};

export function CursorSlider(props: {
  readonly cursor: PlotCursor;
  readonly geometry: PlotGeometry;
  readonly at: number;
  readonly onMove: (x: number) => void;
}) {
  const id = useId();
  const { cursor, geometry, at } = props;
  const words = cursor.onAt(at);
  // The middle of the thumb stands under the line.
  const [left, right] = [geometry.xPlace(cursor.from), geometry.xPlace(cursor.to)];
  return (
    <div class={styles.slide}>
      <label class={styles.slideLabel} for={id}>
        {cursor.label}
      </label>
      <input
        id={id}
        class={styles.slider}
        type="range"
        min={cursor.from}
        max={cursor.to}
        step={cursor.step}
        value={at}
        aria-valuetext={words}
        onInput={(event) => props.onMove(event.currentTarget.valueAsNumber)}
        style={{ '--left': `${left}px`, '--length': `${right - left}px` }}
      />
      <p class={styles.reading} aria-hidden="true">
        {words}
      </p>
    </div>
  );
}
