/** Taking something out of a container: into another, as a sample, spilled, into a treatment pot. */
import * as z from 'zod/mini';
import { asHeld, nothing, unitsOf } from '../../ledger/amounts';
import type { Amount } from '../../ledger/entries/containers';
import { contentsSide } from '../../ledger/meeting-sides';
import { placesThatFit } from '../../ledger/places-that-fit';
import { mayHaveHappened } from '../../ledger/refused-plan';
import type { ContainerState } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { contentsTitle } from '../amounts';
import { type ApartRefusal, cardOf, cardThen, isApart, refusedFor } from '../apart/refused';
import { RefusedTransfer } from '../apart/refused-transfer';
import { useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { KeepButton } from '../keep-button';
import { NoteAndWhen } from '../note-and-when';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { vesselDrawing } from '../vessel-drawing';
import { momentStated, WhenDraft } from '../when';
import { words } from '../words';
import { containerChoice, hereFirst } from './container-choice';
import { containerWords as w } from './words';

/** Of the form that takes out of a container. */
export const takeOutDraft = (containerId: string): string => `out-${containerId}`;

export const TakeOutDraft = z.object({
  amount: Typed,
  purpose: z.enum(['transfer', 'sample', 'spill', 'treatment']),
  into: z.string(),
  note: z.string(),
  when: WhenDraft,
});
export type TakeOutDraft = z.infer<typeof TakeOutDraft>;

/** The form with an amount in it already, for who comes from where that is known. */
export const takeOutOf = ({ value, unit }: Amount, purpose: TakeOutDraft['purpose']): TakeOutDraft => ({
  amount: { typed: value, unit },
  purpose,
  into: '',
  note: '',
  when: '',
});

type NotIntoProps = {
  readonly from: ContainerState;
  readonly into: ContainerState;
  readonly amount: Amount;
  readonly refusal: ApartRefusal;
  readonly busy: boolean;
  readonly onPlace: (containerId: string) => void;
  readonly onAlready: (card: string) => void;
  readonly onBack: () => void;
};

/** Both containers, and what is in them must not meet. */
function NotInto({ from, into, amount, refusal, onAlready, ...rest }: NotIntoProps) {
  const { state, go } = useShell();
  const [fromId, intoId] = [from.body.containerId, into.body.containerId];
  const side = contentsSide(state.value, fromId);
  const refused = refusedFor(state.value, refusal, { side }, into.body);
  const filling = { added: asHeld(amount), side, field: 'toContainerId' };
  return (
    <RefusedTransfer
      {...rest}
      refused={refused}
      from={{ code: from.body.code, drawing: vesselDrawing(state.value, from) }}
      into={{ code: into.body.code, drawing: vesselDrawing(state.value, into) }}
      places={placesThatFit(state.value, filling, [fromId, intoId])}
      onNew={() => go(`containers/new/from/${fromId}`)}
      onAlready={() => onAlready(cardOf(refused))}
    />
  );
}

export function TakeOut({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, sign, moment } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const form = useForm(takeOutDraft(id), TakeOutDraft, () => ({
    amount: typed(unitsOf(container?.holds ?? nothing)[0]),
    purpose: 'transfer' as const,
    into: '',
    note: '',
    when: '',
  }));
  const { write, fault, setFault, refusal, busy } = useWriting(form);
  const { tried, tryNow } = useTried();
  const { amount, purpose, into, note, when } = form.value;
  const read = readTyped<Amount['unit']>(amount, { aboveZero: true });
  const others = hereFirst(state.value).filter(({ body }) => body.containerId !== id);
  const missing = purpose === 'transfer' && into === '';
  async function keep(how: 'move-contents' | 'log-move-happened', then = `containers/${id}`): Promise<void> {
    tryNow();
    const at = momentStated(when, moment());
    if (read.state !== 'written' || missing || at === null) return;
    const moved = {
      fromContainerId: id,
      toContainerId: purpose === 'transfer' ? into : null,
      amount: read.written as Amount,
      purpose,
      ...given('note', note),
    };
    const written = await write({ do: how, ...moved }, at);
    if (!written) return;
    form.done();
    go(then, 'replace');
  }
  const target = state.value.containers.get(into);
  if (container && target && isApart(refusal) && read.state === 'written')
    return (
      <NotInto
        {...{ refusal, busy }}
        from={container}
        into={target}
        amount={read.written as Amount}
        onPlace={(other) => form.change({ into: other })}
        onAlready={(card) => void keep('log-move-happened', cardThen(card, into))}
        onBack={() => setFault(null)}
      />
    );
  return (
    <Frame
      title={w.takeOutTitle(unbroken(container?.body.code ?? ''))}
      second={contentsTitle(state.value, id)}
      ways={[{ label: words.back, href: `#/containers/${id}` }]}
      actions={
        <KeepButton fault={fault} busy={busy} keep={() => keep('move-contents')} label={w.takeItOut}>
          {refusal && mayHaveHappened(refusal) && (
            <Button disabled={busy} onTap={() => void keep('log-move-happened')}>
              {w.happenedAnyway}
            </Button>
          )}
        </KeepButton>
      }
    >
      <Part>
        <NumberField
          label={w.takeOut}
          field={amount}
          units={unitsOf(container?.holds ?? nothing)}
          onChange={(changed) => form.change({ amount: changed })}
          read={read}
          tried={tried}
        />
        <SelectField
          label={w.whereTo}
          value={purpose}
          options={(Object.entries(w.purposes) as [typeof purpose, string][]).map(([value, label]) => ({
            value,
            label,
          }))}
          onChoose={(chosen) => form.change({ purpose: chosen })}
        />
        {purpose === 'transfer' && (
          <SelectField
            label={w.into}
            value={into === '' ? undefined : into}
            none={words.choose}
            options={others.map((other) => containerChoice(state.value, other, sign.value))}
            onChoose={(chosen) => form.change({ into: chosen })}
            error={tried && missing ? words.choice.missing : undefined}
          />
        )}
        <NoteAndWhen form={form} label={w.note} />
      </Part>
    </Frame>
  );
}
