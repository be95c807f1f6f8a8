/** Work on a backup while it lasts: how far it is, and the way to leave it. */
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { ProgressBar } from '../../ui/progress-bar';
import { useTapGuard } from '../../ui/tap-guard';
import { Frame } from '../frame';
import { useShell } from '../shell';
import type { HowFar } from './how-far';
import { backupWords as w } from './words';

type BackupUnderWayProps = {
  readonly title: string;
  readonly howFar: HowFar;
  readonly leaveSecond: string;
  /** Null when it cannot be left any more. */
  readonly leave: (() => void) | null;
};

const nothing = (): void => undefined;

/** A second drop of the tap that began it ends nothing. */
export function BackupUnderWay({ title, howFar, leaveSecond, leave }: BackupUnderWayProps) {
  const { moment } = useShell();
  const guard = useTapGuard(title, moment);
  return (
    <Frame
      title={title}
      focusKey={title}
      ways={[]}
      main="spread"
      actions={
        <>
          <ProgressBar name={title} says={howFar.says} percent={howFar.percent} />
          <Button second={leaveSecond} disabled={leave === null} onTap={guard(leave ?? nothing)}>
            {w.leave}
          </Button>
        </>
      }
    >
      <Part>
        <p>{w.stay}</p>
      </Part>
    </Frame>
  );
}
