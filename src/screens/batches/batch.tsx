/** One batch: its steps in order, what came out, its checklists. */

import { isNothing } from '../../ledger/amounts';
import { codeOfContainer } from '../../ledger/put-away';
import type { BatchState, State } from '../../ledger/state';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, dayText, heldText } from '../amounts';
import { Frame, hour } from '../frame';
import { useShell } from '../shell';
import { BatchChecks } from '../silver-check/batch-checks';
import { BatchVentilation } from '../ventilation/batch-ventilation';
import { streamName } from '../words';
import { ChargedAndGotBack, ClosureRows } from './account-part';
import { BatchTreatments } from './batch-treatments';
import { StepRow } from './step-row';
import { capacitorWords, batchWords as w } from './words';

type Props = { readonly state: State; readonly batch: BatchState };

const Steps = ({ state, batch }: Props) => (
  <Part rule title={w.steps} width="edge">
    <Rows>
      {batch.steps.length === 0 && <Row title={w.stepsNone} />}
      {batch.steps.map((id) => {
        const step = state.steps.get(id);
        return step && <StepRow key={id} step={step} />;
      })}
    </Rows>
  </Part>
);

function Streams({ state, batch }: Props) {
  const { sign } = useShell();
  return (
    <Part rule title={w.streams} width="edge">
      <Rows>
        {batch.streamIds.length === 0 && <Row title={w.streamsNone} />}
        {batch.streamIds.map((id) => {
          const stream = state.streams.get(id);
          if (!stream) return null;
          const where = stream.placements.map(({ containerId }) =>
            unbroken(codeOfContainer(state, containerId) ?? ''),
          );
          const open = !isNothing(stream.unplaced);
          return (
            <Row
              key={id}
              title={streamName[stream.body.stream]}
              second={open ? w.notPlaced : [...new Set(where)].join(', ')}
              {...(open ? { mark: <Mark kind="unknown" /> } : { start: 'text' as const })}
              figure={heldText(stream.amount, sign.value)}
              href={`#/streams/${id}`}
            />
          );
        })}
      </Rows>
    </Part>
  );
}

const Lists = ({ state, batch }: Props) => {
  const { now } = useShell();
  if (batch.checklists.length === 0) return null;
  return (
    <Part rule title={w.lists} width="edge">
      <Rows>
        {batch.checklists.toReversed().map((id) => {
          const list = state.checklists.get(id)?.body;
          if (!list) return null;
          const stopped = list.outcome === 'stopped';
          return (
            <Row
              key={id}
              {...(list.late && !stopped
                ? { start: 'text' as const }
                : { mark: <Mark kind={stopped ? 'stop' : 'clearance'} /> })}
              title={list.checklist.title}
              second={
                stopped
                  ? w.stopped
                  : list.validUntil === null
                    ? w.late
                    : w.validUntil(`${dayText(list.validUntil, now.value)} ${hour(list.validUntil)}`)
              }
              href={`#/record/entry/${id}`}
            />
          );
        })}
      </Rows>
    </Part>
  );
};

export function BatchScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, sign } = useShell();
  const batch = state.value.batches.get(at.batch ?? '');
  if (!batch)
    return (
      <Frame place="batches" title={w.title}>
        <Part>
          <p>{w.gone}</p>
        </Part>
      </Frame>
    );
  const { batchId, code, feed } = batch.body;
  const props = { state: state.value, batch };
  return (
    <Frame
      place="batches"
      title={w.batch(unbroken(code))}
      second={w.feed(amountText(feed.mass, sign.value), capacitorWords[feed.capacitors])}
      actions={
        <Buttons>
          <Button look="primary" voice="serif" href={`#/batches/${batchId}/step`} second={w.startStepSecond}>
            {w.startStep}
          </Button>
          <Button href={`#/batches/${batchId}/log`} second={w.logSecond}>
            {w.log}
          </Button>
        </Buttons>
      }
    >
      <Steps {...props} />
      <BatchChecks batchId={batchId} />
      <BatchVentilation batchId={batchId} />
      <Streams {...props} />
      <BatchTreatments {...props} />
      <ChargedAndGotBack {...props} />
      <ClosureRows {...props} />
      <Lists {...props} />
      <Part rule width="edge">
        <Rows>
          <Row title={w.history} second={w.historySecond} href={`#/batches/${batchId}/history`} />
        </Rows>
      </Part>
    </Frame>
  );
}
