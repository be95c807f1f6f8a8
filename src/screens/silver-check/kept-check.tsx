/** A test for silver that was written down: its outcome, its working, its waste. */
import { silverVerdict } from '../../safety/silver-check';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, momentText } from '../amounts';
import { Nowhere } from '../checklist/nowhere';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words as shared, streamName } from '../words';
import { LooksList, NextSteps } from './looks-list';
import { outcomeSecond, outcomeTitle, silverWords as w } from './words';

export function KeptCheckScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now, sign } = useShell();
  const told = state.value.silverChecks.get(at.check ?? '');
  if (!told) return <Nowhere>{w.noCheck}</Nowhere>;
  const { body, entryId, who } = told;
  const name = state.value.people.get(who ?? '')?.body.name;
  // What was concluded then stands, also where the scheme has learnt since.
  const verdict = { ...silverVerdict(body.looks), outcome: body.outcome };
  const sample = body.sample ? `, ${w.check.sample} ${amountText(body.sample, sign.value)}` : '';
  return (
    <Frame
      place="batches"
      title={outcomeTitle[body.outcome]}
      second={`${outcomeSecond[body.outcome]} ${momentText(told.at, now.value)}${name === undefined ? '' : `, ${name}`}${sample}.`}
    >
      <NextSteps verdict={verdict} />
      <LooksList verdict={verdict} />
      <Part rule title={w.check.wastes} width="edge">
        <Rows>
          {body.streamIds.length === 0 && (
            <Row
              title={w.check.noWaste}
              second={body.batchId === null ? undefined : w.check.logWaste}
              href={body.batchId === null ? undefined : `#/batches/${body.batchId}/log`}
            />
          )}
          {body.streamIds.map((id) => {
            const stream = state.value.streams.get(id);
            return (
              stream && (
                <Row
                  key={id}
                  title={streamName[stream.body.stream]}
                  figure={stream.body.liquid && amountText(stream.body.liquid.volume, sign.value)}
                  href={`#/streams/${id}`}
                />
              )
            );
          })}
        </Rows>
      </Part>
      <Part rule>
        <p>{shared.caution}</p>
        <Buttons>
          {body.batchId !== null && <Button href={`#/batches/${body.batchId}`}>{w.check.toBatch}</Button>}
          <Button href={`#/record/entry/${entryId}`}>{w.check.entry}</Button>
        </Buttons>
      </Part>
    </Frame>
  );
}
