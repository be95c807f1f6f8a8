/** Start a step: what comes next in this batch, and whether its list must be gone through. */
import { codeOfBatch } from '../../ledger/put-away';
import { batchOf, requiredBefore, type StepOffer, stepOffers } from '../../ledger/step-offers';
import { treatmentStep } from '../../ledger/treatment';
import { begin, standing } from '../../safety/checklist-run';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { dilutionWords } from '../dilution/words';
import { Frame, hour } from '../frame';
import { type Shell, useShell } from '../shell';
import { KeptRun, runDraft } from './kept-run';
import { partOf } from './list-for';
import { Nowhere } from './nowhere';
import { PersonFirst } from './person-first';
import { placeWords } from './place-words';
import { usePlace } from './use-place';
import { words } from './words';

type Props = { readonly batchId: string };

/** How far a list has got that waits for the person. */
function pausedWords({ draft, person }: Shell, list: string, batchId: string): string | null {
  const kept = draft.read(runDraft(list, batchId), KeptRun);
  if (!kept || kept.run.context.person !== person.value) return null;
  const now = standing(kept.run);
  if (now.state === 'stopped') return words.step.stopped;
  return now.state === 'next' ? words.step.paused(now.number, now.of) : words.step.answered;
}

function hrefOf({ list, clearance }: StepOffer, batchId: string): string {
  if (list.step === treatmentStep) return '#/treatment/begin';
  return clearance
    ? `#/clearance/${clearance.entryId}`
    : `#/check/${partOf({ batchId: batchOf(list, batchId) })}/${list.id}`;
}

/** As many as will be asked here: the place that is known asks for less. */
function useQuestions({ list }: StepOffer): string {
  const { moment } = useShell();
  const { place } = usePlace(list);
  const fresh = standing(begin(list, { person: '', batchId: null, ...(place ? { place } : {}) }, moment()));
  const asked = fresh.state === 'next' ? fresh.of - fresh.number + 1 : list.items.length;
  return words.step.questions(asked);
}

/** Its clearance, how far its list has got, or how much is asked. */
function useHow(offer: StepOffer, batchId: string): string {
  const shell = useShell();
  const { list, clearance, running } = offer;
  const until = clearance?.body.validUntil ?? null;
  const held = until === null ? null : words.step.cleared(hour(until));
  const questions = useQuestions(offer);
  const how = held ?? pausedWords(shell, list.id, partOf({ batchId: batchOf(list, batchId) })) ?? questions;
  return running ? `${words.step.runs(hour(running.at))}. ${how}` : how;
}

const Offer = ({
  offer,
  batchId,
  marked,
}: Props & { readonly offer: StepOffer; readonly marked: boolean }) => (
  <Row
    title={offer.list.title}
    second={useHow(offer, batchId)}
    mark={offer.clearance ? <Mark kind="clearance" /> : undefined}
    start={marked ? 'text' : 'margin'}
    href={hrefOf(offer, batchId)}
  />
);

const Likely = ({
  offer,
  batchId,
  first,
}: Props & { readonly offer: StepOffer; readonly first: string | null }) => {
  const how = useHow(offer, batchId);
  return (
    <Button
      look="primary"
      voice="serif"
      href={hrefOf(offer, batchId)}
      second={first === null ? how : words.step.first(first)}
    >
      {offer.list.title}
    </Button>
  );
};

function Steps({ batchId }: Props) {
  const { state, person, station, now } = useShell();
  const asking = { batchId, stationId: station.value, who: person.value, at: now.value };
  const [likely, ...others] = stepOffers(state.value, asking);
  if (!likely) return null;
  const [required] = requiredBefore(state.value, likely.list, asking);
  const batch = codeOfBatch(state.value, batchId) ?? '';
  const place = state.value.stations.get(station.value ?? '')?.body.name;
  return (
    <Frame
      title={words.step.title}
      second={`${unbroken(batch)}. ${words.step.likely}`}
      ways={[{ label: words.step.back, href: `#/batches/${batchId}` }]}
      actions={<Likely offer={likely} batchId={batchId} first={required?.title ?? null} />}
    >
      <Part width="edge">
        <Rows>
          <Row
            title={placeWords.at}
            second={place ?? placeWords.notChosen}
            href={`#/batches/${batchId}/where`}
          />
          <Row
            title={dilutionWords.open}
            second={dilutionWords.openSecond}
            href={`#/batches/${batchId}/dilution`}
          />
        </Rows>
      </Part>
      <Part width="edge" title={words.step.others}>
        <Rows>
          {others.map((offer) => (
            <Offer
              key={offer.list.id}
              offer={offer}
              batchId={batchId}
              marked={others.some(({ clearance }) => clearance !== null)}
            />
          ))}
          <Row
            title={words.step.already}
            second={words.step.alreadySecond}
            start={others.some(({ clearance }) => clearance !== null) ? 'text' : 'margin'}
            href={`#/batches/${batchId}/already`}
          />
        </Rows>
      </Part>
    </Frame>
  );
}

export function StepChoice({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const batchId = at.batch ?? '';
  if (!state.value.batches.has(batchId)) return <Nowhere>{words.step.noBatch}</Nowhere>;
  return (
    <PersonFirst>
      <Steps batchId={batchId} />
    </PersonFirst>
  );
}
