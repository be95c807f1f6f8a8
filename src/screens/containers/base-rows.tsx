/** Base needed, one row a base; and whether any of it may be used here. */
import { basesKept } from '../../ledger/bases-kept';
import type { ContainerFigures } from '../../ledger/container-figures';
import type { ContainerState, State } from '../../ledger/state';
import { printed } from '../../quantities/format';
import { bases } from '../../reference/tables';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { dayText } from '../amounts';
import { useShell } from '../shell';
import { BenchNeeded } from '../treatment/bench-says';
import { words } from '../words';
import { containerWords as w } from './words';

/** Whether the local rules allow treatment, and who said so. Not entered is not allowed. */
export function TreatmentRule({ state }: { readonly state: State }) {
  const { now } = useShell();
  const rule = state.rules.get('treatment-allowed')?.body;
  if (rule?.stated.value === 'yes')
    return (
      <Notice mark="confirmed">
        {w.allowed(rule.saidBy, dayText(`${rule.saidOn}T12:00:00.000Z`, now.value))}
      </Notice>
    );
  return (
    <Notice mark="unknown" second={rule ? w.planningNot : w.planningWhy}>
      {w.planningOnly}
    </Notice>
  );
}

type Props = {
  readonly state: State;
  readonly container: ContainerState;
  readonly figures: ContainerFigures;
};

export function BaseRows({ state, container, figures }: Props) {
  const { sign } = useShell();
  const id = container.body.containerId;
  if (figures.noBase !== null)
    return (
      <Part rule title={w.baseTitle} width="edge">
        <Notice mark={figures.noBase === 'ammonia' ? 'stop' : 'unknown'}>{w.noBase[figures.noBase]}</Notice>
        <BenchNeeded state={state} containerId={id} />
      </Part>
    );
  return (
    <Part rule title={w.baseTitle} width="edge">
      <TreatmentRule state={state} />
      <Rows>
        {basesKept(state).map((base) => {
          const needed = figures.bases.get(base)?.needed;
          if (!needed) return null;
          const p = printed(needed.mass, sign.value);
          return (
            <Row
              key={base}
              title={bases[base].name}
              second={
                needed.openIn.length > 0 ? w.moreNeeded : `${p.low} ${words.to} ${p.high}\u202f${p.unit}`
              }
              figure={
                <FigureValue value={`${needed.openIn.length > 0 ? w.fromOn : ''}${p.value}`} unit={p.unit} />
              }
              href={`#/containers/${id}/base/${base}`}
              equals
            />
          );
        })}
        {figures.silent.length > 0 && <Row mark={<Mark kind="unknown" />} title={w.silent} />}
      </Rows>
    </Part>
  );
}
