/** Two vessels on one shelf with a wall between them: what comes from the left does not go into the right. */
import styles from './kept-apart.module.css';
import { octagon } from './mark-shapes';
import { Vessel, type VesselDrawing } from './vessel';
import { vesselKind } from './vessel-kinds';

export type KeptApartProps = {
  readonly from: VesselDrawing;
  readonly into: VesselDrawing;
  /** Everything the drawing says, for screen readers. */
  readonly name: string;
};

/** What the two may take of the page together, px; the wall and the arrow stand between. */
const room = { width: 200, height: 164, largest: 0.74 } as const;

/** px a mm, the same for both: what is larger looks larger. */
function scaleFor(...drawings: readonly VesselDrawing[]): number {
  const kinds = drawings.map(({ family, capacityL }) => vesselKind(family, capacityL));
  const wide = kinds.reduce((sum, { widthMm }) => sum + widthMm, 0);
  const high = Math.max(...kinds.map(({ heightMm }) => heightMm));
  return Math.min(room.largest, room.width / wide, room.height / high);
}

const Wall = () => (
  <svg class={styles.wall} viewBox="0 0 56 200" preserveAspectRatio="xMidYMax slice" aria-hidden="true">
    <path d="M20 0h16v200h-16z" class={styles.stop} />
    <g transform="translate(2 66) scale(1.45)">
      <path d={octagon(20.4)} class={styles.gap} />
      <path d={octagon(17.6)} class={styles.stop} />
      <path d="M8 15h20v6H8z" class={styles.bar} />
    </g>
  </svg>
);

const Arrow = () => (
  <svg class={styles.arrow} width="30" height="24" viewBox="0 0 30 24" aria-hidden="true">
    <path d="M1 12h25M16 2l10 10-10 10" class={styles.stroke} />
  </svg>
);

export function KeptApart({ from, into, name }: KeptApartProps) {
  const scale = scaleFor(from, into);
  return (
    <div class={styles.shelf} role="img" aria-label={name}>
      <Vessel {...from} scale={scale} />
      <Arrow />
      <Wall />
      <Vessel {...into} scale={scale} />
    </div>
  );
}
