/** The time for the ammonia is over and nobody has said since that the acid goes in. Past two hours the card comes first. */
import { safetyWords } from '../../safety/words';
import { TaskBar } from '../../ui/bar';
import { Button } from '../../ui/button';
import { StopPage } from '../../ui/stop-page';
import { useTapGuard } from '../../ui/tap-guard';
import { useTopLine } from '../frame';
import { useShell } from '../shell';
import type { TestOnScreen } from './use-test';
import { silverWords as w } from './words';

export function Overdue({ on, batchId }: { readonly on: TestOnScreen; readonly batchId: string }) {
  const { moment } = useShell();
  const top = useTopLine();
  const guard = useTapGuard(on.age, moment);
  const old = on.age === 'old';
  const acid = (
    <Button key="acid" look={old ? 'door' : 'primary'} onTap={guard(on.acidNow)}>
      {w.overdue.acid}
    </Button>
  );
  const card = (
    <Button key="card" look={old ? 'primary' : 'door'} href="#/sos/ammonia-silver">
      {w.overdue.card}
    </Button>
  );
  return (
    <StopPage
      top={top}
      word={safetyWords.stop}
      title={old ? w.overdue.oldTitle : w.overdue.title(on.minutes)}
      why={old ? w.overdue.oldWhy : w.overdue.why}
      focusKey={`overdue ${on.age}`}
      doorsTitle={w.overdue.doors}
      doors={old ? [card, acid] : [acid, card]}
      bar={<TaskBar>{[{ label: w.pause, href: `#/batches/${batchId}` }]}</TaskBar>}
    />
  );
}
