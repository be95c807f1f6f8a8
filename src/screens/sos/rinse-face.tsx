/** The rinse on its card: how long still, to be read at arm's length, or since when it has been enough. */
import { useEffect, useRef } from 'preact/hooks';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { useStayAwake } from '../../ui/stay-awake';
import { momentText } from '../amounts';
import { SecondsFace } from '../clocks/face';
import { LowBattery } from '../clocks/honest';
import { rinseWords as w } from '../clocks/words';
import styles from './sos.module.css';
import type { Rinse, useRinse } from './use-rinse';

/** Nobody has a dry hand to wake the screen. */
function Awake(): null {
  useStayAwake();
  return null;
}

type Props = Pick<ReturnType<typeof useRinse>, 'second' | 'again'> & { readonly rinse: Rinse };

export function RinseFace({ rinse, second, again }: Props) {
  const { due, overdue, shareLeft, clockId } = rinse;
  const when = momentText(due, second);
  const place = useRef<HTMLDivElement>(null);
  // The tap that starts it is at the thumb, the time to read may be out of sight above.
  useEffect(() => place.current?.scrollIntoView({ block: 'nearest' }), [due]);
  return (
    <div class={styles.rinse} ref={place}>
      {!overdue && <Awake />}
      <SecondsFace due={due} now={second} shareLeft={shareLeft} />
      <p class={styles.until} role="status">
        {overdue ? w.over(when) : w.until(when)}
      </p>
      {!overdue && <p class={styles.small}>{w.inView}</p>}
      {!overdue && <LowBattery />}
      {again && (
        <>
          <Notice mark="wrong" size="small" role="alert">
            {w.notWritten}
          </Notice>
          <Button onTap={again}>{w.writeAgain}</Button>
        </>
      )}
      {clockId !== null && (
        <Button look="plain" href={`#/clocks/${clockId}`}>
          {w.stop}
        </Button>
      )}
    </div>
  );
}
