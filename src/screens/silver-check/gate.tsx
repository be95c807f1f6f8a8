/** Before a reagent goes in: the list of that step. It can have begun without; then it is written down so, and stays marked. */
import { useState } from 'preact/hooks';
import type { Gate } from '../../ledger/silver-test';
import type { BarAction } from '../../ui/bar';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Already } from '../checklist/already';
import styles from '../checklist/checklist.module.css';
import { useWriting } from '../fault';
import { Frame, hour } from '../frame';
import { useShell } from '../shell';
import { silverWords as w } from './words';

type Props = {
  readonly gate: Extract<Gate, { open: false }>;
  readonly batchId: string;
  /** Ends the test here instead. */
  readonly end?: BarAction;
};

export function GatePage({ gate, batchId, end }: Props) {
  const { station } = useShell();
  const { write, fault } = useWriting();
  const [already, setAlready] = useState(false);
  const { list, clearance } = gate;
  const until = clearance?.body.validUntil ?? null;
  async function happened(at: string, note: string): Promise<void> {
    const place = station.value === null ? {} : { stationId: station.value };
    await write(
      {
        do: 'log-step-happened',
        step: list.step,
        batchId,
        clearance: null,
        ...place,
        ...(note === '' ? {} : { note }),
      },
      at,
    );
  }
  if (already)
    return (
      <Already
        title={list.already}
        fault={fault}
        onBack={() => setAlready(false)}
        onWrite={(at, note) => void happened(at, note)}
      />
    );
  return (
    <Frame
      title={w.gate.title(list.title)}
      second={w.gate.second}
      focusKey={`gate ${list.id}`}
      ways={[{ label: w.pause, href: `#/batches/${batchId}` }, ...(end ? [end] : [])]}
      actions={
        <Buttons>
          <Button
            look="primary"
            voice="serif"
            href={clearance ? `#/clearance/${clearance.entryId}` : `#/check/${batchId}/${list.id}`}
            second={
              until === null
                ? w.gate.questions(list.items.filter(({ when }) => when === undefined).length)
                : w.gate.holds(hour(until))
            }
          >
            {list.title}
          </Button>
          <Button onTap={() => setAlready(true)}>{list.already}</Button>
        </Buttons>
      }
    >
      <Part>
        <p class={styles.look}>{list.purpose}</p>
      </Part>
    </Frame>
  );
}
