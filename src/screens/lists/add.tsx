/** A question of our own: what is asked, how it is answered, whether it stops the step, and why we ask it. */
import { workshopLists } from '../../ledger/workshop-lists';
import { Unit } from '../../safety/checklist-item';
import { type Checklist, isWalk } from '../../safety/checklist-schema';
import { Button } from '../../ui/button';
import { Choices, Tick } from '../../ui/choices';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { Begun } from '../begun';
import { Fault, useWriting } from '../fault';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { words } from '../words';
import { AddFields, addedItem, addFaults, emptyAdd, mostAnswers, oneMore } from './add-fields';
import { LimitField } from './limit-field';
import { listsWords, addWords as w } from './words';

type Parts = {
  readonly form: Form<AddFields>;
  /** Shown once the person has tried to go on. */
  readonly faults: ReturnType<typeof addFaults>;
  readonly tried: boolean;
};

const kinds = ['confirm', 'reading', 'choice'] as const;
const pauses = ['before', 'during', 'after'] as const;
const looked = ['container', 'place'] as const;

function Reading({ form: { value, change }, faults, tried }: Parts) {
  const inUnit = { ...value.low, unit: value.unit };
  return (
    <>
      <SelectField
        label={w.unit}
        value={value.unit === '' ? undefined : value.unit}
        none={words.choose}
        options={Unit.options.map((unit) => ({ value: unit, label: unit }))}
        onChoose={(unit) => change({ unit })}
        error={faults.unit}
      />
      <LimitField
        label={w.lowest}
        hint={w.limitHint}
        field={inUnit}
        onChange={(low) => change({ low })}
        tried={tried}
      />
      <LimitField
        label={w.highest}
        hint={faults.high ?? w.limitHint}
        field={{ ...value.high, unit: value.unit }}
        onChange={(high) => change({ high })}
        tried={tried}
      />
    </>
  );
}

function Answers({ form: { value, change }, faults }: Parts) {
  const put = (at: number, part: Partial<AddFields['answers'][number]>): void =>
    change({ answers: value.answers.map((one, n) => (n === at ? { ...one, ...part } : one)) });
  return (
    <>
      {value.answers.map(({ answer, stops }, at) => (
        <div key={at}>
          <TextField
            label={w.answer(at + 1)}
            value={answer}
            onInput={(text) => put(at, { answer: text })}
            error={at === 0 ? faults.answers : undefined}
            maxLength={60}
          />
          <Tick label={w.answerStops(at + 1)} checked={stops} onChange={(on) => put(at, { stops: on })} />
        </div>
      ))}
      {value.answers.length < mostAnswers && (
        <Button onTap={() => change({ answers: oneMore(value.answers) })}>{w.moreAnswers}</Button>
      )}
    </>
  );
}

const Stops = ({ form: { value, change }, faults }: Parts) => (
  <Choices
    legend={w.stop}
    choices={[
      { value: 'yes' as const, ...w.stops },
      { value: 'no' as const, ...w.noted },
    ]}
    value={value.stop === '' ? undefined : value.stop}
    onChoose={(stop) => change({ stop })}
    error={faults.stop}
  />
);

/** What is asked of it once its kind is chosen. */
function OfItsKind(parts: Parts) {
  const { value, change } = parts.form;
  if (value.kind === '') return null;
  return (
    <Part rule title={value.kind === 'choice' ? w.answers : undefined}>
      {value.kind === 'confirm' && (
        <TextField
          label={w.yes}
          value={value.yes}
          onInput={(yes) => change({ yes })}
          hint={w.yesHint}
          maxLength={40}
        />
      )}
      {value.kind === 'reading' && <Reading {...parts} />}
      {value.kind === 'choice' ? <Answers {...parts} /> : <Stops {...parts} />}
    </Part>
  );
}

/** When it is asked; in the list of the walk, of what. */
function Time({ list, form: { value, change }, faults }: Parts & { readonly list: Checklist }) {
  if (isWalk(list))
    return (
      <Choices
        legend={w.of}
        choices={looked.map((of) => ({ value: of, label: listsWords.of[of] }))}
        value={value.of === '' ? undefined : value.of}
        onChoose={(of) => change({ of })}
        error={faults.when}
      />
    );
  return (
    <Choices
      legend={w.when}
      choices={pauses.map((pause) => ({ value: pause, label: listsWords.when[pause] }))}
      value={value.when === '' ? undefined : value.when}
      onChoose={(when) => change({ when })}
      error={faults.when}
    />
  );
}

function Asked(parts: Parts & { readonly list: Checklist }) {
  const { form, faults } = parts;
  const { value, change } = form;
  return (
    <Part rule>
      <TextField
        label={w.ask}
        value={value.ask}
        onInput={(ask) => change({ ask })}
        hint={w.askHint}
        error={faults.ask}
        maxLength={120}
      />
      <TextField
        label={w.look}
        value={value.look}
        onInput={(look) => change({ look })}
        hint={w.lookHint}
        error={faults.look}
        maxLength={120}
      />
      <Time {...parts} />
      <Choices
        legend={w.kind}
        choices={kinds.map((kind) => ({ value: kind, ...w.kinds[kind] }))}
        value={value.kind === '' ? undefined : value.kind}
        onChoose={(kind) => change({ kind })}
        error={faults.kind}
      />
    </Part>
  );
}

function Add({ list }: { readonly list: Checklist }) {
  const { go, newId } = useShell();
  const form = useForm(`own-question:${list.id}`, AddFields, emptyAdd);
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting(form);
  const parts: Parts = { form, faults: tried ? addFaults(list, form.value) : {}, tried };
  const leave = (): void => {
    form.done();
    go(`record/lists/${list.id}`);
  };
  async function keep(): Promise<void> {
    tryNow();
    const change = addedItem(list, form.latest(), newId());
    if (!change || Object.keys(addFaults(list, form.latest())).length > 0) return;
    if (await write({ do: 'change-list', change })) leave();
  }
  return (
    <Frame
      place="record"
      title={w.title}
      second={list.title}
      ways={[
        { label: words.cancel, onTap: leave },
        { label: w.keep, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Begun form={form} />
      <Asked {...parts} list={list} />
      <OfItsKind {...parts} />
      <Part rule>
        <TextField
          label={w.reason}
          kind="lines"
          value={form.value.reason}
          onInput={(reason) => form.change({ reason })}
          hint={w.reasonHint}
          error={parts.faults.reason}
          maxLength={240}
        />
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}

export function AddScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const list = workshopLists(state.value).get(at.list ?? '');
  return list ? <Add list={list} /> : <Frame place="record" title={listsWords.gone} />;
}
