/** A question of our own falls away; what was answered to it stays. */
import * as z from 'zod/mini';
import { workshopLists } from '../../ledger/workshop-lists';
import type { Item } from '../../safety/checklist-item';
import type { Checklist } from '../../safety/checklist-schema';
import { faultOf } from '../../safety/own-lists';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { ownFaultWords } from '../own-fault-words';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { words } from '../words';
import { listsWords, dropWords as w } from './words';

const DropDraft = z.object({ note: z.string() });

function Drop({ list, item }: { readonly list: Checklist; readonly item: Item }) {
  const { go } = useShell();
  const form = useForm(`drop:${list.id}:${item.id}`, DropDraft, () => ({ note: '' }));
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting(form);
  const change = {
    change: 'item-dropped',
    list: list.id,
    item: item.id,
    ...given('note', form.value.note),
  } as const;
  const wrong = faultOf(list, change);
  async function keep(): Promise<void> {
    tryNow();
    if (wrong || !(await write({ do: 'change-list', change }))) return;
    form.done();
    go(`record/lists/${list.id}`, 'replace');
  }
  return (
    <Frame
      place="record"
      title={w.title}
      second={item.ask}
      ways={[
        { label: words.cancel, href: `#/record/lists/${list.id}/${item.id}` },
        { label: w.keep, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Part>
        <p>{w.second}</p>
        {item.stop && <p>{w.stopped}</p>}
        <TextField
          label={w.note}
          kind="lines"
          value={form.value.note}
          onInput={(note) => form.change({ note })}
          hint={item.stop ? undefined : words.optional}
          error={tried && wrong ? ownFaultWords(wrong) : undefined}
          maxLength={240}
        />
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}

export function DropScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const list = workshopLists(state.value).get(at.list ?? '');
  const item = list?.items.find(({ id, own }) => id === at.item && own);
  return list && item ? (
    <Drop list={list} item={item} />
  ) : (
    <Frame place="record" title={list ? listsWords.noItem : listsWords.gone} />
  );
}
