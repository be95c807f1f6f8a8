/** What the test came to, with its working, before it is written down. */
import { silverVerdict } from '../../safety/silver-check';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { words as shared } from '../words';
import { Countdown } from './countdown';
import { LooksList, NextSteps } from './looks-list';
import type { TestOnScreen } from './use-test';
import { outcomeSecond, outcomeTitle, silverWords as w } from './words';

/** The ammonia is in and nobody has shown it destroyed: that comes before everything else. */
export const StillStands = ({ on }: { readonly on: TestOnScreen }) =>
  on.stands ? (
    <Part>
      <Countdown on={on} />
      <Notice mark="wrong" role="alert">
        {w.verdict.standing}
      </Notice>
      <Button onTap={on.stripAgain}>{w.verdict.stripAgain}</Button>
    </Part>
  ) : null;

export function TestEnd({ on, batchId }: { readonly on: TestOnScreen; readonly batchId: string }) {
  const verdict = silverVerdict(on.test.looks);
  const back = on.goesOn
    ? { label: w.verdict.goOn, onTap: on.goOn }
    : { label: w.backOne, onTap: on.takeBack, disabled: !on.canTakeBack };
  return (
    <Frame
      title={outcomeTitle[verdict.outcome]}
      second={outcomeSecond[verdict.outcome]}
      focusKey={`end ${verdict.outcome}`}
      ways={[{ label: w.pause, href: `#/batches/${batchId}` }, back]}
      actions={
        <Button
          look="primary"
          voice="serif"
          onTap={() => on.form.change({ atWaste: true })}
          second={w.verdict.wasteSecond}
        >
          {w.verdict.waste}
        </Button>
      }
    >
      <StillStands on={on} />
      <NextSteps verdict={verdict} />
      <LooksList verdict={verdict} />
      <Part rule>
        <p>{shared.caution}</p>
      </Part>
    </Frame>
  );
}
