/** Putting waste into a container: what was logged and stands nowhere yet, or a new log. */
import * as z from 'zod/mini';
import { isNothing, isVolume, restToPlace } from '../../ledger/amounts';
import type { Amount } from '../../ledger/entries/containers';
import { mayHaveHappened } from '../../ledger/refused-plan';
import type { State, StreamState } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, heldText, streamTitle } from '../amounts';
import { Fault, useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { momentStated, When, WhenDraft } from '../when';
import { words } from '../words';
import { containerWords as w } from './words';

const unplacedIn = (state: State): readonly StreamState[] =>
  [...state.streams.values()].filter(({ unplaced }) => !isNothing(unplaced));

export function PutIn({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, sign } = useShell();
  const id = at.id ?? '';
  const code = state.value.containers.get(id)?.body.code ?? '';
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

export function PlaceStream({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, sign, moment } = useShell();
  const [id, streamId] = [at.id ?? '', at.stream ?? ''];
  const code = state.value.containers.get(id)?.body.code ?? '';
  const stream = state.value.streams.get(streamId);
  const form = useForm(`place-${id}-${streamId}`, Draft, () => ({
    amount: typed(stream?.body.liquid ? 'L' : 'g'),
    when: '',
  }));
  const { write, fault, refusal, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const title = w.placeTitle(streamTitle(state.value, streamId), unbroken(code));
  const ways = [{ label: words.back, href: `#/containers/${id}/in` }];
  if (!stream) return <Frame title={title} ways={ways} />;
  const read = readTyped<Amount['unit']>(form.value.amount, { aboveZero: true });
  async function place(amount: Amount, how: 'place-stream' | 'log-placement-happened'): Promise<void> {
    const at = momentStated(form.value.when, moment());
    if (at === null) return;
    const written = await write({ do: how, streamId, containerId: id, amount }, at);
    if (!written) return;
    form.done();
    go(`containers/${id}`, 'replace');
  }
  const rest = restToPlace(stream);
  const wanted = read.state === 'written' ? (read.written as Amount) : rest;
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
