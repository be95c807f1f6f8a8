/** A paper that is being made: how far it is, and the way to give it up. */
import { Button } from '../../ui/button';
import { ProgressBar } from '../../ui/progress-bar';
import { useTapGuard } from '../../ui/tap-guard';
import { useShell } from '../shell';
import type { UnderWay } from './use-making';
import { paperWords as w } from './words';

type PaperUnderWayProps = { readonly name: string; readonly underWay: UnderWay };

/** Stands where the button stood that began it: a second drop of the same tap does not end it. */
export function PaperUnderWay({ name, underWay }: PaperUnderWayProps) {
  const { moment } = useShell();
  const guard = useTapGuard(name, moment);
  const { howFar, silent, cancel } = underWay;
  return (
    <>
      <ProgressBar name={name} says={howFar.says} percent={howFar.percent} />
      {silent && <p role="status">{w.silent}</p>}
      <Button second={w.cancelSecond} onTap={guard(cancel)}>
        {w.cancel}
      </Button>
    </>
  );
}
