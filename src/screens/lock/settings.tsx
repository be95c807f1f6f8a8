/** The lock of the screen is turned on, changed and taken off here; what it protects stands first. */
import { useState } from 'preact/hooks';
import { Button, Buttons } from '../../ui/button';
import { Choices } from '../../ui/choices';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row } from '../../ui/row';
import { TextField } from '../../ui/text-field';
import { Frame } from '../frame';
import { lockNow, screenLock, setMinutes, setPin, takeOff } from './locking';
import { isPin, pinMost } from './pin';
import { lockWords as w } from './words';

/** Shorter than a photo takes would lose the photo: the camera is another app. */
const minutesOffered = [1, 5, 15, 60] as const;
const minutesFirst = 5;

const After = ({
  minutes,
  choose,
}: {
  readonly minutes: number;
  readonly choose: (chosen: number) => void;
}) => (
  <Choices
    legend={w.minutesLegend}
    hint={w.minutesHint}
    choices={minutesOffered.map((count) => ({ value: String(count), label: w.minutes(count) }))}
    value={String(minutes)}
    onChoose={(chosen) => choose(Number(chosen))}
  />
);

/** @param minutes after how long the new lock hides the pages */
function NewPin({ minutes, words }: { readonly minutes: number; readonly words: string }) {
  const [first, setFirst] = useState('');
  const [second, setSecond] = useState('');
  const [fault, setFault] = useState<'short' | 'differs' | 'notKept' | null>(null);
  const [isDone, setDone] = useState(false);
  async function keep(): Promise<void> {
    const wrong = isPin(first) ? (first === second ? null : 'differs') : 'short';
    setFault(wrong);
    if (wrong !== null) return;
    const well = await setPin(first, minutes);
    setFault(well ? null : 'notKept');
    setDone(well);
    setFirst('');
    setSecond('');
  }
  return (
    <>
      <TextField
        kind="pin"
        label={w.pin}
        hint={w.pinHint}
        value={first}
        onInput={setFirst}
        maxLength={pinMost}
        error={fault === 'short' ? w.short : undefined}
      />
      <TextField
        kind="pin"
        label={w.again}
        value={second}
        onInput={setSecond}
        maxLength={pinMost}
        error={fault === 'differs' ? w.differs : undefined}
      />
      {fault === 'notKept' && (
        <Notice mark="wrong" role="alert">
          {w.notKept}
        </Notice>
      )}
      <p role="status">{isDone && fault === null && w.isOn}</p>
      <Button look={screenLock.value ? 'door' : 'primary'} onTap={() => void keep()}>
        {words}
      </Button>
    </>
  );
}

function TurnOn() {
  const [minutes, setAfter] = useState<number>(minutesFirst);
  return (
    <Part rule>
      <After minutes={minutes} choose={setAfter} />
      <NewPin minutes={minutes} words={w.turnOn} />
    </Part>
  );
}

export function LockSettings() {
  const lock = screenLock.value;
  return (
    <Frame place="record" title={w.title} second={lock ? w.rowOn(lock.minutes) : w.rowOff}>
      <Part rule>
        <p>{w.what}</p>
        <p>{w.open}</p>
        <p>{w.forgotten}</p>
      </Part>
      {lock === null ? (
        <TurnOn />
      ) : (
        <>
          <Part rule>
            <After minutes={lock.minutes} choose={setMinutes} />
          </Part>
          <Part rule>
            <Buttons>
              <Button look="primary" onTap={lockNow}>
                {w.lockNow}
              </Button>
              <Button onTap={takeOff} second={w.offHint}>
                {w.off}
              </Button>
            </Buttons>
          </Part>
          <Part rule>
            <NewPin minutes={lock.minutes} words={w.change} />
          </Part>
        </>
      )}
    </Frame>
  );
}

/** On the page of the record. */
export const LockRow = () => (
  <Row
    title={w.rowTitle}
    second={screenLock.value ? w.rowOn(screenLock.value.minutes) : w.rowOff}
    href="#/record/lock"
  />
);
