/** A treatment begins: what will be treated, what goes in, what holds it back and the way to make each right. */
import { containerFigures } from '../../ledger/container-figures';
import { basesOf } from '../../ledger/list-bounds';
import { mayHaveHappened } from '../../ledger/refused-plan';
import type { ContainerState } from '../../ledger/state';
import { readinessOf } from '../../ledger/treatment-begin';
import { metals } from '../../reference/tables';
import { Button, Buttons } from '../../ui/button';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { contentsTitle, heldText, shown } from '../amounts';
import { Nowhere } from '../checklist/nowhere';
import { PersonFirst } from '../checklist/person-first';
import { capital } from '../containers/load-table';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { words } from '../words';
import { Held, useList } from './run-held';
import { StageFields } from './run-stage-fields';
import { BeginDraft, beginDraftName, emptyBegin, stagesPlanned, stagesRead } from './run-stages';
import { runWords as w } from './run-words';

type Props = { readonly container: ContainerState };

/** What is in it, as far as it decides how much goes in. */
function WillBe({ container }: Props) {
  const { state, sign } = useShell();
  const id = container.body.containerId;
  const figures = containerFigures(state.value, id);
  const at = `#/containers/${id}/working`;
  return (
    <Part rule title={w.willBe} width="edge">
      <Rows>
        <Row
          title={contentsTitle(state.value, id) || words.notDetermined}
          figure={heldText(container.holds, sign.value)}
          href={`#/containers/${id}`}
        />
        {figures.acid.figure && (
          <Row
            title={w.freeAcid}
            figure={<FigureValue {...shown(figures.acid.figure, sign.value)} />}
            href={`${at}/acid`}
            equals
          />
        )}
        {figures.metals.map(
          ({ metal, all }) =>
            all && (
              <Row
                key={metal}
                title={capital(metals[metal].name)}
                figure={<FigureValue {...shown(all, sign.value)} />}
                href={`${at}/${metal}`}
                equals
              />
            ),
        )}
      </Rows>
    </Part>
  );
}

function Begin({ container }: Props) {
  const shell = useShell();
  const { state, person, station, now, go } = shell;
  const { containerId, code } = container.body;
  const form = useForm(beginDraftName(containerId), BeginDraft, () => emptyBegin(shell, containerId));
  const { write, fault, refusal, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const ready = readinessOf(state.value, containerId, {
    who: person.value,
    at: now.value,
    stationId: station.value,
    bases: basesOf(form.value),
  });
  const onList = useList(ready, { container });
  const planned = stagesPlanned(shell, containerId) !== null;
  async function begin(): Promise<void> {
    tryNow();
    const stages = stagesRead(form.value.stages);
    if (!stages || !ready.clearance) return;
    const clearance = ready.clearance.entryId;
    const written = await write({ do: 'begin-treatment', containerId, ...stages, clearance });
    const body = written?.[0]?.body;
    if (body?.kind !== 'treatment-begun') return;
    form.done();
    go(`treatment/${body.treatmentId}`, 'replace');
  }
  const already = `#/treatment/begin/${containerId}/already`;
  return (
    <Frame
      title={w.beginTitle(unbroken(code))}
      second={contentsTitle(state.value, containerId)}
      ways={[{ label: words.back, href: `#/containers/${containerId}` }]}
      actions={
        <Buttons>
          <Fault words={fault} />
          {ready.contents.length === 0 &&
            (ready.cleared && ready.list ? (
              <Button look="primary" voice="serif" onTap={onList}>
                {w.firstList(ready.list.title)}
              </Button>
            ) : (
              <Button
                look="primary"
                voice="serif"
                second={w.beginSecond}
                disabled={busy}
                onTap={() => void begin()}
              >
                {w.begin}
              </Button>
            ))}
          {(!refusal || mayHaveHappened(refusal)) && <Button href={already}>{w.already}</Button>}
        </Buttons>
      }
    >
      <Held ready={ready} container={container} onList={onList} />
      <WillBe container={container} />
      <StageFields form={form} tried={tried} />
      <Part width="edge">
        {planned && <Notice mark="candidate">{w.fromPlan}</Notice>}
        <Rows>
          <Row title={w.toPlan} second={w.toPlanSecond} href={`#/containers/${containerId}/treatment`} />
        </Rows>
      </Part>
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function BeginTreatment({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.container ?? '');
  if (!container) return <Nowhere>{w.noContainer}</Nowhere>;
  return (
    <PersonFirst>
      <Begin container={container} />
    </PersonFirst>
  );
}
