/** First start, page 3: that the local rules are not entered, and what follows from it. */
import { Button, Buttons } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import styles from '../record/record.module.css';
import { words } from '../words';
import { startWords as w } from './words';

export const StartRulesScreen = () => (
  <Frame
    title={w.rulesTitle}
    second={w.rulesSecond}
    main="spread"
    actions={
      <Buttons>
        <Button look="primary" voice="serif" href="#/record/rules" second={w.enterSecond}>
          {w.enterNow}
        </Button>
        <Button href="#/today" second={w.laterSecond}>
          {w.later}
        </Button>
      </Buttons>
    }
  >
    <div>
      <Notice mark="unknown">{w.until}</Notice>
      <Part>
        <ul class={styles.plain}>
          {w.follows.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Part>
    </div>
    <Part>
      <p class={styles.quiet}>{words.caution}</p>
    </Part>
  </Frame>
);
