/** The first page: what this is, and two doors. */
import { useState } from 'preact/hooks';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import styles from '../record/record.module.css';
import { useShell } from '../shell';
import { words } from '../words';
import { startWords as w } from './words';

export function WelcomeScreen() {
  const { demo, record } = useShell();
  const [laying, setLaying] = useState(false);
  function look(): void {
    setLaying(true);
    void demo.enter().finally(() => setLaying(false));
  }
  return (
    <Frame
      title={w.title}
      main="spread"
      ways={[{ label: w.about, href: '#/record/about' }]}
      actions={
        <Buttons>
          <Button look="primary" voice="serif" href="#/start/workshop" second={w.beginSecond}>
            {w.begin}
          </Button>
          {record === 'real' && (
            <Button onTap={look} disabled={laying} second={laying ? w.laying : w.lookSecond}>
              {w.look}
            </Button>
          )}
        </Buttons>
      }
    >
      <Part>
        <p>{w.what}</p>
        <p>{w.where}</p>
      </Part>
      <Part>
        <p class={styles.quiet}>{words.caution}</p>
      </Part>
    </Frame>
  );
}
