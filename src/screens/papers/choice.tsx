/** A container to tick, with its drawn vessel, and what its paper leaves open once it is ticked. */
import { useMemo } from 'preact/hooks';
import { containerFigures } from '../../ledger/container-figures';
import type { ContainerState, State } from '../../ledger/state';
import { Tick } from '../../ui/choices';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Row, Rows } from '../../ui/row';
import { Vessel } from '../../ui/vessel';
import { contentsTitle, heldText } from '../amounts';
import { useShell } from '../shell';
import { vesselDrawing } from '../vessel-drawing';
import { type OpenRow, openRows } from './open-rows';
import styles from './papers.module.css';
import { paperWords as w } from './words';

/** One scale for all, small: what is larger looks larger. */
const scale = 0.16;

export const OpenRows = ({ rows, label }: { readonly rows: readonly OpenRow[]; readonly label: string }) => (
  <Rows label={label}>
    {rows.map(({ key, mark, title, second, href }) => (
      <Row
        key={key}
        mark={<Mark kind={mark} />}
        title={title}
        second={second}
        marked={mark === 'wrong'}
        href={href}
      />
    ))}
  </Rows>
);

type ChoiceProps = {
  readonly state: State;
  readonly container: ContainerState;
  readonly chosen: boolean;
  readonly onChoose: (chosen: boolean) => void;
};

export function ContainerChoice({ state, container, chosen, onChoose }: ChoiceProps) {
  const { sign } = useShell();
  const { containerId, code } = container.body;
  const { drawing, rows } = useMemo(() => {
    const figures = containerFigures(state, containerId);
    return { drawing: vesselDrawing(state, container, figures), rows: openRows(state, container, figures) };
  }, [state, container, containerId]);
  return (
    <li class={styles.choice}>
      <span class={styles.vessel}>
        <Vessel {...drawing} code={undefined} scale={scale} />
      </span>
      <Tick
        label={unbroken(code)}
        second={w.what(contentsTitle(state, containerId), heldText(container.holds, sign.value))}
        checked={chosen}
        onChange={onChoose}
      />
      {chosen &&
        (rows.length === 0 ? (
          <p class={styles.quiet}>{w.nothingMissing}</p>
        ) : (
          <div class={styles.open}>
            <OpenRows rows={rows} label={unbroken(code)} />
          </div>
        ))}
    </li>
  );
}
