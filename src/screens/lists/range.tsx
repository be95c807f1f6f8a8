/** Another range for a reading: tighter at any time, wider with a reason and a mark that stays. */
import * as z from 'zod/mini';
import { workshopLists } from '../../ledger/workshop-lists';
import type { ReadingItem } from '../../safety/checklist-item';
import type { Checklist } from '../../safety/checklist-schema';
import { changedList, faultOf, type OwnChange } from '../../safety/own-lists';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Begun } from '../begun';
import { rangeText } from '../checklist/words';
import { Fault, useWriting } from '../fault';
import { Typed, useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { words } from '../words';
import { shippedOf } from './item-text';
import { LimitField, limitsRead } from './limit-field';
import { listsWords, rangeWords as w } from './words';

const RangeDraft = z.object({ low: Typed, high: Typed, note: z.string() });
type RangeDraft = z.infer<typeof RangeDraft>;

type Props = { readonly list: Checklist; readonly item: ReadingItem };

/** How it would stand beside ours; null while it cannot be said. */
function markOf({ list, item }: Props, change: OwnChange): 'tightened' | 'loosened' | 'same' | null {
  const fault = faultOf(list, change);
  if (fault) return fault.code === 'note-missing' ? 'loosened' : null;
  const after = changedList(list, [change]).list.items.find(({ id }) => id === item.id);
  return after?.kind === 'reading' ? (after.range ?? 'same') : null;
}

function changeOf({ list, item }: Props, { low, high, note }: RangeDraft) {
  const limits = limitsRead(low, high);
  const range = { change: 'range', list: list.id, item: item.id } as const;
  return limits && { ...range, ...limits, ...given('note', note) };
}

function RangeForm(props: Props) {
  const { list, item } = props;
  const { sign, go } = useShell();
  const here = `record/lists/${list.id}/${item.id}`;
  const shown = (digits: string | undefined) => ({
    typed: digits?.replace('.', sign.value) ?? '',
    unit: item.unit,
  });
  const form = useForm(`range:${list.id}:${item.id}`, RangeDraft, () => ({
    low: shown(item.min),
    high: shown(item.max),
    note: '',
  }));
  const { value, change, done } = form;
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting(form);
  const ours = shippedOf(item);
  const asked = changeOf(props, value);
  const mark = asked && markOf(props, asked);
  const missing = mark === 'loosened' && item.own !== true && value.note.trim() === '';
  const leave = (): void => {
    done();
    go(here);
  };
  async function keep(): Promise<void> {
    tryNow();
    const now = changeOf(props, form.latest());
    if (!now || missing) return;
    if (await write({ do: 'change-list', change: now })) leave();
  }
  return (
    <Frame
      place="record"
      title={w.title(item.ask)}
      second={w.second(rangeText(ours, sign.value))}
      ways={[
        { label: words.cancel, onTap: leave },
        { label: w.keep, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Begun form={form} />
      <Part rule>
        <LimitField label={w.lowest} field={value.low} onChange={(low) => change({ low })} tried={tried} />
        <LimitField
          label={w.highest}
          field={value.high}
          onChange={(high) => change({ high })}
          tried={tried}
        />
        {item.range !== undefined && (
          <Button onTap={() => change({ low: shown(ours.min), high: shown(ours.max) })}>{w.oursAgain}</Button>
        )}
      </Part>
      {mark && item.own !== true && (
        <Notice mark={mark === 'loosened' ? 'wrong' : 'candidate'} role="status">
          {w[mark]}
        </Notice>
      )}
      <Part>
        <TextField
          label={w.note}
          kind="lines"
          value={value.note}
          onInput={(note) => change({ note })}
          hint={mark === 'loosened' && item.own !== true ? undefined : words.optional}
          error={tried && missing ? w.whyMissing : undefined}
          maxLength={240}
        />
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}

export function RangeScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const list = workshopLists(state.value).get(at.list ?? '');
  const item = list?.items.find(({ id }) => id === at.item);
  return list && item?.kind === 'reading' ? (
    <RangeForm list={list} item={item} />
  ) : (
    <Frame place="record" title={list ? listsWords.noItem : listsWords.gone} />
  );
}
