/** One working place: what it is, what is due, what was worked out for it. */

import { codeOfBatch } from '../../ledger/put-away';
import type { StationState } from '../../ledger/state';
import { checksAt } from '../../ledger/ventilation-found';
import { dayField } from '../../safety/stated-time';
import { stationFrom } from '../../safety/ventilation/station';
import { verdictWords } from '../../safety/ventilation/words';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { dayText, momentText } from '../amounts';
import { Fault, useWriting } from '../fault';
import { Before } from '../find/door';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { StationFacts } from './facts';
import { kindWords, stationWords as w } from './words';

type Props = { readonly station: StationState };

/** Worked out for it, the newest first. */
function Checks({ station }: Props) {
  const { state, now } = useShell();
  const checks = checksAt(state.value, station.body.stationId).slice(0, 10);
  if (checks.length === 0) return null;
  return (
    <Part rule width="edge" title={w.checks}>
      <Rows label={w.checks}>
        {checks.map(({ body, at }) => (
          <Row
            key={body.checkId}
            start="text"
            title={verdictWords[body.verdict]}
            second={[
              momentText(at, now.value),
              ...(body.batchId === null ? [] : [unbroken(codeOfBatch(state.value, body.batchId) ?? '')]),
            ].join(', ')}
            href={`#/ventilation-checks/${body.checkId}`}
          />
        ))}
      </Rows>
      <Before />
    </Part>
  );
}

/** What is done to the place, rarely. */
function Ways({ station }: Props) {
  const { station: here, chooseStation, go } = useShell();
  const { write, fault, busy } = useWriting();
  const { kind: _kind, v: _v, ...described } = station.body;
  const { stationId } = station.body;
  async function giveUp(): Promise<void> {
    if (!(await write({ do: 'give-up-station', stationId }))) return;
    if (here.value === stationId) chooseStation(null);
    go('record/stations', 'replace');
  }
  return (
    <Part rule>
      <Fault words={fault} />
      <Buttons>
        {station.givenUpAt === null && here.value !== stationId && (
          <Button second={w.chooseHereSecond} onTap={() => chooseStation(stationId)}>
            {w.chooseHere}
          </Button>
        )}
        <Button href={`#/record/stations/${stationId}/change`}>{w.change}</Button>
        {station.givenUpAt === null ? (
          <Button second={w.giveUpSecond} disabled={busy} onTap={() => void giveUp()}>
            {w.giveUp}
          </Button>
        ) : (
          <Button disabled={busy} onTap={() => void write({ do: 'change-station', ...described })}>
            {w.takeUp}
          </Button>
        )}
      </Buttons>
    </Part>
  );
}

export function StationScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now, station: here, chooseStation, go } = useShell();
  const station = state.value.stations.get(at.station ?? '');
  if (!station) return <Frame place="record" title={w.gone} />;
  const { stationId, name, station: place, note } = station.body;
  const used = station.givenUpAt === null;
  const said = [
    kindWords[place.is],
    ...(used ? [] : [w.givenUpSince(dayText(station.givenUpAt ?? '', now.value))]),
    ...(here.value === stationId ? [w.here] : []),
  ];
  function check(): void {
    chooseStation(stationId);
    go('ventilation/-/-');
  }
  return (
    <Frame
      place="record"
      title={name}
      second={said.join('. ')}
      actions={
        used && (
          <Buttons>
            <Button look="primary" second={w.checkSecond} onTap={check}>
              {w.check}
            </Button>
            {place.is === 'ducted-hood' && (
              <Button second={w.measuredSecond} href={`#/record/stations/${stationId}/measured`}>
                {w.measured}
              </Button>
            )}
          </Buttons>
        )
      }
    >
      <StationFacts station={place} id={stationId} />
      {note !== undefined && (
        <Part rule title={w.note}>
          <p>{note}</p>
        </Part>
      )}
      <Checks station={station} />
      <Ways station={station} />
    </Frame>
  );
}

/** What a hood takes away, from its opening and its speed. */
export function StationWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now } = useShell();
  const [id, key] = [at.station ?? '', at.key ?? ''];
  const body = state.value.stations.get(id)?.body;
  const built = body && stationFrom(body.station, dayField(now.value));
  const root = built?.is === 'ducted-hood' && key === 'airflow' ? built.face?.airflow : undefined;
  return (
    <WorkingPage
      root={root}
      steps={at.steps ?? ''}
      here={`record/stations/${id}/working/${key}`}
      subject={body?.name ?? w.title}
      back={`record/stations/${id}`}
    />
  );
}
