/** The label on a vessel: a white tab with the code; dashed where the real label is missing. */
import { unbroken } from './figure-value';
import styles from './vessel.module.css';
import type { VesselGeometry } from './vessel-geometry';

type VesselLabelProps = {
  readonly code: string;
  readonly missing?: boolean | undefined;
  readonly drawn: VesselGeometry;
  readonly large: boolean;
};

/** Where the tab stands, and the size of its letters. */
export function labelBox({ code, missing, drawn, large }: VesselLabelProps) {
  const letter = large ? 25 : 13;
  const wanted = code.length * letter * 0.62 + (large ? 34 : 12);
  // On a narrow bottle the tab goes round it and stands over both walls.
  const width = Math.max(wanted, large ? 0 : Math.min(42, drawn.widthPx * 0.6));
  const height = large ? 42 : 21;
  const x = (drawn.widthPx - width) / 2;
  // Where the drawings have it: low on its own page, higher on a shelf, over the liquid where it only asks for a label.
  const share = missing ? 0.72 : large ? 0.3 : drawn.widthPx < 40 ? 0.6 : 0.42;
  const centre = drawn.heightPx - share * drawn.shoulderPx;
  const low = Math.min(drawn.heightPx - height - 6, centre - height / 2);
  // A tab may not hide the liquid: where it would cover most of a shallow one, it hangs in the air above.
  const hides = low < drawn.levelPx + 4 || height > 0.6 * (drawn.heightPx - drawn.levelPx);
  const air = drawn.levelPx - height - 8;
  const y = !missing && hides && drawn.liquid !== '' && air > drawn.capBoxPx.bottom ? air : low;
  return { x, y, width, height, letter };
}

export function VesselLabel(props: VesselLabelProps) {
  const { code, missing } = props;
  const { x, y, width, height, letter } = labelBox(props);
  return (
    <g class={styles.labelText}>
      <rect x={x} y={y} width={width} height={height} class={missing ? styles.tabMissing : styles.tab} />
      <text
        x={x + width / 2}
        y={y + height / 2 + letter * 0.36}
        text-anchor="middle"
        font-size={letter}
        class={missing ? styles.codeMissing : styles.code}
      >
        {unbroken(code)}
      </text>
    </g>
  );
}
