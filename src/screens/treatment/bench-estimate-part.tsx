/** What a trial on the bench says of all that is in the container, beside what the model says. */
import { useEffect, useState } from 'preact/hooks';
import { type BenchEstimate, type BenchTrial, benchEstimate } from '../../ledger/bench-estimate';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { phDigits } from './run-figures';
import { runWords as w } from './run-words';
import { useSettled } from './use-worked-out';

type Props = { readonly containerId: string; readonly trial: BenchTrial | undefined };

/** Worked out once the typing rests and the page stands; null until then. */
function useEstimate({ containerId, trial }: Props): BenchEstimate | null {
  const { state } = useShell();
  const key = useSettled(trial ? JSON.stringify(trial) : '');
  const [found, setFound] = useState<{ readonly key: string; readonly value: BenchEstimate } | null>(null);
  useEffect(() => {
    if (key === '') return;
    const timer = setTimeout(() =>
      setFound({ key, value: benchEstimate(state.value, containerId, JSON.parse(key) as BenchTrial) }),
    );
    return () => clearTimeout(timer);
  }, [key, state.value, containerId]);
  return found?.key === key ? found.value : null;
}

function ModelRow({ estimate, href }: { readonly estimate: BenchEstimate; readonly href: string }) {
  const { sign } = useShell();
  const { fromModel } = estimate;
  if (fromModel?.ok) return <FigureRow title={w.benchFromModel} figure={fromModel.needed.mass} href={href} />;
  const stalls = fromModel?.why.code === 'stalls' ? fromModel.why.pH : undefined;
  return (
    <Row
      mark={<Mark kind="unknown" />}
      title={w.benchFromModel}
      second={stalls === undefined ? w.benchModelNone : w.benchModelStalls(phDigits(stalls, sign.value))}
    />
  );
}

export function BenchEstimatePart({ containerId, trial }: Props) {
  const estimate = useEstimate({ containerId, trial });
  const at = `#/containers/${containerId}/bench-test`;
  return (
    <Part rule title={w.benchEstimate} width="edge">
      {!trial && (
        <Rows>
          <Row title={w.benchNone} />
        </Rows>
      )}
      {estimate && trial && (
        <>
          {estimate.disagree && (
            <Notice mark="wrong" role="status" second={w.benchDisagreeSecond}>
              {w.benchDisagree}
            </Notice>
          )}
          <Rows>
            {estimate.fromTest && (
              <FigureRow title={w.benchFromTest} figure={estimate.fromTest} href={`${at}/test`} />
            )}
            <ModelRow estimate={estimate} href={`${at}/model`} />
          </Rows>
        </>
      )}
    </Part>
  );
}
