/** Treatments of a container: the one that runs, those it has been through, the trial on the bench before one. */
import type { ContainerState, State, TreatmentState } from '../../ledger/state';
import { runningTreatment } from '../../ledger/treatment';
import { nextLook, stageOf } from '../../ledger/treatment-run';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { agentName, outcomeText } from '../record/treatment-words';
import { useShell } from '../shell';
import { watchText } from '../treatment/run-texts';
import { runWords as w } from '../treatment/run-words';

type Props = { readonly state: State; readonly container: ContainerState };

function RunningRow({ treatment }: { readonly treatment: TreatmentState }) {
  const { now, sign } = useShell();
  const look = nextLook(treatment);
  return (
    <Row
      mark={<Mark kind={look && look.due <= now.value ? 'overdue' : 'due'} />}
      title={w.running(agentName(stageOf(treatment).agent).toLowerCase())}
      second={watchText(treatment, now.value, sign.value)}
      href={`#/treatment/${treatment.body.treatmentId}`}
    />
  );
}

/** High on the page: somebody stands at the pot. */
export function TreatmentRunning({ state, container }: Props) {
  const running = runningTreatment(state, container.body.containerId);
  return running ? (
    <Part rule width="edge">
      <Rows>
        <RunningRow treatment={running} />
      </Rows>
    </Part>
  ) : null;
}

export function ContainerTreatment({ state, container }: Props) {
  const { now } = useShell();
  const { containerId } = container.body;
  const all = container.treatmentIds.flatMap((id) => state.treatments.get(id) ?? []);
  const running = runningTreatment(state, containerId);
  if (container.contents.length === 0 && all.length === 0) return null;
  return (
    <Part rule title={w.container} width="edge">
      <Rows>
        {all
          .filter((treatment) => treatment !== running)
          .toReversed()
          .map(({ body, ended, at }) => (
            <Row
              key={body.treatmentId}
              title={w.ranThrough(momentText(at, now.value))}
              second={ended ? outcomeText[ended.body.outcome] : w.runsToo}
              href={`#/treatment/${body.treatmentId}`}
            />
          ))}
        {!running && container.contents.length > 0 && (
          <Row title={w.begin} second={w.beginDoor} href={`#/treatment/begin/${containerId}`} />
        )}
        {container.contents.length > 0 && (
          <Row
            title={w.benchOpen}
            second={w.benchOpenSecond}
            href={`#/containers/${containerId}/bench-test`}
          />
        )}
      </Rows>
    </Part>
  );
}
