/** The bottom bar: SOS first, then five places or, inside a task, the task's own ways out. */
import type { ComponentChildren } from 'preact';
import styles from './bar.module.css';
import { PlaceIcon } from './icons';
import { type Place, placeNames, places } from './places';

const Sos = () => (
  <a class={styles.sos} href="#/sos">
    SOS
  </a>
);

/** The five places as links; the open one is a notch of paper. @param label names the landmark, e.g. "Places" */
export const PlacesBar = ({
  open,
  label = 'Places',
}: {
  readonly open?: Place | undefined;
  readonly label?: string;
}) => (
  <nav class={styles.bar} aria-label={label}>
    <div class={styles.cells}>
      <Sos />
      {places.map((place) => (
        <a
          class={styles.cell}
          href={`#/${place}`}
          key={place}
          aria-current={place === open ? 'page' : undefined}
        >
          <PlaceIcon place={place} />
          <span>{placeNames[place]}</span>
        </a>
      ))}
    </div>
  </nav>
);

/** One way out of a task. `strong` is drawn as a block of paper: the act that keeps what was entered. */
export type BarAction = {
  readonly label: ComponentChildren;
  readonly onTap?: (() => void) | undefined;
  readonly href?: string | undefined;
  readonly disabled?: boolean | undefined;
  readonly strong?: boolean | undefined;
};

const Way = ({ label, onTap, href, disabled, strong }: BarAction) => {
  const look = `${styles.cell} ${styles.way} ${strong ? styles.strong : ''}`;
  return href === undefined ? (
    <button type="button" class={look} onClick={onTap} disabled={disabled}>
      {label}
    </button>
  ) : (
    <a class={look} href={href}>
      {label}
    </a>
  );
};

/** SOS and the task's own ways out. `sos={false}` only on the emergency card itself. */
export const TaskBar = ({
  children,
  sos = true,
  label = 'This task',
}: {
  readonly children: readonly BarAction[];
  readonly sos?: boolean;
  readonly label?: string;
}) => (
  <nav class={styles.bar} aria-label={label}>
    <div class={styles.cells}>
      {sos && <Sos />}
      {children.map((action, at) => (
        <Way key={at} {...action} />
      ))}
    </div>
  </nav>
);
