/** The drawn vessel: true to scale, filled to its level, tinted by what is dissolved in it. */
import { useId } from 'preact/hooks';
import styles from './vessel.module.css';
import { VesselFill } from './vessel-fill';
import { vesselGeometry } from './vessel-geometry';
import { type VesselFamily, vesselKind } from './vessel-kinds';
import { labelBox, VesselLabel } from './vessel-label';

export type VesselDrawing = {
  readonly family: VesselFamily;
  readonly capacityL: number;
  /** Leave out when nobody knows what it is: the level is then a dashed line at `guessShare`. */
  readonly volumeL?: number | undefined;
  /** Where an unknown level is drawn, share of capacity; half way where nobody read one. */
  readonly guessShare?: number | undefined;
  /** '#RRGGBB'; 'unknown' hatches the contents, 'not-computed' hatches them lightly. */
  readonly tint: string;
  readonly cap: 'vented' | 'tight';
  /** Label as a code; dashed when the label is missing. */
  readonly code?: string | undefined;
  readonly labelMissing?: boolean | undefined;
  /** Height of settled solids as a share of the shoulder height. */
  readonly solidsShare?: number | undefined;
  /** Filling limit as a share of capacity; 0.9 unless the local rules say otherwise. */
  readonly limitShare?: number | undefined;
};

export type VesselProps = VesselDrawing & {
  /** px a mm. */
  readonly scale: number;
  /** Everything the drawing says, for screen readers; left out where the words stand beside it. */
  readonly name?: string | undefined;
  /** Graduation on the left wall, litres a tick. */
  readonly tickEveryL?: number | undefined;
  /** Room for leaders and the limit tick at the right, px. */
  readonly roomRightPx?: number | undefined;
};

/** About as high and as wide as a digit at a tick, and how far from the wall it stands. */
const tickLetterPx = 10;
const tickTextPx = 24;

/** Half a line, so that no stroke is cut. */
const pad = 2;

/** Geometry of a drawing at a scale; the leaders use the same one. */
export const geometryOf = (props: VesselProps) =>
  vesselGeometry({
    kind: vesselKind(props.family, props.capacityL),
    fillShare: props.volumeL === undefined ? (props.guessShare ?? 0.45) : props.volumeL / props.capacityL,
    solidsShare: props.solidsShare,
    limitShare: props.limitShare,
    scale: props.scale,
    gapPx: props.scale > 0.4 ? 5 : 3.75,
    tickEveryL: props.tickEveryL,
  });

export function Vessel(props: VesselProps) {
  const id = useId();
  const drawn = geometryOf(props);
  const large = props.scale > 0.4;
  const width = drawn.widthPx + 2 * pad + (props.roomRightPx ?? 0);
  const height = drawn.heightPx + 2 * pad;
  const label =
    props.code === undefined
      ? undefined
      : labelBox({ code: props.code, missing: props.labelMissing, drawn, large });
  // A number half under the label reads as another.
  const covered = ({ xPx, yPx, litres }: (typeof drawn.ticks)[number]): boolean =>
    label !== undefined &&
    yPx > label.y - tickLetterPx &&
    yPx < label.y + label.height + tickLetterPx &&
    xPx + tickTextPx + String(litres).length * tickLetterPx > label.x;
  return (
    <svg
      class={`${styles.vessel} ${large ? styles.large : ''}`}
      width={width}
      height={height}
      viewBox={`${-pad} ${-pad} ${width} ${height}`}
      role={props.name === undefined ? undefined : 'img'}
      aria-label={props.name}
      aria-hidden={props.name === undefined ? 'true' : undefined}
    >
      <path d={drawn.outline} class={styles.ground} />
      <VesselFill
        id={id}
        drawn={drawn}
        tint={props.tint}
        levelKnown={props.volumeL !== undefined}
        large={large}
      />
      {drawn.hole && <path d={drawn.hole} class={styles.line} />}
      {drawn.ticks.map((tick) => (
        <g key={tick.litres}>
          <path d={`M${tick.xPx} ${tick.yPx}h${tick.long ? 20 : 11}`} class={styles.tick} />
          {tick.long && !covered(tick) && (
            <text x={tick.xPx + tickTextPx} y={tick.yPx + 5} class={styles.tickText}>
              {tick.litres}
            </text>
          )}
        </g>
      ))}
      <path d={drawn.outline} class={styles.line} />
      <path
        d={large ? `M${drawn.limitXPx} ${drawn.limitPx}h12` : `M${drawn.limitXPx} ${drawn.limitPx}h-9`}
        class={styles.limit}
      />
      <path d={drawn.cap} class={props.cap === 'tight' ? styles.solid : styles.line} />
      {props.cap === 'vented' && <path d={drawn.stem} class={styles.solid} />}
      {props.code !== undefined && (
        <VesselLabel code={props.code} missing={props.labelMissing} drawn={drawn} large={large} />
      )}
    </svg>
  );
}
