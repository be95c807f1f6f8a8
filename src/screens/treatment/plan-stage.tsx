/** One stage of the plan: what holds its portions down, and the portions. */
import { useMemo } from 'preact/hooks';
import type { StageTold } from '../../ledger/treatment-plan';
import { bases } from '../../reference/tables';
import { Part } from '../../ui/page';
import { Plot } from '../../ui/plot/plot';
import { Rows } from '../../ui/row';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { workingOf } from './comes-of';
import styles from './plan.module.css';
import { type PlanRow, type PortionRow, portionRows, stageRows } from './plan-rows';
import { aimText, stagePlot } from './pot-plot';
import { treatmentWords as w } from './words';

type FigureRowsProps = { readonly rows: readonly PlanRow[]; readonly containerId: string };

export const PlanFigureRows = ({ rows, containerId }: FigureRowsProps) => (
  <Rows>
    {rows.map(({ key, title, second, figure }) => (
      <FigureRow key={key} title={title} second={second} figure={figure} href={workingOf(containerId, key)} />
    ))}
  </Rows>
);

const PortionLine = ({ row }: { readonly row: PortionRow }) => (
  <tr>
    <th scope="row">{row.number}</th>
    <td class={styles.nowrap}>{row.grams}</td>
    <td class={styles.nowrap}>{row.soFar}</td>
    <td>{row.pH}</td>
  </tr>
);

function Portions({ stage }: { readonly stage: StageTold }) {
  const { sign } = useShell();
  const rows = portionRows(stage, sign.value);
  const target = aimText(stage.pH, sign.value);
  const last = rows.filter(({ kind }) => kind === 'last');
  return (
    <table class={styles.table}>
      <caption class="visually-hidden">{w.table(bases[stage.base].name)}</caption>
      <thead>
        <tr>
          <th scope="col">{w.number}</th>
          <th scope="col">{w.portion}</th>
          <th scope="col">{w.soFar}</th>
          <th scope="col">{w.expected}</th>
        </tr>
      </thead>
      <tbody>
        {rows
          .filter(({ kind }) => kind === 'full')
          .map((row) => (
            <PortionLine key={row.number} row={row} />
          ))}
      </tbody>
      {last.length > 0 && (
        <tbody>
          <tr>
            <th class={styles.only} colSpan={4} scope="rowgroup">
              {w.only(target)}
            </th>
          </tr>
          {last.map((row) => (
            <PortionLine key={row.number} row={row} />
          ))}
        </tbody>
      )}
    </table>
  );
}

type Props = {
  readonly stage: StageTold;
  readonly number: number;
  readonly containerId: string;
  /** Of several stages each has a curve of its own; that of a single one stands on the page before. */
  readonly drawn: boolean;
};

export function StagePart({ stage, number, containerId, drawn }: Props) {
  const { sign } = useShell();
  const plot = useMemo(() => (drawn ? stagePlot(stage, sign.value) : undefined), [stage, drawn, sign.value]);
  const target = aimText(stage.pH, sign.value);
  const rows = <PlanFigureRows rows={stageRows(stage, number, sign.value)} containerId={containerId} />;
  return (
    <>
      <Part
        rule
        title={w.stage(`${number}`, bases[stage.base].name, target)}
        {...(plot ? {} : { width: 'edge' })}
      >
        {plot ? <Plot {...plot} /> : rows}
      </Part>
      {plot && <Part width="edge">{rows}</Part>}
      <Part>
        <Portions stage={stage} />
        <p>{w.atTarget(target)}</p>
      </Part>
    </>
  );
}
