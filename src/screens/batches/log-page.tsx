/** The frame of both forms that log a waste: how it looked, where it goes, and keeping it. */

import type { ComponentChildren } from 'preact';
import type { Amount } from '../../ledger/entries/containers';
import type { StreamLogged } from '../../ledger/entries/streams';
import { codeOfBatch } from '../../ledger/put-away';
import type { Refusal } from '../../ledger/refusal';
import type { StreamKind } from '../../safety/stream-kind';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { isApart } from '../apart/refused';
import { Begun } from '../begun';
import { Fault } from '../fault';
import type { Form } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { momentStated, When } from '../when';
import { refusalWords, streamName, words } from '../words';
import { IntoContainer, type IntoDraft } from './into-container';
import { useKeepStream } from './keep-stream';
import { NotInto } from './not-into';
import { logWords as w } from './words';

type Shared = { readonly into: IntoDraft; readonly colour: string; readonly when: string };

/** What the form comes to, as it would be written; null while a line is missing or wrong. */
export type Readable = {
  readonly part: Pick<StreamLogged, 'liquid' | 'solid'>;
  readonly amount: Amount;
} | null;

type Props<D extends Shared> = {
  readonly batchId: string;
  readonly kind: StreamKind;
  readonly form: Form<D>;
  readonly readable: Readable;
  /** The lines of this form, told whether the person has tried to go on. */
  readonly lines: (tried: boolean) => ComponentChildren;
  readonly above?: ComponentChildren;
};

export function LogPage<D extends Shared>({ batchId, kind, form, readable, lines, above }: Props<D>) {
  const shell = useShell();
  const { tried, tryNow } = useTried();
  const { into, colour, when } = form.value;
  const change = (part: Partial<Shared>) => form.change(part as Partial<D>);
  const keeping = useKeepStream(form, (where) => change({ into: { ...into, where } }));
  const complete = readable !== null && into.where !== '' && momentStated(when, shell.moment()) !== null;
  async function keep(seen: Refusal | null, card: string | null = null): Promise<void> {
    tryNow();
    if (!complete) return;
    const stream = stated(readable);
    await keeping.keep({ stream, amount: readable.amount, into, when }, seen, card);
  }
  const stated = ({ part }: NonNullable<Readable>) => ({
    batchId,
    stepId: null,
    stream: kind,
    ...part,
    ...given('colour', colour),
  });
  if (readable && isApart(keeping.refusal))
    return (
      <NotInto
        refusal={keeping.refusal}
        into={into}
        waste={stated(readable)}
        amount={readable.amount}
        busy={keeping.busy}
        onPlace={(where) => change({ into: { ...into, where } })}
        onAlready={(card) => void keep(keeping.refusal, card)}
        onBack={keeping.forget}
      />
    );
  return (
    <Frame
      title={w.title(streamName[kind], unbroken(codeOfBatch(shell.state.value, batchId) ?? ''))}
      ways={[
        { label: words.back, href: `#/batches/${batchId}/log` },
        {
          label: w.keep(streamName[kind]),
          onTap: () => void keep(null),
          strong: true,
          disabled: keeping.busy,
        },
      ]}
    >
      <Begun form={form} />
      {above}
      <Part>
        {lines(tried)}
        <TextField
          label={w.colour}
          value={colour}
          maxLength={120}
          hint={words.optional}
          onInput={(text) => change({ colour: text })}
        />
        <IntoContainer into={into} onChange={(chosen) => change({ into: chosen })} tried={tried} />
        <When value={when} onInput={(stated) => change({ when: stated })} />
        <Fault words={keeping.refusal ? refusalWords(keeping.refusal) : keeping.fault} />
        {keeping.refusal && (
          <Button disabled={keeping.busy} onTap={() => void keep(keeping.refusal)}>
            {w.happened}
          </Button>
        )}
        {tried && !complete && <Fault words={words.number.look} />}
      </Part>
    </Frame>
  );
}
