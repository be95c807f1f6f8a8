/** Corrects an entry: the quantities and free texts in it, and when it happened. The rest stays. */
import { useState } from 'preact/hooks';
import type { PlainBody } from '../../ledger/entries/body';
import type { HistoryLine } from '../../ledger/state';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { words } from '../words';
import {
  CorrectFields,
  correctFieldsOf,
  readCorrection,
  readPart,
  reasonFault,
  textPartFault,
  whenFault,
} from './correct-fields';
import { entryTitle, entryWords as w } from './entry-words';
import { type Correctable, correctable, keyOf } from './leaves';
import { inOrder, partText } from './part-words';

export function CorrectScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { history } = useShell().state.value;
  const line = history.find(({ entry }) => entry.id === at.entry);
  const body = line?.body;
  if (!line || !body) return <Frame place="record" title={w.gone} />;
  if (body.kind === 'entry-corrected' || body.kind === 'entry-withdrawn')
    return <Frame place="record" title={w.correctTitle} second={w.notCorrectable} />;
  return <CorrectForm line={line} body={body} />;
}

function CorrectForm({ line, body }: { readonly line: HistoryLine; readonly body: PlainBody }) {
  const { state, go, sign, now, moment } = useShell();
  const { id } = line.entry;
  const { value, change, done } = useForm(`correct:${id}`, CorrectFields, () =>
    correctFieldsOf(body, line.at),
  );
  const { tried, tryNow } = useTried();
  const [unread, setUnread] = useState<string | null>(null);
  const { write, fault, busy } = useWriting();
  const parts = inOrder(correctable(body));
  const leave = (): void => {
    done();
    go(`record/entry/${id}`);
  };
  async function keep(): Promise<void> {
    tryNow();
    const read = readCorrection(line, body, value, moment());
    setUnread(read.ok ? null : read.fault);
    if (read.ok && (await write(read.intention))) leave();
  }
  return (
    <Frame
      place="record"
      title={`${w.correctTitle}: ${entryTitle(state.value, line.entry.body, sign.value)}`}
      second={parts.length === 0 ? w.notCorrectable : w.correctHint}
      ways={[
        { label: words.cancel, onTap: leave },
        { label: w.keepCorrection, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Part rule>
        {parts.map((part) => (
          <CorrectPart key={keyOf(part.path)} {...{ part, body, value, change, tried }} />
        ))}
        <TextField
          label={w.when}
          kind="datetime-local"
          value={value.when}
          onInput={(when) => change({ when })}
          error={whenFault(value, line.at, now.value)}
        />
        <TextField
          label={w.why}
          kind="lines"
          value={value.reason}
          onInput={(reason) => change({ reason })}
          hint={w.whyHint}
          error={tried ? reasonFault(value) : undefined}
          maxLength={2000}
          required
        />
        <Fault words={unread ?? fault} />
      </Part>
    </Frame>
  );
}

type PartProps = {
  readonly part: Correctable;
  readonly body: PlainBody;
  readonly value: CorrectFields;
  readonly change: (part: Partial<CorrectFields>) => void;
  readonly tried: boolean;
};

function CorrectPart({ part, body, value, change, tried }: PartProps) {
  const key = keyOf(part.path);
  const label = partText(body, part.path);
  if (part.is === 'quantity')
    return (
      <NumberField
        label={label}
        field={value.numbers[key] ?? { typed: '', unit: part.unit }}
        onChange={(field) => change({ numbers: { ...value.numbers, [key]: field } })}
        read={readPart(part, value)}
        tried={tried}
        units={part.units}
      />
    );
  return (
    <TextField
      label={label}
      kind={part.day ? 'date' : part.value.length > 40 ? 'lines' : 'text'}
      rows={2}
      value={value.texts[key] ?? ''}
      onInput={(typed) => change({ texts: { ...value.texts, [key]: typed } })}
      hint={part.mayGo ? words.optional : undefined}
      error={tried ? textPartFault(part, value) : undefined}
    />
  );
}
