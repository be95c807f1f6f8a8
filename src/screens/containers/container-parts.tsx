/** What stands beside the load of a container: never-rules, residues, volume and density. */
import type { ContainerFigures } from '../../ledger/container-figures';
import type { ContainerState, State } from '../../ledger/state';
import { wasteKinds } from '../../ledger/waste-kinds';
import { neverFor } from '../../safety/never-rules';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { shown, streamTitle } from '../amounts';
import { useShell } from '../shell';
import { washingWords } from '../washing/words';
import { containerWords as w } from './words';

type Props = {
  readonly state: State;
  readonly container: ContainerState;
  readonly figures: ContainerFigures;
};

export function Never({ state, container }: Omit<Props, 'figures'>) {
  const rules = neverFor(wasteKinds(state, container.body.containerId).kinds);
  if (rules.length === 0) return null;
  const first = rules.slice(0, 3);
  return (
    <Part rule>
      <Notice mark="stop">{`${first.map((r) => r.short).join('. ')}.`}</Notice>
      <details>
        <summary>{w.allNever(rules.length)}</summary>
        <ul>
          {rules.map((r) => (
            <li key={r.id}>
              <b>{r.short}.</b> {r.happens}
            </li>
          ))}
        </ul>
      </details>
    </Part>
  );
}

/** Residues: their wet mass, and the liquor each still holds. */
export function Residues({ state, container, figures }: Props) {
  const { sign } = useShell();
  const { residues } = figures.contents;
  if (residues.length === 0) return null;
  const base = `#/containers/${container.body.containerId}/working`;
  return (
    <Part rule width="edge">
      <Rows>
        {residues.flatMap((r, i) => [
          <Row
            key={`residue ${i}`}
            title={w.holds}
            second={streamTitle(state, r.streamId)}
            figure={<FigureValue {...shown(r.wetMass, sign.value)} />}
            href={`${base}/residue-${i + 1}`}
          />,
          r.held ? (
            <Row
              key={`held ${i}`}
              title={w.held}
              figure={<FigureValue {...shown(r.held.volume, sign.value)} />}
              href={`${base}/held-${i + 1}`}
              equals
            />
          ) : (
            <Row key={`held ${i}`} mark={<Mark kind="unknown" />} title={w.silent} />
          ),
        ])}
        {residues.some(({ held }) => held) && (
          <Row
            title={washingWords.open}
            second={washingWords.openSecond}
            href={`#/containers/${container.body.containerId}/washing`}
          />
        )}
      </Rows>
    </Part>
  );
}

export function Volumes({ container, figures }: Omit<Props, 'state'>) {
  const { sign } = useShell();
  const base = `#/containers/${container.body.containerId}/working`;
  if (!figures.load || !figures.density) return null;
  return (
    <Rows>
      <Row
        title={w.volume}
        figure={<FigureValue {...shown(figures.load.volume, sign.value)} />}
        href={`${base}/volume`}
        equals={figures.load.volume.how === 'worked-out'}
      />
      <Row
        title={w.density}
        figure={<FigureValue {...shown(figures.density, sign.value)} />}
        href={`${base}/density`}
        equals={figures.density.how === 'worked-out'}
      />
    </Rows>
  );
}
