/** The tap that starts the clock: ammonia goes onto silver. */
import { silverCheck } from '../../reference/silver-check-tables';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { useTapGuard } from '../../ui/tap-guard';
import styles from '../checklist/checklist.module.css';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { equationText } from './equation-text';
import type { TestOnScreen } from './use-test';
import { silverWords as w } from './words';

export function AmmoniaPage({ on, batchId }: { readonly on: TestOnScreen; readonly batchId: string }) {
  const { moment } = useShell();
  const guard = useTapGuard('ammonia', moment);
  return (
    <Frame
      title={w.ammonia.title}
      focusKey="ammonia"
      ways={[
        { label: w.pause, href: `#/batches/${batchId}` },
        { label: w.backOne, onTap: on.takeBack, disabled: !on.canTakeBack },
      ]}
      actions={
        <Buttons>
          <Button
            look="primary"
            voice="serif"
            onTap={guard(on.ammoniaIn)}
            second={w.ammonia.nowSecond(on.minutes)}
          >
            {w.ammonia.now}
          </Button>
          <Button onTap={guard(on.breakOff)}>{w.ammonia.endHere}</Button>
        </Buttons>
      }
    >
      <Part>
        <p class={styles.look}>{w.ammonia.look}</p>
        <p>{w.ammonia.why}</p>
        <p>{silverCheck.destroys.text}</p>
        <p>{equationText(silverCheck.destroys.equation)}</p>
      </Part>
    </Frame>
  );
}
