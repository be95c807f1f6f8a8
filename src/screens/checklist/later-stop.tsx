/** The red page while a step runs: what to do now. It is written down already. */
import { useState } from 'preact/hooks';
import type { Door, Item } from '../../safety/checklist-item';
import type { Answered } from '../../safety/run-schema';
import { safetyWords } from '../../safety/words';
import { TaskBar } from '../../ui/bar';
import { Button } from '../../ui/button';
import { StopPage } from '../../ui/stop-page';
import { useTapGuard } from '../../ui/tap-guard';
import { useTopLine } from '../frame';
import { useShell } from '../shell';
import { Why } from './why';
import { stopTitle, stopWhy, words } from './words';

export function LaterStop(props: {
  readonly item: Item;
  readonly answered: Answered;
  readonly doors: readonly Door[];
  readonly home: string;
  readonly onAgain: () => void;
}) {
  const { item, answered, doors, home, onAgain } = props;
  const { moment, sign } = useShell();
  const top = useTopLine();
  const [why, setWhy] = useState(false);
  const guard = useTapGuard(`${item.id} ${why}`, moment);
  if (why) return <Why item={item} onBack={() => setWhy(false)} />;
  const leads = (door: Door) =>
    door.leads === 'answer-again'
      ? { onTap: guard(onAgain) }
      : { href: door.leads === 'put-off' ? `#/${home}` : `#/sos/${item.card}` };
  return (
    <StopPage
      top={top}
      word={safetyWords.stop}
      title={stopTitle(item, answered, sign.value)}
      why={stopWhy(item, answered, sign.value)}
      focusKey={`stop ${item.id} ${answered.at}`}
      doorsTitle={words.later.doNow}
      doors={doors.map((door, at) => (
        <Button key={door.do} look={at === 0 ? 'primary' : 'door'} {...leads(door)}>
          {door.do}
        </Button>
      ))}
      bar={
        <TaskBar>
          {[
            { label: words.whyAndSource, onTap: () => setWhy(true) },
            { label: words.later.toStep, href: `#/${home}` },
          ]}
        </TaskBar>
      }
    />
  );
}
