/** The working places, with those whose air has to be measured again. */
import type { StationState } from '../../ledger/state';
import { dayField } from '../../safety/stated-time';
import { readingDue } from '../../safety/ventilation/reading-due';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { calendarDayText, dayText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { DueMark } from './due';
import { dueWords, kindWords, stationWords as w } from './words';

function StationRow({ station }: { readonly station: StationState }) {
  const { now, station: here } = useShell();
  const { stationId, name, station: place } = station.body;
  const due = readingDue(place, dayField(now.value));
  const said = [kindWords[place.is], ...(here.value === stationId ? [w.here] : [])].join('. ');
  return (
    <Row
      {...(due ? { mark: <DueMark due={due} on={dayField(now.value)} /> } : { start: 'text' as const })}
      title={name}
      second={due ? dueWords(due, (day) => calendarDayText(day, now.value)) : said}
      href={`#/record/stations/${stationId}`}
    />
  );
}

export function StationsScreen() {
  const { state, now } = useShell();
  const all = [...state.value.stations.values()];
  const used = all.filter(({ givenUpAt }) => givenUpAt === null);
  const past = all.filter(({ givenUpAt }) => givenUpAt !== null);
  return (
    <Frame
      place="record"
      title={w.title}
      second={w.second}
      actions={
        <Button look="primary" href="#/record/stations/new">
          {w.add}
        </Button>
      }
    >
      <Part rule width="edge">
        <Rows label={w.title}>
          {used.length === 0 && <Row title={w.none} />}
          {used.map((station) => (
            <StationRow key={station.body.stationId} station={station} />
          ))}
        </Rows>
      </Part>
      {past.length > 0 && (
        <Part rule width="edge" title={w.givenUp}>
          <Rows label={w.givenUp}>
            {past.map(({ body, givenUpAt }) => (
              <Row
                key={body.stationId}
                start="text"
                title={body.name}
                second={w.givenUpSince(dayText(givenUpAt ?? '', now.value))}
                href={`#/record/stations/${body.stationId}`}
              />
            ))}
          </Rows>
        </Part>
      )}
    </Frame>
  );
}
