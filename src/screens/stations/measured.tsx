/** The air in the opening was measured again: speed and day, all else as it was described. */
import * as z from 'zod/mini';
import type { StationDescribed } from '../../ledger/entries/stations';
import { formatWritten } from '../../quantities/format';
import { dayField } from '../../safety/stated-time';
import type { WrittenStation } from '../../safety/ventilation/station-schema';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { calendarDayText } from '../amounts';
import { Begun } from '../begun';
import { Fault, useWriting } from '../fault';
import { readTyped, Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { words } from '../words';
import { readingFaults, speedUnits } from './station-fields';
import { stationWords as w } from './words';

const Measured = z.object({ speed: Typed, measuredOn: z.string() });

type Hood = Extract<WrittenStation, { is: 'ducted-hood' }>;

export function MeasuredScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const body = state.value.stations.get(at.station ?? '')?.body;
  if (body?.station.is !== 'ducted-hood') return <Frame place="record" title={w.gone} />;
  return <Again body={body} hood={body.station} />;
}

function Again({ body, hood }: { readonly body: StationDescribed; readonly hood: Hood }) {
  const { now, sign, go } = useShell();
  const today = dayField(now.value);
  const home = `record/stations/${body.stationId}`;
  const form = useForm(`measured:${body.stationId}`, Measured, () => ({
    speed: typed(hood.face?.speed.unit ?? 'm/s'),
    measuredOn: today,
  }));
  const { value, change, done } = form;
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting(form);
  const speed = readTyped<(typeof speedUnits)[number]>(value.speed, { aboveZero: true });
  const faults = readingFaults(speed, value.measuredOn, today);
  const { face } = hood;

  async function keep(): Promise<void> {
    tryNow();
    if (speed.state !== 'written' || faults.measuredOn !== undefined) return;
    const station = { ...hood, face: { speed: speed.written, measuredOn: value.measuredOn } };
    const { kind: _kind, v: _v, ...described } = body;
    if (!(await write({ do: 'change-station', ...described, station }))) return;
    done();
    go(home, 'replace');
  }

  return (
    <Frame
      title={w.measuredTitle(body.name)}
      second={
        face
          ? w.last(
              `${formatWritten(face.speed, sign.value)}\u202f${face.speed.unit}`,
              calendarDayText(face.measuredOn, now.value),
            )
          : w.lastNone
      }
      ways={[
        {
          label: words.cancel,
          onTap: () => {
            done();
            go(home);
          },
        },
        { label: w.keepReading, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Begun form={form} />
      <Part>
        <NumberField
          label={w.speed}
          field={value.speed}
          onChange={(next) => change({ speed: next })}
          read={speed}
          tried={tried}
          units={speedUnits}
        />
        <TextField
          label={w.measuredOn}
          kind="date"
          value={value.measuredOn}
          onInput={(measuredOn) => change({ measuredOn })}
          error={tried ? faults.measuredOn : undefined}
          required
        />
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}
