/** One look: what to do and look at above, the answers at the thumb. */
import { codeOfBatch } from '../../ledger/put-away';
import { type Look, placeOf, sightOf, sightsAt } from '../../safety/silver-check';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Pegs } from '../../ui/pegs';
import { useTapGuard } from '../../ui/tap-guard';
import { AnswerButtons } from '../checklist/answers';
import styles from '../checklist/checklist.module.css';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { Countdown } from './countdown';
import type { TestOnScreen } from './use-test';
import { silverWords as w } from './words';

/** With more answers than these, or with the clock above, the question stands smaller: what to look at must be seen. */
const fewAnswers = 3;

type Props = { readonly on: TestOnScreen; readonly look: Look; readonly batchId: string };

export function LookPage({ on, look, batchId }: Props) {
  const { state, moment } = useShell();
  const sights = sightsAt(on.test.looks, look);
  const place = placeOf(on.test.looks, look);
  const before = sightOf(on.test.looks, look.look);
  const last = on.test.looks.findLast((one) => one.look === look.look);
  const guard = useTapGuard(`${look.look} ${last?.at}`, moment);
  const code = unbroken(codeOfBatch(state.value, batchId) ?? '');
  const answer = (text: string): void => {
    const seen = sights.find((one) => one.answer === text);
    if (seen) on.see(look.look, seen.seen);
  };
  return (
    <Frame
      title={look.ask}
      voice={sights.length > fewAnswers || on.stands ? 'title' : 'question'}
      focusKey={look.look}
      above={<Pegs at={place.at} of={place.of} words={w.position(place.at, place.of)} task={w.task(code)} />}
      ways={[
        { label: w.pause, href: `#/batches/${batchId}` },
        { label: w.backOne, onTap: on.takeBack, disabled: !on.canTakeBack },
        on.stands && !on.test.hurried
          ? { label: w.acidNow, onTap: on.acidNow }
          : { label: w.breakOff, onTap: on.breakOff },
      ]}
      actions={<AnswerButtons answers={sights.map((one) => one.answer)} onAnswer={guard(answer)} />}
    >
      <Part>
        <Countdown on={on} />
        {before && (
          <Notice mark="wrong" size="small" role="alert">
            {w.again}
          </Notice>
        )}
        <p class={styles.look}>{look.do}</p>
      </Part>
    </Frame>
  );
}
