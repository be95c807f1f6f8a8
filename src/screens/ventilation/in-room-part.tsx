/** What the gas does to the room: the station itself, or the one that a hood stands in when its fan fails; and the clock to air it. */
import type { Figure } from '../../quantities/figure';
import { minutesAfter } from '../../safety/stated-time';
import { wholeMinutes } from '../../safety/ventilation/rounded';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { minutesShown } from '../amounts';
import { Fault, useWriting } from '../fault';
import { useShell } from '../shell';
import { NamedRows, type ResultProps } from './figure-rows';
import { ventilationWords as w } from './words';

function PurgeClock({
  airing,
  batchId,
}: {
  readonly airing: Figure<'min'>;
  readonly batchId: string | null;
}) {
  const { moment, go } = useShell();
  const { write, fault, busy } = useWriting();
  const minutes = wholeMinutes(airing);
  async function start(): Promise<void> {
    const due = minutesAfter(moment(), minutes);
    const body = (await write({ do: 'start-clock', of: 'purge', due, batchId }))?.[0]?.body;
    if (body?.kind === 'clock-started') go(`clocks/${body.clockId}`);
  }
  const { value, unit } = minutesShown(minutes);
  return (
    <>
      <Fault words={fault} />
      <Button disabled={busy} onTap={() => void start()} second={w.startPurgeSecond(`${value}\u202f${unit}`)}>
        {w.startPurge}
      </Button>
    </>
  );
}

export function InRoomPart({ result, href, batchId }: ResultProps) {
  const { inRoom, made, station } = result;
  if (station.is === 'outdoors' || station.is === 'ductless-hood' || !made) return null;
  const airing = inRoom?.airing;
  return (
    <>
      <Part rule title={station.is === 'room' ? w.inThisRoom : w.inRoom} width="edge">
        <Rows>
          <NamedRows
            href={href}
            rows={[
              ['shut', w.shut, inRoom?.shut],
              ['dangerous-after', w.dangerousAfter, inRoom?.dangerousAfter],
              ['changes', w.changes, inRoom?.changes],
              ['room-mean', w.roomMean, inRoom?.mean],
              ['room-peak', w.roomPeak, inRoom?.peak],
              ['airing', w.airing, airing, w.airingSecond(made.limit.name)],
            ]}
          />
        </Rows>
      </Part>
      <Part>{airing ? <PurgeClock airing={airing} batchId={batchId} /> : <p>{w.noAiring}</p>}</Part>
    </>
  );
}
