/** Stands in place of every page that is hidden: of them nothing is drawn, and nothing is left in the document. */
import { format } from 'date-fns';
import { useEffect, useState } from 'preact/hooks';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Pad } from '../../ui/pad';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Frame } from '../frame';
import { useShell } from '../shell';
import styles from './lock.module.css';
import { askForRemoval, removableFrom, takeOff, tryPin, waitLeft } from './locking';
import { pinMost } from './pin';
import { lockWords as w } from './words';

const seconds = (): number => Math.ceil(waitLeft() / 1000);

/** Seconds until another PIN may be tried, moving on by itself. */
function useWait(): readonly [left: number, look: () => void] {
  const [left, setLeft] = useState(seconds);
  const look = (): void => setLeft(seconds());
  useEffect(() => {
    if (left === 0) return;
    const timer = setInterval(() => setLeft(seconds()), 1000);
    return () => clearInterval(timer);
  }, [left]);
  return [left, look];
}

function Forgotten() {
  const { moment, now } = useShell();
  // The clock of the page lags behind the tap that asked, which would be taken for a clock that was set back.
  const from = removableFrom(moment());
  if (from === null)
    return (
      <details class={styles.forgot}>
        <summary>{w.forgot}</summary>
        <p>{w.forgotHow}</p>
        <Button onTap={() => askForRemoval(moment())}>{w.ask}</Button>
      </details>
    );
  return (
    <>
      <Notice mark="due" role="status">
        {w.asked(format(new Date(from), 'd MMMM, HH:mm'))}
      </Notice>
      {from <= now.value && <Button onTap={takeOff}>{w.takeOff}</Button>}
    </>
  );
}

export function LockPage() {
  const [pin, setPin] = useState('');
  const [isWrong, setWrong] = useState(false);
  const [isTrying, setTrying] = useState(false);
  const [wait, look] = useWait();
  async function open(): Promise<void> {
    if (pin === '' || isTrying || wait > 0) return;
    setTrying(true);
    const tried = await tryPin(pin);
    setTrying(false);
    setPin('');
    setWrong(tried === 'wrong');
    look();
  }
  const write = (typed: string): void => {
    setPin(typed);
    setWrong(false);
  };
  return (
    <Frame
      title={w.lockedTitle}
      second={w.locked}
      focusKey="locked"
      ways={[{ label: w.clocks, href: '#/clocks' }]}
    >
      <Part>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void open();
          }}
        >
          <TextField
            kind="pin"
            label={w.pin}
            value={pin}
            onInput={write}
            maxLength={pinMost}
            error={wait > 0 ? w.wait(wait) : isWrong ? w.wrong : undefined}
          />
        </form>
        <Pad
          pin
          value={pin}
          onChange={write}
          onEnter={() => void open()}
          enterLabel={w.unlock}
          enterDisabled={pin === '' || isTrying || wait > 0}
          clearLabel={w.clear}
          backLabel={w.back}
          label={w.pad}
          maxLength={pinMost}
        />
      </Part>
      <Part>
        <Forgotten />
      </Part>
    </Frame>
  );
}
