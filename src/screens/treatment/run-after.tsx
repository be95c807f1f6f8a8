/** After the end: what the container holds now, what is not known of it, and what comes next. */

import { containerFigures } from '../../ledger/container-figures';
import { codeOfContainer } from '../../ledger/put-away';
import type { TreatmentState } from '../../ledger/state';
import { fellShort } from '../../ledger/treatment';
import { measuredSince } from '../../ledger/treatment-run';
import { metals } from '../../reference/tables';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { contentsTitle, momentText } from '../amounts';
import { Frame } from '../frame';
import { capital } from '../record/entry-words';
import { fellShortText, outcomeText } from '../record/treatment-words';
import { useShell } from '../shell';
import { words } from '../words';
import { RunAsks } from './run-asks';
import { InThePot, RunHistory } from './run-rows';
import { runWords as w } from './run-words';

type Props = { readonly treatment: TreatmentState };

function WhatItIs({ treatment }: Props) {
  const { state } = useShell();
  const measured = measuredSince(treatment).map((metal) => metals[metal].name);
  const { noBase } = containerFigures(state.value, treatment.body.containerId);
  return (
    <Part rule title={w.endedNow}>
      {treatment.treated && (
        <Notice
          mark="unknown"
          second={measured.length > 0 ? w.endedMeasured(measured.join(', ')) : w.endedSlurrySecond}
        >
          {noBase === 'treated' ? w.endedSlurry : contentsTitle(state.value, treatment.body.containerId)}
        </Notice>
      )}
      <p>{treatment.treated ? w.endedNitrate : w.endedNothing}</p>
    </Part>
  );
}

/** Filtrate and sludge are logged in the batch that the liquor came from; with several, the person chooses. */
function Next({ treatment }: Props) {
  const { state } = useShell();
  const { treatmentId, containerId } = treatment.body;
  const batchIds = new Set(
    (treatment.treated ?? []).flatMap(({ streamId }) => {
      const batchId = streamId === null ? null : (state.value.streams.get(streamId)?.body.batchId ?? null);
      return batchId === null ? [] : [batchId];
    }),
  );
  const [only] = batchIds;
  const short = fellShort(treatment) !== null;
  const another = <Row title={w.beginAnother} href={`#/treatment/begin/${containerId}`} />;
  const log = batchIds.size === 1 ? `batches/${only}/log` : 'batches';
  return (
    <Part rule title={w.endedNext} width="edge">
      <Rows>
        <Row title={w.measure} second={w.measureSecond} href={`#/treatment/${treatmentId}/reading`} />
        {short && another}
        {only !== undefined && <Row title={w.filterList} href={`#/check/${only}/sludge-filter`} />}
        <Row title={w.filtrate} second={w.filtrateSecond} href={`#/${log}`} />
        <Row title={w.papers} href={`#/papers/new/${containerId}`} />
        {!short && another}
      </Rows>
    </Part>
  );
}

export function AfterTheEnd({ treatment }: Props) {
  const { state, now, sign } = useShell();
  const { containerId } = treatment.body;
  const short = fellShort(treatment);
  const code = unbroken(codeOfContainer(state.value, containerId) ?? '');
  const { ended } = treatment;
  if (!ended) return null;
  return (
    <Frame
      title={w.endedTitle(code)}
      second={w.endedSecond(outcomeText[ended.body.outcome], momentText(ended.at, now.value))}
      ways={[{ label: words.back, href: '#/today' }]}
      actions={
        <Button look="primary" href={`#/containers/${containerId}`}>
          {w.toContainer}
        </Button>
      }
    >
      {ended.body.reason !== undefined && (
        <Part>
          <p>{ended.body.reason}</p>
        </Part>
      )}
      {short && <Notice mark="wrong">{capital(fellShortText(short, sign.value))}</Notice>}
      <WhatItIs treatment={treatment} />
      <Next treatment={treatment} />
      <RunAsks treatment={treatment} />
      <InThePot treatment={treatment} />
      <RunHistory treatment={treatment} />
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
