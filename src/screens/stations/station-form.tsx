/** Describes a working place: a new one, or one anew. */
import type { StationState } from '../../ledger/state';
import { dayField } from '../../safety/stated-time';
import { Choices } from '../../ui/choices';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Begun } from '../begun';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { words } from '../words';
import { HoodFields } from './hood-fields';
import {
  airflowUnits,
  faultsOf,
  fieldsOf,
  readFields,
  roomUnits,
  StationFields,
  stationOf,
} from './station-fields';
import { kindWords, stationWords as w } from './words';

const kinds = (Object.keys(kindWords) as (keyof typeof kindWords)[]).map((value) => ({
  value,
  label: kindWords[value],
  second: w.kindSecond[value],
}));

/** Pages that need a place, and lead here to have it described: a list, a check, the choice of a step. */
const wantedBy: ReadonlySet<string> = new Set(['check', 'ventilation', 'batches']);

export function StationFormScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const known = state.value.stations.get(at.station ?? '');
  if (at.station !== undefined && !known) return <Frame place="record" title={w.gone} />;
  const wanted = wantedBy.has(at.page ?? '') ? [at.page, at.for, at.list].join('/') : null;
  return <StationForm known={known} wanted={wanted} />;
}

type Props = {
  readonly known: StationState | undefined;
  /** The page that cannot go on without a place. */
  readonly wanted: string | null;
};

function StationForm({ known, wanted }: Props) {
  const { now, go, station: here, chooseStation } = useShell();
  const today = dayField(now.value);
  const id = known?.body.stationId;
  const form = useForm(`station:${id ?? 'new'}`, StationFields, () => fieldsOf(known?.body));
  const { value, change, done } = form;
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting(form);
  const reads = readFields(value);
  const faults = tried ? faultsOf(value, today) : {};
  const home = wanted ?? (id === undefined ? 'record/stations' : `record/stations/${id}`);

  async function keep(): Promise<void> {
    tryNow();
    const station = stationOf(form.latest(), today);
    if (!station) return;
    const said = { name: value.name.trim(), station, ...given('note', value.note) };
    const written = await write(
      id === undefined ? { do: 'add-station', ...said } : { do: 'change-station', stationId: id, ...said },
    );
    const body = written?.[0]?.body;
    if (body?.kind !== 'station-described') return;
    done();
    if (wanted !== null || here.value === null) chooseStation(body.stationId);
    go(wanted ?? `record/stations/${body.stationId}`, 'replace');
  }

  return (
    <Frame
      title={known?.body.name ?? w.newTitle}
      ways={[
        {
          label: words.cancel,
          onTap: () => {
            done();
            go(home);
          },
        },
        { label: w.keep, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Begun form={form} />
      <Part>
        <TextField
          label={w.name}
          value={value.name}
          onInput={(name) => change({ name })}
          hint={w.nameHint}
          error={faults.name}
          required
          maxLength={120}
        />
        <Choices
          legend={w.kind}
          choices={kinds}
          value={value.is}
          onChoose={(is) => change({ is })}
          error={faults.is}
        />
        {(value.is === 'room' || value.is === 'ductless-hood') && (
          <Notice mark="stop">{w.neverEnough}</Notice>
        )}
      </Part>
      {value.is === 'ducted-hood' && (
        <HoodFields value={value} change={change} reads={reads} faults={faults} tried={tried} />
      )}
      {(value.is === 'ducted-hood' || value.is === 'room') && (
        <Part rule title={w.room}>
          <NumberField
            label={w.roomVolume}
            field={value.volume}
            onChange={(volume) => change({ volume })}
            read={reads.volume}
            tried={tried}
            units={roomUnits}
            {...(value.is === 'ducted-hood' ? { optional: true, hint: w.hoodRoomHint } : {})}
          />
          {value.is === 'room' && (
            <NumberField
              label={w.airflow}
              field={value.airflow}
              onChange={(airflow) => change({ airflow })}
              read={reads.airflow}
              tried={tried}
              units={airflowUnits}
              optional
              hint={w.airflowHint}
            />
          )}
        </Part>
      )}
      <Part rule>
        <TextField
          label={w.note}
          kind="lines"
          value={value.note}
          onInput={(note) => change({ note })}
          hint={words.optional}
          maxLength={600}
        />
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}
