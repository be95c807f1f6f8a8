/** All that has to do with treating a container: ways to it, the one that runs, those behind, trials on the bench. */
import type { ContainerFigures } from '../../ledger/container-figures';
import type { ContainerState, State, TreatmentState } from '../../ledger/state';
import { fellShort, runningTreatment } from '../../ledger/treatment';
import { nextLook, stageOf } from '../../ledger/treatment-run';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { ironWords } from '../iron/words';
import { agentName, fellShortText, outcomeText } from '../record/treatment-words';
import { useShell } from '../shell';
import { BenchRows } from '../treatment/bench-says';
import { watchText } from '../treatment/run-texts';
import { runWords as w } from '../treatment/run-words';
import { twoWaysWords } from '../two-ways/words';
import { containerWords } from './words';

type Props = { readonly state: State; readonly container: ContainerState };
type WithFigures = Props & { readonly figures: ContainerFigures };

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

function BehindRow({ treatment }: { readonly treatment: TreatmentState }) {
  const { now, sign } = useShell();
  const { body, ended, at } = treatment;
  const short = fellShort(treatment);
  return (
    <Row
      title={ended ? w.ranThrough(momentText(ended.at, now.value)) : w.begunOn(momentText(at, now.value))}
      second={short ? fellShortText(short, sign.value) : ended ? outcomeText[ended.body.outcome] : w.runsToo}
      marked={short !== null}
      href={`#/treatment/${body.treatmentId}`}
    />
  );
}

function Ways({ state, container, figures }: WithFigures) {
  const { containerId } = container.body;
  const of = (way: string): string => `#/containers/${containerId}/${way}`;
  const { liquid } = figures.contents;
  return (
    <>
      {figures.load && (
        <Row
          title={containerWords.treatment}
          second={containerWords.treatmentSecond}
          href={of('treatment')}
        />
      )}
      {!runningTreatment(state, containerId) && (
        <Row title={w.begin} second={w.beginDoor} href={`#/treatment/begin/${containerId}`} />
      )}
      <Row title={w.benchOpen} second={w.benchOpenSecond} href={of('bench-test')} />
      {liquid?.metals.get('Cu')?.figure && (
        <Row title={ironWords.open} second={ironWords.openSecond} href={of('iron')} />
      )}
      {liquid && (
        <Row title={twoWaysWords.open} second={twoWaysWords.openSecond} href={of('as-it-is-or-treated')} />
      )}
    </>
  );
}

export function ContainerTreatment(props: WithFigures) {
  const { state, container } = props;
  const all = container.treatmentIds.flatMap((id) => state.treatments.get(id) ?? []);
  const running = runningTreatment(state, container.body.containerId);
  const holds = container.contents.length > 0;
  const nothingBehind = all.length === 0 && container.benchTests.length === 0;
  if ((!holds || container.doubtfulSince !== null) && nothingBehind) return null;
  return (
    <Part rule title={w.container} width="edge">
      <Rows>
        {all
          .filter((treatment) => treatment !== running)
          .toReversed()
          .map((treatment) => (
            <BehindRow key={treatment.body.treatmentId} treatment={treatment} />
          ))}
        <BenchRows state={state} container={container} />
        {holds && container.doubtfulSince === null && <Ways {...props} />}
      </Rows>
    </Part>
  );
}
