/** A working place as it is described: what it takes away, and between which speeds it is counted on. */
import type { Figure } from '../../quantities/figure';
import { formatWritten, printed } from '../../quantities/format';
import type { Written } from '../../quantities/written';
import { dayField } from '../../safety/stated-time';
import { type DuctedHood, hoodFaults, stationFrom } from '../../safety/ventilation/station';
import type { WrittenStation } from '../../safety/ventilation/station-schema';
import { reasonWords } from '../../safety/ventilation/words';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { calendarDayText } from '../amounts';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { words } from '../words';
import { stationWords as w } from './words';

type WrittenHood = Extract<WrittenStation, { is: 'ducted-hood' }>;

const thin = '\u202f';

/** A number as it was written. */
function WrittenRow({ title, second, of }: { title: string; second?: string; of: Written | undefined }) {
  const { sign } = useShell();
  return (
    <Row
      title={title}
      {...(second === undefined ? {} : { second })}
      figure={
        of ? (
          <FigureValue value={formatWritten(of, sign.value)} unit={of.unit} />
        ) : (
          <span>{w.notMeasured}</span>
        )
      }
    />
  );
}

function WindowRow({ window }: Pick<DuctedHood, 'window'>) {
  const { sign } = useShell();
  const end = (figure: Figure) => printed(figure, sign.value).value;
  return (
    <Row
      title={w.window}
      second={w.windowBy[window.by]}
      figure={<FigureValue value={`${end(window.slowest)} ${words.to} ${end(window.fastest)}`} unit="m/s" />}
    />
  );
}

function HoodFacts({ written, hood, id }: { written: WrittenHood; hood: DuctedHood; id: string }) {
  const { sign, now } = useShell();
  const text = (of: Written) => `${formatWritten(of, sign.value)}${thin}${of.unit}`;
  const day = (iso: string) => calendarDayText(iso, now.value);
  return (
    <Rows label={w.facts}>
      <Row title={w.openingShort} second={w.times(text(written.width), text(written.height))} />
      <WrittenRow
        title={w.face}
        {...(written.face ? { second: w.readOn(day(written.face.measuredOn)) } : {})}
        of={written.face?.speed}
      />
      <WindowRow window={hood.window} />
      {hood.face && (
        <FigureRow
          title={w.airflowOf}
          figure={hood.face.airflow}
          href={`#/record/stations/${id}/working/airflow`}
        />
      )}
      {written.changedOn !== undefined && <Row title={w.changedOn} figure={day(written.changedOn)} />}
      <WrittenRow title={w.roomOf} of={written.room} />
    </Rows>
  );
}

/** Why a hood is not counted on now, and what to do. */
function Faults({ hood }: { readonly hood: DuctedHood }) {
  const { now } = useShell();
  const faults = hoodFaults(hood, dayField(now.value));
  return (
    <>
      {faults.map((fault) => (
        <Notice key={fault} mark="wrong">
          {reasonWords[fault]}
        </Notice>
      ))}
      {hood.certificateOut && faults.length === 0 && <Notice mark="unknown">{w.certificateOut}</Notice>}
    </>
  );
}

export function StationFacts({ station, id }: { readonly station: WrittenStation; readonly id: string }) {
  const { now } = useShell();
  const built = stationFrom(station, dayField(now.value));
  return (
    <>
      {built.is === 'ducted-hood' && <Faults hood={built} />}
      {(built.is === 'room' || built.is === 'ductless-hood') && (
        <Notice mark="stop">{reasonWords[built.is === 'room' ? 'room-air' : 'ductless-hood']}</Notice>
      )}
      {(station.is === 'ducted-hood' || station.is === 'room') && (
        <Part rule width="edge" title={w.facts}>
          {station.is === 'ducted-hood' && built.is === 'ducted-hood' ? (
            <HoodFacts written={station} hood={built} id={id} />
          ) : (
            station.is === 'room' && (
              <Rows label={w.facts}>
                <WrittenRow title={w.roomVolume} of={station.volume} />
                <WrittenRow title={w.airflow} of={station.airflow} />
              </Rows>
            )
          )}
        </Part>
      )}
    </>
  );
}
