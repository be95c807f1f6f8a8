/** A vessel on its own page, with a line from each thing to its word. */
import type { ComponentChildren } from 'preact';
import { geometryOf, Vessel, type VesselDrawing } from './vessel';
import styles from './vessel-with-leaders.module.css';

export type VesselWithLeadersProps = {
  readonly vessel: VesselDrawing;
  /** Everything the drawing says, for screen readers. */
  readonly name: string;
  /** Words at the cap, the limit, the level and the liquid; a word left out has no leader. */
  readonly cap?: ComponentChildren;
  readonly limit?: ComponentChildren;
  /** A large `<FigureValue>` and its second line. */
  readonly level?: ComponentChildren;
  readonly contents?: ComponentChildren;
  readonly tickEveryL?: number | undefined;
  /** px a mm; 0.74 for a 10 L jerrican, less for a larger one so that the words keep room. */
  readonly scale?: number | undefined;
};

/** Widest a vessel may be drawn beside its words, and highest. */
const room = { widthPx: 172, heightPx: 246 };

/** The page's scale, or less where the vessel would take the room of the words. */
export function pageScale(drawing: VesselDrawing, wanted = 0.74): number {
  const one = geometryOf({ ...drawing, scale: 1 });
  return Math.min(
    wanted * (drawing.capacityL < 4 ? 1.25 : 1),
    room.widthPx / one.widthPx,
    room.heightPx / one.heightPx,
  );
}

/** Keeps words from lying on each other: each starts no higher than the one above ends. */
function spread(wantedPx: readonly number[], heightsPx: readonly number[]): readonly number[] {
  let free = 0;
  return wantedPx.map((wanted, at) => {
    const place = Math.max(wanted - 11, free);
    free = place + (heightsPx[at] ?? 24);
    return place;
  });
}

type LeaderProps = {
  readonly fromPx: number;
  readonly yPx: number;
  readonly endPx: number;
  readonly wordPx: number;
  readonly dot: boolean;
};

/** A line with a paper halo, so that it is seen over the tint; a dot where it starts in the liquid. */
const Leader = ({ fromPx, yPx, endPx, wordPx, dot }: LeaderProps) => {
  const path = `M${fromPx} ${yPx}H${endPx - 10}L${endPx} ${wordPx}`;
  return (
    <g>
      {dot && <circle cx={fromPx} cy={yPx} r="6.5" class={styles.halo} />}
      <path d={path} class={styles.under} />
      <path d={path} class={styles.line} />
      {dot && <circle cx={fromPx} cy={yPx} r="3.5" class={styles.dot} />}
    </g>
  );
};

export function VesselWithLeaders(props: VesselWithLeadersProps) {
  const scale = pageScale(props.vessel, props.scale);
  const drawn = geometryOf({ ...props.vessel, scale });
  const bottom = drawn.heightPx;
  // Below the label where there is depth for it; in the liquid always.
  const liquidPx = Math.max((drawn.levelPx + bottom) / 2, Math.min(bottom - 44, drawn.levelPx + 78));
  const leaders = [
    {
      key: 'cap',
      words: props.cap,
      fromPx: drawn.capBoxPx.right,
      yPx: drawn.capBoxPx.top + 4,
      highPx: 28,
      dot: false,
    },
    {
      key: 'limit',
      words: props.limit,
      fromPx: drawn.limitXPx + 12,
      yPx: drawn.limitPx,
      highPx: 28,
      dot: false,
    },
    {
      key: 'level',
      words: props.level,
      fromPx: drawn.rightPx - 6,
      yPx: drawn.levelPx,
      highPx: 66,
      dot: true,
    },
    {
      key: 'contents',
      words: props.contents,
      fromPx: drawn.rightPx - 20,
      yPx: liquidPx,
      highPx: 48,
      dot: true,
    },
  ].filter(({ words }) => words !== undefined);
  const places = spread(
    leaders.map(({ yPx }) => yPx),
    leaders.map(({ highPx }) => highPx),
  );
  const end = drawn.widthPx + 28;
  // Each word keeps the room down to the next one's place; a longer one pushes what follows and covers nothing.
  const rooms = places.map((place, at) => (places[at + 1] ?? place) - place);
  return (
    <div class={styles.leaders}>
      <div class={styles.wrap}>
        <div class={styles.drawing} style={{ '--drawing': `${drawn.widthPx + 36}px` }}>
          <Vessel {...props.vessel} scale={scale} name={props.name} tickEveryL={props.tickEveryL} />
          <svg
            class={styles.lines}
            width={end + 6}
            height={bottom + 6}
            viewBox={`-2 -2 ${end + 6} ${bottom + 6}`}
            aria-hidden="true"
          >
            {leaders.map(({ key, ...leader }, at) => (
              <Leader key={key} {...leader} endPx={end} wordPx={(places[at] ?? leader.yPx) + 11} />
            ))}
          </svg>
        </div>
        <div class={styles.words} style={{ '--first': `${places[0] ?? 0}px` }}>
          {leaders.map(({ key, words }, at) => (
            <div key={key} style={{ '--room': `${rooms[at] ?? 0}px` }}>
              {words}
            </div>
          ))}
        </div>
      </div>
    </div>
  );
}
