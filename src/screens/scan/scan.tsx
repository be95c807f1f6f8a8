/** Reads a label with the camera or by its typed code, and opens its container. */
import { useState } from 'preact/hooks';
import { putAwayRows } from '../../ledger/put-away';
import type { State } from '../../ledger/state';
import { labelled, type Named, type ReadLabel, readLabel } from '../../paperwork/labels/container-link';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { TextField } from '../../ui/text-field';
import { contentsTitle } from '../amounts';
import { Fault } from '../fault';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import type { Camera } from './camera';
import styles from './scan.module.css';
import { useCamera } from './use-camera';
import { scanWords as w } from './words';

function faultOf(label: ReadLabel): string {
  if (label.by === 'id') return w.unknownId;
  return label.by === 'code' ? w.unknownCode(label.code) : w.notALabel;
}

function Light({ torch }: { readonly torch: NonNullable<Camera['torch']> }) {
  const [on, setOn] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  async function turn(): Promise<void> {
    try {
      await torch(!on);
      setOn(!on);
      setFault(null);
    } catch {
      setFault(w.lightNot);
    }
  }
  return (
    <>
      <Fault words={fault} />
      <Button centred onTap={() => void turn()}>
        {on ? w.lightOff : w.lightOn}
      </Button>
    </>
  );
}

/** All that a label may be on, long gone or not. */
const everyContainer = (state: State): readonly Named[] => [
  ...[...state.containers.values()].map(({ body }) => body),
  ...putAwayRows(state).flatMap(({ is, id, code }) => (is === 'container' ? { containerId: id, code } : [])),
];

function Several({ containers }: { readonly containers: readonly Named[] }) {
  const { state } = useShell();
  return (
    <Part rule title={w.several} width="edge">
      <Rows label={w.several}>
        {containers.map(({ containerId, code }) => (
          <Row
            key={containerId}
            title={unbroken(code)}
            second={
              state.value.containers.has(containerId) ? contentsTitle(state.value, containerId) : w.longGone
            }
            href={`#/containers/${containerId}`}
          />
        ))}
      </Rows>
    </Part>
  );
}

export function ScanScreen() {
  const { state, go } = useShell();
  const [code, setCode] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const [several, setSeveral] = useState<readonly Named[]>([]);

  /** @returns whether it led anywhere */
  function take(text: string): boolean {
    const label = readLabel(text);
    const found = labelled(everyContainer(state.value), label);
    const [only, ...more] = found;
    setSeveral(more.length > 0 ? found : []);
    setFault(only ? null : faultOf(label));
    if (only && more.length === 0) go(`containers/${only.containerId}`);
    return only !== undefined;
  }
  const { looking, video, start, stop } = useCamera(take);

  return (
    <Frame
      title={w.title}
      second={w.second}
      ways={[{ label: words.back, href: '#/containers' }]}
      actions={
        looking.is === 'on' ? (
          <Buttons side>
            {looking.camera.torch && <Light torch={looking.camera.torch} />}
            <Button centred onTap={stop}>
              {w.stop}
            </Button>
          </Buttons>
        ) : (
          <Button
            look="primary"
            voice="serif"
            disabled={looking.is === 'asking'}
            second={w.startSecond}
            onTap={() => void start()}
          >
            {looking.is === 'asking' ? w.asking : w.start}
          </Button>
        )
      }
    >
      {looking.is === 'on' && (
        <Part>
          <video ref={video} class={styles.picture} aria-label={w.picture} muted playsInline />
          <p role="status">{w.looking}</p>
        </Part>
      )}
      {looking.is === 'failed' && (
        <Notice mark="wrong" role="alert">
          {w.faults[looking.fault]}
        </Notice>
      )}
      {fault !== null && (
        <Notice mark="wrong" role="alert">
          {fault}
        </Notice>
      )}
      {several.length > 0 && <Several containers={several} />}
      <Part rule={looking.is !== 'off'}>
        <form
          class={styles.typed}
          onSubmit={(event) => {
            event.preventDefault();
            if (code.trim() === '') setFault(w.empty);
            else take(code);
          }}
        >
          <TextField label={w.code} value={code} hint={w.codeHint} maxLength={400} onInput={setCode} />
          <Button type="submit">{w.open}</Button>
        </form>
      </Part>
    </Frame>
  );
}
