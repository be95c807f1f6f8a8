/** All batches, the newest first. */
import { useMemo } from 'preact/hooks';
import type { BatchState } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row } from '../../ui/row';
import { amountText, dayText } from '../amounts';
import { FindDoor, LongAgo } from '../find/door';
import { Frame } from '../frame';
import { LongRows } from '../long-rows';
import { useShell } from '../shell';
import { capacitorWords, stepWords, batchWords as w } from './words';

function BatchRow({ batch: { body, at, steps } }: { readonly batch: BatchState }) {
  const { state, sign, now } = useShell();
  const step = state.value.steps.get(steps.at(-1) ?? '')?.body.step;
  const lastStep = step === undefined ? '' : (stepWords[step] ?? step);
  return (
    <Row
      title={unbroken(body.code)}
      second={`${w.feed(amountText(body.feed.mass, sign.value), capacitorWords[body.feed.capacitors])}. ${lastStep}`}
      figure={dayText(at, now.value)}
      href={`#/batches/${body.batchId}`}
    />
  );
}

const batchRow = (batch: BatchState) => <BatchRow key={batch.body.batchId} batch={batch} />;

export function BatchList() {
  const { batches } = useShell().state.value;
  const newestFirst = useMemo(() => [...batches.values()].toReversed(), [batches]);
  return (
    <Frame
      place="batches"
      title={w.title}
      actions={
        <Button look="primary" voice="serif" href="#/batches/new" second={w.openSecond}>
          {w.open}
        </Button>
      }
    >
      {newestFirst.length === 0 ? (
        <Part>
          <p>{w.none}</p>
        </Part>
      ) : (
        <>
          <FindDoor />
          <LongRows of={newestFirst} row={batchRow} label={w.title} />
          <LongAgo is="batch" />
        </>
      )}
    </Frame>
  );
}
