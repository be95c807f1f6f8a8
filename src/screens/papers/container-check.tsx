/** A container of a set, drawn, with what is missing or doubtful of it. */
import type { ContainerState } from '../../ledger/state';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Row, Rows } from '../../ui/row';
import { Vessel, type VesselDrawing } from '../../ui/vessel';
import { contentsTitle, heldText } from '../amounts';
import record from '../record/record.module.css';
import { useShell } from '../shell';
import type { CheckRow } from './check-rows';
import styles from './papers.module.css';
import { setWords as w } from './set-words';

/** One scale for all, small: what is larger looks larger. */
const scale = 0.16;

/** The place of a vessel, empty until it is worked out. */
export const SmallVessel = ({ drawing }: { readonly drawing: VesselDrawing | undefined }) => (
  <span class={styles.vessel}>{drawing && <Vessel {...drawing} code={undefined} scale={scale} />}</span>
);

type CheckRowsProps = {
  readonly rows: readonly CheckRow[];
  readonly label: string;
  readonly onOpen: () => void;
};

export const CheckRows = ({ rows, label, onOpen }: CheckRowsProps) => (
  <Rows label={label}>
    {rows.map(({ key, mark, title, second, href }) => (
      <Row
        key={key}
        mark={<Mark kind={mark} />}
        title={title}
        second={second}
        marked={mark === 'wrong' || mark === 'overdue'}
        href={href}
        onTap={onOpen}
      />
    ))}
  </Rows>
);

/** So many are seen at once; of a container that nobody measured there are more. */
const shownFirst = 3;

export type Checked = { readonly drawing: VesselDrawing; readonly rows: readonly CheckRow[] };

type ContainerCheckProps = {
  readonly container: ContainerState;
  /** Undefined while it is worked out. */
  readonly checked: Checked | undefined;
  readonly onOpen: () => void;
};

export function ContainerCheck({ container, checked, onOpen }: ContainerCheckProps) {
  const { state, sign } = useShell();
  const { containerId, code } = container.body;
  const rows = checked?.rows ?? [];
  const rest = rows.slice(shownFirst);
  return (
    <li class={styles.check}>
      <SmallVessel drawing={checked?.drawing} />
      <div class={styles.told}>
        <h2 class={styles.code}>{unbroken(code)}</h2>
        <p class={styles.holds}>
          {w.what(contentsTitle(state.value, containerId), heldText(container.holds, sign.value))}
        </p>
        {checked === undefined && <p class={styles.holds}>{w.looking}</p>}
        {checked && rows.length === 0 && <p class={styles.whole}>{w.nothingMissing}</p>}
      </div>
      {rows.length > 0 && (
        <div class={styles.open}>
          <CheckRows rows={rows.slice(0, shownFirst)} label={unbroken(code)} onOpen={onOpen} />
          {rest.length > 0 && (
            <details class={`${record.fold} ${styles.more}`}>
              <summary>
                <span>{w.more(rest.length)}</span>
              </summary>
              <CheckRows rows={rest} label={`${unbroken(code)}, ${w.more(rest.length)}`} onOpen={onOpen} />
            </details>
          )}
        </div>
      )}
    </li>
  );
}
