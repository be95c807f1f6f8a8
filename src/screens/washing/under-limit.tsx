/** Washes that keep a limit: how many of this water, the least water, and the plot of water against washes. */
import { useMemo } from 'preact/hooks';
import type { TradeOffPoint } from '../../chemistry/wash-limit';
import { printed } from '../../quantities/format';
import { metals } from '../../reference/tables';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Plot } from '../../ui/plot/plot';
import { Row, Rows } from '../../ui/row';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import type { UnderLimit, WashingOutcome } from './draft';
import { workingOf } from './result';
import { tradeOffPlot } from './trade-off-plot';
import { washingWords as w } from './words';

type Props = { readonly outcome: WashingOutcome | undefined; readonly containerId: string };

function Needed({ needed }: { readonly needed: NonNullable<UnderLimit['needed']> }) {
  const likely = needed.likely === undefined ? undefined : w.neededLikely(`${needed.likely}`);
  return (
    <Row
      title={w.needed}
      second={likely === undefined ? w.neededSecond : `${w.neededSecond}; ${likely}`}
      figure={needed.sure === undefined ? w.neededNone : `${needed.sure}`}
    />
  );
}

type PointProps = {
  readonly point: TradeOffPoint;
  readonly name: string;
  readonly title: string;
  readonly containerId: string;
};

function PointRow({ point, name, title, containerId }: PointProps) {
  const { sign } = useShell();
  if (!point.each || !point.water) return null;
  const { value, unit } = printed(point.each, sign.value);
  return (
    <FigureRow
      title={title}
      second={w.eachOf(`${value}\u202f${unit}`)}
      figure={point.water}
      href={workingOf(containerId, name)}
    />
  );
}

function TradeOff({ points }: { readonly points: readonly TradeOffPoint[] }) {
  const { sign } = useShell();
  const decimal = sign.value;
  const spec = useMemo(() => tradeOffPlot(points, decimal), [points, decimal]);
  return spec ? (
    <Part>
      <Plot spec={spec} />
    </Part>
  ) : null;
}

export function UnderTheLimit({ outcome, containerId }: Props) {
  const under = outcome?.under;
  if (!under)
    return (
      <Part rule title={w.under}>
        <p>{w.limitNotYet}</p>
      </Part>
    );
  const { allowed, kept, points, least, enough, needed, metal } = under;
  if (!allowed)
    return (
      <Part rule title={w.under}>
        <Notice mark="unknown">{w.metalOpen(metals[metal].name)}</Notice>
      </Part>
    );
  if (kept)
    return (
      <Part rule title={w.under}>
        <p>{w.kept}</p>
      </Part>
    );
  return (
    <>
      <Part rule title={w.under} width="edge">
        {!least && <Notice mark="wrong">{w.outOfReach}</Notice>}
        <Rows>
          {needed && <Needed needed={needed} />}
          {enough && (
            <PointRow
              point={enough}
              name="enough"
              title={w.enough(enough.washes)}
              containerId={containerId}
            />
          )}
          {least && (
            <PointRow
              point={least}
              name="least"
              title={w.least(`${least.washes}`)}
              containerId={containerId}
            />
          )}
        </Rows>
      </Part>
      <TradeOff points={points} />
    </>
  );
}
