/** Putting waste into a container: what was logged and stands nowhere yet, or a new log. */

import * as z from 'zod/mini';
import { asHeld, isNothing, isVolume, placedAmount, restToPlace } from '../../ledger/amounts';
import type { Amount } from '../../ledger/entries/containers';
import { streamSide } from '../../ledger/meeting-sides';
import { placesThatFit } from '../../ledger/places-that-fit';
import { codeOfContainer } from '../../ledger/put-away';
import { mayHaveHappened } from '../../ledger/refused-plan';
import type { ContainerState, State, StreamState } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, heldText, streamTitle } from '../amounts';
import { type ApartRefusal, cardOf, cardThen, isApart, refusedFor } from '../apart/refused';
import { RefusedTransfer } from '../apart/refused-transfer';
import { Fault, useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { unplacedDrawing, vesselDrawing } from '../vessel-drawing';
import { momentStated, When, WhenDraft } from '../when';
import { words } from '../words';
import { containerWords as w } from './words';

const unplacedIn = (state: State): readonly StreamState[] =>
  [...state.streams.values()].filter(({ unplaced }) => !isNothing(unplaced));

export function PutIn({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, sign } = useShell();
  const id = at.id ?? '';
  const code = codeOfContainer(state.value, id) ?? '';
  const streams = unplacedIn(state.value);
  return (
    <Frame
      title={w.putInTitle(unbroken(code))}
      ways={[{ label: words.back, href: `#/containers/${id}` }]}
      actions={
        <Button look="primary" href="#/batches" second={w.logNewSecond}>
          {w.logNew}
        </Button>
      }
    >
      <Part title={w.unplaced} width="edge">
        <Rows>
          {streams.length === 0 && <Row title={w.unplacedNone} />}
          {streams.map(({ body, unplaced }) => (
            <Row
              key={body.streamId}
              title={streamTitle(state.value, body.streamId)}
              figure={heldText(unplaced, sign.value)}
              href={`#/containers/${id}/in/${body.streamId}`}
            />
          ))}
        </Rows>
      </Part>
    </Frame>
  );
}

const Draft = z.object({ amount: Typed, when: WhenDraft });

type NotInHereProps = {
  readonly container: ContainerState;
  readonly stream: StreamState;
  readonly wanted: Amount;
  readonly refusal: ApartRefusal;
  readonly busy: boolean;
  readonly onPlace: (containerId: string) => void;
  readonly onAlready: (card: string) => void;
  readonly onBack: () => void;
};

/** The waste and the container that it must not go into. */
function NotInHere({ container, stream, wanted, refusal, onAlready, ...rest }: NotInHereProps) {
  const { state, go } = useShell();
  const { streamId } = stream.body;
  const side = streamSide(state.value, streamId);
  const added = placedAmount(wanted, stream.body) ?? asHeld(wanted);
  const refused = refusedFor(state.value, refusal, { side }, container.body);
  const filling = { added, side, field: 'containerId' };
  return (
    <RefusedTransfer
      {...rest}
      refused={refused}
      from={{ code: null, drawing: unplacedDrawing(added) }}
      into={{ code: container.body.code, drawing: vesselDrawing(state.value, container) }}
      places={placesThatFit(state.value, filling, [container.body.containerId])}
      onNew={() => go(`containers/new/for/${streamId}`)}
      onAlready={() => onAlready(cardOf(refused))}
    />
  );
}

const draftOf = (containerId: string, streamId: string): string => `place-${containerId}-${streamId}`;

export function PlaceStream({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, sign, moment, draft } = useShell();
  const [id, streamId] = [at.id ?? '', at.stream ?? ''];
  const container = state.value.containers.get(id);
  const code = container?.body.code ?? '';
  const stream = state.value.streams.get(streamId);
  const form = useForm(draftOf(id, streamId), Draft, () => ({
    amount: typed(stream?.body.liquid ? 'L' : 'g'),
    when: '',
  }));
  const { write, fault, setFault, refusal, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const title = w.placeTitle(streamTitle(state.value, streamId), unbroken(code));
  const ways = [{ label: words.back, href: `#/containers/${id}/in` }];
  if (!stream) return <Frame title={title} ways={ways} />;
  const read = readTyped<Amount['unit']>(form.value.amount, { aboveZero: true });
  async function place(
    amount: Amount,
    how: 'place-stream' | 'log-placement-happened',
    then = `containers/${id}`,
  ): Promise<void> {
    const at = momentStated(form.value.when, moment());
    if (at === null) return;
    const written = await write({ do: how, streamId, containerId: id, amount }, at);
    if (!written) return;
    form.done();
    go(then, 'replace');
  }
  const rest = restToPlace(stream);
  const wanted = read.state === 'written' ? (read.written as Amount) : rest;
  if (container && isApart(refusal))
    return (
      <NotInHere
        {...{ container, stream, wanted, refusal, busy }}
        onPlace={(other) => {
          draft.keep(draftOf(other, streamId), form.value);
          form.done();
          go(`containers/${other}/in/${streamId}`, 'replace');
        }}
        onAlready={(card) => void place(wanted, 'log-placement-happened', cardThen(card, id))}
        onBack={() => setFault(null)}
      />
    );
  return (
    <Frame
      title={title}
      ways={ways}
      actions={
        <>
          <Fault words={fault} />
          {refusal && mayHaveHappened(refusal) && (
            <Button disabled={busy} onTap={() => void place(wanted, 'log-placement-happened')}>
              {w.happenedAnyway}
            </Button>
          )}
          <Button
            look="primary"
            disabled={busy}
            onTap={() => {
              tryNow();
              if (read.state !== 'wrong') void place(wanted, 'place-stream');
            }}
          >
            {read.state === 'written' ? w.placeIt : w.all(amountText(rest, sign.value))}
          </Button>
        </>
      }
    >
      <Part>
        <NumberField
          label={w.howMuch}
          field={form.value.amount}
          units={isVolume(rest) ? ['L', 'mL', 'US gal'] : ['g', 'kg', 'lb']}
          onChange={(amount) => form.change({ amount })}
          read={read}
          tried={tried}
          optional
          hint={w.all(amountText(rest, sign.value))}
        />
        <When value={form.value.when} onInput={(when) => form.change({ when })} />
      </Part>
    </Frame>
  );
}
