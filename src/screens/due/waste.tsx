/** One waste in its month: whether it is counted, by which rule, and what somebody may say of it. */
import * as z from 'zod/mini';
import { CountingSaid } from '../../ledger/entries/streams';
import { arisings } from '../../ledger/generation';
import type { StreamState } from '../../ledger/state';
import { type CountingRule, generator } from '../../reference/generator-tables';
import { cited } from '../../rules/cited';
import { monthOf } from '../../rules/clocks/calendar-day';
import { judged } from '../../rules/quantities/counting';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { TextField } from '../../ui/text-field';
import { streamTitle } from '../amounts';
import { Fault, useWriting } from '../fault';
import { FigureRow } from '../figure-row';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { faultless, given, missing, useTried } from '../tried';
import { words } from '../words';
import { WorkingPage } from '../working';
import { citedText } from './cited-text';
import { type Counted, countedWords, monthText, dueWords as w } from './words';

/** The rule that each word appeals to. */
const ruleOf: Readonly<Record<Counted, CountingRule>> = {
  counted: 'generated',
  'straight-into-neutralisation': 'straight-into-unit',
  'straight-into-water-treatment': 'straight-into-unit',
  'straight-into-enclosed-unit': 'straight-into-unit',
  'recycled-at-once': 'recycled-straight',
  'residue-of-counted': 'residue-of-counted',
  'reused-on-site': 'reclaimed-on-site',
  'under-rules-of-its-own': 'own-rules',
  'not-hazardous': 'not-hazardous',
};

const Fields = z.object({
  counted: z.nullable(CountingSaid.shape.counted),
  saidBy: z.string(),
  note: z.string(),
});

function useArising(streamId: string) {
  const { state, zone } = useShell();
  const arising = arisings(state.value).find(({ id }) => id === streamId);
  if (!arising) return null;
  const month = monthOf(arising.at, zone);
  return { month, found: judged(arising, month, zone) };
}

function Now({ stream }: { readonly stream: StreamState }) {
  const { streamId } = stream.body;
  const arising = useArising(streamId);
  if (!arising) return null;
  const { counts, citation, lacks, arising: waste } = arising.found;
  const why = lacks.length > 0 ? `${w.lacks(lacks)} ` : '';
  return (
    <Rows>
      {waste.kg ? (
        <FigureRow title={w.mass} figure={waste.kg} href={`#/due/wastes/${streamId}/working`} />
      ) : (
        <Row title={w.mass} second={w.massOpen} figure={<span>{words.notDetermined}</span>} />
      )}
      <Row title={counts ? w.counted : w.notCounted} second={`${why}${citedText(citation)}`} />
      {stream.counting && (
        <Row
          title={countedWords[stream.counting.body.counted]}
          second={w.saidThen(stream.counting.body.saidBy)}
          href={`#/record/entry/${stream.counting.entryId}`}
        />
      )}
    </Rows>
  );
}

function WasteForm({ stream }: { readonly stream: StreamState }) {
  const { go, state, zone } = useShell();
  const { streamId } = stream.body;
  const home = `due/months/${monthOf(stream.at, zone)}`;
  const form = useForm(`counting:${streamId}`, Fields, () => ({ counted: null, saidBy: '', note: '' }));
  const { value, change, done } = form;
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting(form);
  const faults = {
    counted: value.counted === null ? words.choice.missing : undefined,
    saidBy: missing(value.saidBy),
  };
  const leave = (): void => {
    done();
    go(home);
  };
  async function keep(): Promise<void> {
    tryNow();
    const { counted, saidBy, note } = form.latest();
    if (!faultless(faults) || counted === null) return;
    if (await write({ do: 'say-counting', streamId, counted, saidBy, ...given('note', note) })) leave();
  }
  return (
    <Frame
      title={streamTitle(state.value, streamId)}
      second={w.wasteOf(w.wasteTitle, monthText(monthOf(stream.at, zone)))}
      ways={[
        { label: words.back, onTap: leave },
        { label: w.sayIt, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Part rule width="edge">
        <Now stream={stream} />
      </Part>
      <Part rule>
        <Choices
          legend={w.ask}
          choices={CountingSaid.shape.counted.options.map((counted) => ({
            value: counted,
            label: countedWords[counted],
            second:
              counted === value.counted ? citedText(cited(generator.counting[ruleOf[counted]])) : undefined,
          }))}
          value={value.counted ?? undefined}
          onChoose={(counted) => change({ counted })}
          error={tried ? faults.counted : undefined}
        />
        <TextField
          label={w.saidBy}
          value={value.saidBy}
          onInput={(saidBy) => change({ saidBy })}
          hint={w.saidByHint}
          error={tried ? faults.saidBy : undefined}
          maxLength={120}
          required
        />
        <TextField
          label={w.note}
          kind="lines"
          value={value.note}
          onInput={(note) => change({ note })}
          hint={words.optional}
          maxLength={2000}
        />
        <Fault words={fault} />
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function WasteScreen({ at: { stream = '' } }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const found = state.value.streams.get(stream);
  return found ? (
    <WasteForm key={stream} stream={found} />
  ) : (
    <Frame title={w.lost} ways={[{ label: words.back, href: '#/due/months' }]} />
  );
}

export function WasteWorking({
  at: { stream = '', steps = '' },
}: {
  readonly at: Readonly<Record<string, string>>;
}) {
  const { state } = useShell();
  return (
    <WorkingPage
      root={useArising(stream)?.found.arising.kg ?? undefined}
      steps={steps}
      here={`due/wastes/${stream}/working`}
      subject={streamTitle(state.value, stream)}
      back={`due/wastes/${stream}`}
    />
  );
}
