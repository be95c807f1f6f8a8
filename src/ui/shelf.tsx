/** The shelf: vessels on one scale, in their trays, what needs a look marked above. Each is a link to its container. */
import type { ComponentChildren } from 'preact';
import { Mark, type MarkProps } from './marks';
import styles from './shelf.module.css';
import { Vessel, type VesselDrawing } from './vessel';

export type ShelfVessel = {
  readonly key: string;
  readonly drawing: VesselDrawing;
  /** Full name, e.g. "C-04, 20 L jerrican, 18.6 L, 93 %, too full". */
  readonly name: string;
  readonly href: string;
  readonly mark?: MarkProps | undefined;
};

export type ShelfTray = {
  readonly key: string;
  /** Under the tray, e.g. "ammonia tray"; no word when the vessels stand in none. */
  readonly word?: ComponentChildren;
  readonly vessels: readonly ShelfVessel[];
  /** A tray has an edge; without one the vessels stand on the floor. */
  readonly tray?: boolean | undefined;
};

export type ShelfProps = {
  readonly trays: readonly ShelfTray[];
  /** Name of the list for screen readers. */
  readonly label: string;
  /** px a mm, the same for all: what is larger looks larger. */
  readonly scale?: number | undefined;
};

const Standing = ({ vessel, scale }: { readonly vessel: ShelfVessel; readonly scale: number }) => (
  <li class={styles.standing}>
    <a href={vessel.href} aria-label={vessel.name}>
      <span class={styles.mark}>{vessel.mark && <Mark {...vessel.mark} sizePx={24} />}</span>
      <Vessel {...vessel.drawing} scale={scale} />
    </a>
  </li>
);

export const Shelf = ({ trays, label, scale = 0.25 }: ShelfProps) => (
  <section class={styles.shelf} aria-label={label}>
    {trays.map((tray) => (
      <div class={styles.tray} key={tray.key}>
        <ul class={tray.tray === false ? styles.floor : styles.edge}>
          {tray.vessels.map((vessel) => (
            <Standing key={vessel.key} vessel={vessel} scale={scale} />
          ))}
        </ul>
        <p class={styles.word}>{tray.word}</p>
      </div>
    ))}
  </section>
);
