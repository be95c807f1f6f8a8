/** The ventilation of a batch on its page: the way to a check, and the one made last. */
import { lastVentilation } from '../../ledger/ventilation-found';
import { verdictWords } from '../../safety/ventilation/words';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { useShell } from '../shell';
import { words } from '../words';
import { ventilationWords as w } from './words';

const markOf = { none: 'stop', split: 'wrong' } as const;

export function BatchVentilation({ batchId }: { readonly batchId: string }) {
  const { state, now } = useShell();
  const last = lastVentilation(state.value, batchId);
  return (
    <Part rule title={w.part} width="edge">
      <Rows label={w.part}>
        {last && (
          <Row
            {...(last.body.verdict === 'enough'
              ? { start: 'text' as const }
              : { mark: <Mark kind={markOf[last.body.verdict]} /> })}
            title={verdictWords[last.body.verdict]}
            second={w.worked(
              momentText(last.at, now.value),
              state.value.stations.get(last.body.stationId)?.body.name ?? words.notDetermined,
            )}
            href={`#/ventilation-checks/${last.body.checkId}`}
          />
        )}
        <Row start="text" title={w.open} second={w.openSecond} href={`#/ventilation/${batchId}/-`} />
      </Rows>
    </Part>
  );
}
