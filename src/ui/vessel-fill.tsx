/** What is in a vessel: liquid or hatch up to the level, solids under it, the level line over both. */

import styles from './vessel.module.css';
import type { VesselGeometry } from './vessel-geometry';

type VesselFillProps = {
  readonly id: string;
  readonly drawn: VesselGeometry;
  readonly tint: string;
  readonly levelKnown: boolean;
  readonly large: boolean;
};

const hatched = (tint: string): boolean => tint === 'unknown' || tint === 'not-computed';

const Patterns = ({ id, tint, large }: VesselFillProps) => {
  const side = tint === 'not-computed' ? 8 : large ? 18 : 12;
  return (
    <>
      <pattern
        id={`${id}-hatch`}
        width={side}
        height={side}
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path d={`M0 0v${side}`} class={tint === 'not-computed' ? styles.faintHatch : styles.hatch} />
      </pattern>
      <pattern id={`${id}-dots`} width="8" height="8" patternUnits="userSpaceOnUse">
        <circle cx="2" cy="2" r="1.3" class={styles.dot} />
        <circle cx="6" cy="6" r="1.3" class={styles.dot} />
      </pattern>
    </>
  );
};

/** The level moves by a transform inside the vessel's inside, so that it can rise in 300 ms and never leaves it. */
export function VesselFill(props: VesselFillProps) {
  const { id, drawn, tint, levelKnown } = props;
  const span = { x: -4, width: drawn.widthPx + 8, height: drawn.heightPx + 8 };
  const level = { '--level': `${drawn.levelPx}px`, '--tint': hatched(tint) ? 'none' : tint };
  return (
    <>
      <defs>
        <clipPath id={`${id}-inside`}>
          <path d={drawn.inside} />
        </clipPath>
        <Patterns {...props} />
      </defs>
      {drawn.liquid !== '' && (
        <g clip-path={`url(#${id}-inside)`}>
          <g class={styles.contents} style={level}>
            <rect {...span} class={styles.liquid} />
            {hatched(tint) && <rect {...span} fill={`url(#${id}-hatch)`} />}
          </g>
          {drawn.solids !== '' && (
            <g class={styles.contents} style={{ '--level': `${drawn.solidsPx}px` }}>
              <rect {...span} class={styles.sediment} />
              <rect {...span} fill={`url(#${id}-dots)`} />
              <path d={`M-4 0h${drawn.widthPx + 8}`} class={styles.solidsLine} />
            </g>
          )}
          <g class={styles.contents} style={level}>
            <path d={`M-4 0h${drawn.widthPx + 8}`} class={levelKnown ? styles.level : styles.levelGuess} />
          </g>
        </g>
      )}
    </>
  );
}
