/** All batches, the newest first. */
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, dayText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { capacitorWords, stepWords, batchWords as w } from './words';

export function BatchList() {
  const { state, sign, now } = useShell();
  const batches = [...state.value.batches.values()].toReversed();
  const lastStep = (ids: readonly string[]): string | undefined => {
    const step = state.value.steps.get(ids.at(-1) ?? '')?.body.step;
    return step && (stepWords[step] ?? step);
  };
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
      {batches.length === 0 ? (
        <Part>
          <p>{w.none}</p>
        </Part>
      ) : (
        <Rows label={w.title}>
          {batches.map(({ body, at, steps }) => (
            <Row
              key={body.batchId}
              title={unbroken(body.code)}
              second={`${w.feed(amountText(body.feed.mass, sign.value), capacitorWords[body.feed.capacitors])}. ${lastStep(steps) ?? ''}`}
              figure={dayText(at, now.value)}
              href={`#/batches/${body.batchId}`}
            />
          ))}
        </Rows>
      )}
    </Frame>
  );
}
