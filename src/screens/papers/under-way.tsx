/** A paper that is being made, on a page of its own: how far it is, and the way to give it up. */
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { ProgressBar } from '../../ui/progress-bar';
import { useTapGuard } from '../../ui/tap-guard';
import { Frame } from '../frame';
import { useShell } from '../shell';
import type { UnderWay } from './use-making';
import { paperWords as w } from './words';

type PaperUnderWayProps = {
  /** What is being made: "Making the labels …". */
  readonly title: string;
  readonly underWay: UnderWay;
};

/**
 * In place of the form, which would be drawn anew at each move of the bar and when the paper is written down. A second drop
 * of the tap that began it ends nothing.
 */
export function PaperUnderWay({ title, underWay }: PaperUnderWayProps) {
  const { moment } = useShell();
  const guard = useTapGuard(title, moment);
  const { howFar, silent, cancel } = underWay;
  return (
    <Frame
      title={title}
      second={w.stayHere}
      focusKey={title}
      ways={[]}
      main="spread"
      actions={
        <>
          <ProgressBar name={title} says={howFar.says} percent={howFar.percent} />
          <Button second={w.cancelSecond} disabled={cancel === null} onTap={guard(cancel ?? nothing)}>
            {w.cancel}
          </Button>
        </>
      }
    >
      <Part>{silent && <p role="status">{w.silent}</p>}</Part>
    </Frame>
  );
}

const nothing = (): void => undefined;
