/** Back after a pause: what was said last must still be true, and what is too old is asked again. */
import { back, type Resumed, standing } from '../../safety/checklist-run';
import type { Answered, Run } from '../../safety/run-schema';
import { stoppedAt } from '../../safety/words';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { useTapGuard } from '../../ui/tap-guard';
import { Frame } from '../frame';
import { useShell } from '../shell';
import styles from './checklist.module.css';
import { saidWords, words } from './words';

const Said = ({ said }: { readonly said: readonly Answered[] }) => {
  const { sign } = useShell();
  return (
    <Rows label={words.resume.stillTrue}>
      {said.map((one) => (
        <Row key={one.item} title={saidWords(one, sign.value)} second={one.ask} />
      ))}
    </Rows>
  );
};

/** The run with the answers shown taken back, to be asked again. */
const without = (run: Run, said: readonly Answered[]): Run =>
  said.reduce((left) => {
    const result = back(left);
    return result.ok ? { ...result.value, openedAt: run.openedAt } : left;
  }, run);

type LookAgainProps = {
  readonly arrived: Extract<Resumed, { how: 'look-again' }>;
  readonly home: string;
  readonly onGoOn: (run: Run) => void;
};

export function LookAgain({ arrived, home, onGoOn }: LookAgainProps) {
  const { moment } = useShell();
  const guard = useTapGuard('look again', moment);
  const { run, said, minutes } = arrived;
  const now = standing(run);
  const number = now.state === 'next' ? now.number : run.answered.length;
  return (
    <Frame
      title={stoppedAt(number, minutes)}
      focusKey="look again"
      ways={[{ label: words.back, href: `#/${home}` }]}
      actions={
        <Buttons>
          <Button look="primary" onTap={guard(() => onGoOn(run))}>
            {said.length === 0 ? words.resume.goOn : words.resume.yes}
          </Button>
          {said.length > 0 && (
            <Button onTap={guard(() => onGoOn(without(run, said)))}>{words.resume.askAgain}</Button>
          )}
        </Buttons>
      }
    >
      {said.length > 0 && (
        <Part title={words.resume.stillTrue} width="edge">
          <Said said={said} />
        </Part>
      )}
    </Frame>
  );
}

export function Restart(props: {
  readonly reason: string;
  readonly home: string;
  readonly onRestart: () => void;
}) {
  const { moment } = useShell();
  const guard = useTapGuard('restart', moment);
  return (
    <Frame
      title={words.resume.restartTitle}
      focusKey="restart"
      ways={[{ label: words.back, href: `#/${props.home}` }]}
      actions={
        <Button look="primary" onTap={guard(props.onRestart)}>
          {words.resume.restart}
        </Button>
      }
    >
      <Part>
        <p class={styles.look}>{props.reason}</p>
      </Part>
    </Frame>
  );
}
