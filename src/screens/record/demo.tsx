/** Into the invented workshop, out of it, and its removal after one plain question. */
import { useState } from 'preact/hooks';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { demoWords as w } from './words';

export function DemoScreen() {
  const { demo, record } = useShell();
  const [laying, setLaying] = useState(false);
  function enter(): void {
    setLaying(true);
    void demo.enter().finally(() => setLaying(false));
  }
  const inside = record === 'demo';
  return (
    <Frame
      place="record"
      title={w.title}
      second={w.second}
      actions={
        <Buttons>
          {inside ? (
            <Button look="primary" onTap={demo.leave} second={w.leaveSecond}>
              {w.leave}
            </Button>
          ) : (
            <Button
              look="primary"
              onTap={enter}
              disabled={laying}
              second={laying ? w.entering : w.enterSecond}
            >
              {w.enter}
            </Button>
          )}
          <Button href="#/record/demo/remove" second={w.removeSecond}>
            {w.remove}
          </Button>
        </Buttons>
      }
    >
      <Part rule>
        <p>{w.apart}</p>
      </Part>
    </Frame>
  );
}

/** Removing leaves the invented record first, so that this screen is gone before the answer: it has its own address. */
export function DemoRemoveScreen() {
  const { demo, go } = useShell();
  const [removing, setRemoving] = useState(false);
  async function remove(): Promise<void> {
    setRemoving(true);
    const failure = await demo.remove();
    go(failure === null ? 'record/demo/removed' : 'record/demo/not-removed', 'replace');
  }
  return (
    <Frame
      place="record"
      title={w.confirmTitle}
      actions={
        <Buttons>
          <Button look="primary" href="#/record/demo">
            {w.removeNo}
          </Button>
          <Button onTap={() => void remove()} disabled={removing}>
            {w.removeYes}
          </Button>
        </Buttons>
      }
    >
      <Part rule>
        <p>{w.confirm}</p>
      </Part>
    </Frame>
  );
}

const After = ({
  title,
  words,
  href,
  door,
}: Readonly<Record<'title' | 'words' | 'href' | 'door', string>>) => (
  <Frame
    place="record"
    title={title}
    actions={
      <Button look="primary" href={href}>
        {door}
      </Button>
    }
  >
    <Part rule>
      <p>{words}</p>
    </Part>
  </Frame>
);

export const DemoRemovedScreen = () => (
  <After title={w.removed} words={w.removedWords} href="#/record" door={w.toRecord} />
);

export const DemoNotRemovedScreen = () => (
  <After title={w.notRemoved} words={w.notRemovedWords} href="#/record/demo/remove" door={w.removeAgain} />
);
