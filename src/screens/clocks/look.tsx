/** When somebody looks again at what runs in a batch: a few large choices, or an hour. */
import { useState } from 'preact/hooks';
import { looksAwaited } from '../../ledger/clocks-running';
import { minutesAfter, nextAt } from '../../safety/stated-time';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { useTapGuard } from '../../ui/tap-guard';
import { TextField } from '../../ui/text-field';
import { momentText } from '../amounts';
import { batchWords } from '../batches/words';
import { Fault, useWriting } from '../fault';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { Honest } from './honest';
import { clocksWords, lookWords as w } from './words';

function useLook(batchId: string) {
  const { state, moment, go } = useShell();
  const { write, fault, setFault, busy } = useWriting();
  async function set(due: string): Promise<void> {
    const before = looksAwaited(state.value, batchId);
    const written = await write({ do: 'start-clock', of: 'look', due, batchId });
    const body = written?.[0]?.body;
    if (body?.kind !== 'clock-started') return;
    for (const { body: old } of before)
      await write({ do: 'stop-clock', clockId: old.clockId, how: 'not-needed', note: w.replaced });
    go(`clocks/${body.clockId}`, 'replace');
  }
  function setHour(hour: string): void {
    const due = nextAt(hour, moment());
    if (due === null) setFault(w.hourMissing);
    else void set(due);
  }
  return { set, setHour, fault, busy };
}

export function NextLook({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now, moment } = useShell();
  const batch = state.value.batches.get(at.batch ?? '')?.body;
  const { set, setHour, fault, busy } = useLook(at.batch ?? '');
  const [hour, setTyped] = useState('');
  const guard = useTapGuard('next look', moment);
  if (!batch)
    return (
      <Frame place="batches" title={clocksWords.nextLook}>
        <Part>
          <p role="alert">{batchWords.gone}</p>
        </Part>
      </Frame>
    );
  const [awaited] = looksAwaited(state.value, batch.batchId);
  return (
    <Frame
      title={w.title(unbroken(batch.code))}
      second={w.second}
      ways={[{ label: w.toBatch, href: `#/batches/${batch.batchId}` }]}
      actions={
        <>
          <Fault words={fault} />
          <Buttons>
            {w.choices.map(({ minutes, label }) => (
              <Button
                key={minutes}
                disabled={busy}
                second={w.until(momentText(minutesAfter(now.value, minutes), now.value))}
                onTap={guard(() => void set(minutesAfter(moment(), minutes)))}
              >
                {label}
              </Button>
            ))}
          </Buttons>
        </>
      }
    >
      <Part>
        {awaited && <p>{w.awaited(momentText(awaited.body.due, now.value))}</p>}
        <TextField label={w.hour} kind="time" value={hour} onInput={setTyped} />
        <Button disabled={busy} onTap={() => setHour(hour)}>
          {w.atHour}
        </Button>
      </Part>
      <Part rule>
        <Honest />
      </Part>
    </Frame>
  );
}
