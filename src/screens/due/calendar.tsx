/** All last days as one file that any calendar reads; made on this phone, with no network. */
import { useRef, useState } from 'preact/hooks';
import { dues } from '../../ledger/due';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Fault } from '../fault';
import { Frame } from '../frame';
import { useCommon } from '../papers/use-making';
import { ShareFiles, useAddress } from '../share-file';
import { useShell } from '../shell';
import { words } from '../words';
import { type CalendarMade, makeCalendar } from './calendar-file';
import { dueWords as w } from './words';

type Made = Extract<CalendarMade, { ok: true }>;

function Ways({ made: { file } }: { readonly made: Made }) {
  const address = useAddress(file);
  return (
    <Buttons>
      <Button look="primary" href={address} download={file.name}>
        {w.calendarSave}
      </Button>
      <ShareFiles files={[file]} />
    </Buttons>
  );
}

export function CalendarScreen() {
  const { state, now, zone } = useShell();
  const common = useCommon();
  const [made, setMade] = useState<Made | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const running = useRef(false);
  const none = dues(state.value, now.value, zone).length === 0;
  async function make(): Promise<void> {
    if (running.current) return;
    running.current = true;
    setBusy(true);
    const result = await makeCalendar(common());
    setFault(result.ok ? null : result.words);
    setMade(result.ok ? result : null);
    running.current = false;
    setBusy(false);
  }
  return (
    <Frame
      title={w.calendar}
      second={made ? w.calendarIn(made.days) : w.calendarSecond}
      focusKey={made ? 'made' : 'to make'}
      ways={[{ label: words.back, href: '#/due' }]}
      actions={
        made ? (
          <Ways made={made} />
        ) : (
          <>
            <Fault words={fault} />
            <Button look="primary" disabled={busy || none} onTap={() => void make()}>
              {busy ? w.calendarMaking : w.calendarAll}
            </Button>
          </>
        )
      }
    >
      <Part rule>
        {none && <p>{w.calendarNone}</p>}
        <p>{w.calendarHow}</p>
        <p>{w.calendarCareful}</p>
        <p>{w.calendarAgain}</p>
      </Part>
      {made && (
        <Part rule width="edge">
          <Rows>
            <Row title={made.file.name} />
          </Rows>
        </Part>
      )}
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
