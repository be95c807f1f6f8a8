/** What a trial on the bench says of all that is in the container, beside what the model says. */
import { useEffect, useState } from 'preact/hooks';
import { type BenchEstimate, type BenchTrial, benchEstimate } from '../../ledger/bench-estimate';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { containerWords } from '../containers/words';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { aimOfPlan } from './bench-draft';
import { phDigits } from './run-figures';
import { runWords as w } from './run-words';
import { useSettled } from './use-worked-out';

type Props = { readonly containerId: string; readonly trial: BenchTrial | undefined };

/** Worked out once the typing rests and the page stands; null until then. */
function useEstimate({ containerId, trial }: Props): BenchEstimate | null {
  const shell = useShell();
  const state = shell.state.value;
  const aim = aimOfPlan(shell, containerId);
  const key = useSettled(trial ? JSON.stringify([trial, aim]) : '');
  const [found, setFound] = useState<{ readonly key: string; readonly value: BenchEstimate } | null>(null);
  useEffect(() => {
    if (key === '') return;
    const timer = setTimeout(() => {
      const [asked, target] = JSON.parse(key) as [BenchTrial, number | null];
      setFound({ key, value: benchEstimate(state, containerId, asked, target ?? undefined) });
    });
    return () => clearTimeout(timer);
  }, [key, state, containerId]);
  return found?.key === key ? found.value : null;
}

function ModelRow({ estimate, href }: { readonly estimate: BenchEstimate; readonly href: string }) {
  const { sign } = useShell();
  const model = estimate.fromModel;
  if (model?.ok)
    return (
      <FigureRow
        title={w.benchFromModel}
        second={w.target.concat(' ', phDigits(model.pH, sign.value))}
        figure={model.needed.mass}
        href={href}
      />
    );
  const stalls = model?.why.code === 'stalls' ? model.why.pH : undefined;
  return (
    <Row
      mark={<Mark kind="unknown" />}
      title={w.benchFromModel}
      second={stalls === undefined ? w.benchModelNone : w.benchModelStalls(phDigits(stalls, sign.value))}
    />
  );
}

function Estimate({ estimate, containerId }: Pick<Props, 'containerId'> & { estimate: BenchEstimate }) {
  const at = `#/containers/${containerId}/bench-test`;
  return (
    <>
      {estimate.disagree && (
        <Notice mark="wrong" role="status" second={w.benchDisagreeSecond}>
          {w.benchDisagree}
        </Notice>
      )}
      <Rows>
        {estimate.fromTest && (
          <FigureRow
            title={w.benchFromTest}
            second={w.benchToEnd}
            figure={estimate.fromTest}
            href={`${at}/test`}
          />
        )}
        {estimate.toTarget && (
          <FigureRow
            title={w.benchFromTest}
            second={w.benchToTarget}
            figure={estimate.toTarget}
            href={`${at}/target`}
          />
        )}
        <ModelRow estimate={estimate} href={`${at}/model`} />
      </Rows>
    </>
  );
}

export function BenchEstimatePart({ containerId, trial }: Props) {
  const found = useEstimate({ containerId, trial });
  return (
    <Part rule title={w.benchEstimate} width="edge">
      {!trial && (
        <Rows>
          <Row title={w.benchNone} />
        </Rows>
      )}
      {trial && found && found.none === null && <Estimate estimate={found} containerId={containerId} />}
      {trial && found && found.none !== null && (
        <Notice mark={found.none === 'ammonia' ? 'stop' : 'unknown'}>
          {found.none === 'empty' ? w.benchEmpty : containerWords.noBase[found.none]}
        </Notice>
      )}
    </Part>
  );
}
