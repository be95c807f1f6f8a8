/** The red page: what stopped the list, why, and the doors. The last door takes the truth. */
import { useState } from 'preact/hooks';
import type { Door } from '../../safety/checklist-item';
import type { Standing } from '../../safety/checklist-run';
import { safetyWords } from '../../safety/words';
import { TaskBar } from '../../ui/bar';
import { Button } from '../../ui/button';
import { StopPage } from '../../ui/stop-page';
import { useTapGuard } from '../../ui/tap-guard';
import { useTopLine } from '../frame';
import { useShell } from '../shell';
import type { RunOnScreen } from './use-run';
import { Why } from './why';
import { stopTitle, stopWhy, words } from './words';

type Props = {
  readonly on: RunOnScreen;
  readonly stop: Extract<Standing, { state: 'stopped' }>;
  readonly onPutOff: () => void;
  /** Absent where it is written down that the step has begun. */
  readonly onAlready?: (() => void) | undefined;
};

export function Stopped({ on, stop, onPutOff, onAlready }: Props) {
  const { item, answered, doors, card } = stop;
  const { moment, sign } = useShell();
  const top = useTopLine();
  const [why, setWhy] = useState(false);
  const guard = useTapGuard(`${item.id} ${why}`, moment);
  if (why) return <Why item={item} onBack={() => setWhy(false)} />;
  const leads: Readonly<Record<Door['leads'], (() => void) | undefined>> = {
    'answer-again': guard(on.again),
    'put-off': guard(onPutOff),
    'open-card': undefined,
    // Only on the walk, which is no run.
    'say-done': undefined,
  };
  return (
    <StopPage
      top={top}
      word={safetyWords.stop}
      title={stopTitle(item, answered, sign.value)}
      why={stopWhy(item, answered, sign.value)}
      focusKey={`stop ${item.id} ${answered.at}`}
      doorsTitle={safetyWords.makesItRight}
      doors={
        <>
          {doors.map((door, at) => (
            <Button
              key={door.do}
              look={at === 0 ? 'primary' : 'door'}
              onTap={leads[door.leads]}
              href={door.leads === 'open-card' ? `#/sos/${card}` : undefined}
            >
              {door.do}
            </Button>
          ))}
          {onAlready && <Button onTap={guard(onAlready)}>{on.run.list.already}</Button>}
          {on.fault !== null && <p role="alert">{on.fault}</p>}
        </>
      }
      bar={
        <TaskBar>
          {[
            { label: words.whyAndSource, onTap: () => setWhy(true) },
            ...(on.undo ? [{ label: words.undo(on.undo.said), onTap: on.takeBack }] : []),
          ]}
        </TaskBar>
      }
    />
  );
}
