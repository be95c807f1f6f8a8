/** What stands on the first page, in whatever frame: it is drawn before the rest of the app is there. */
import type { ComponentChildren, ComponentType } from 'preact';
import type { BarAction } from '../../ui/bar';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { caution } from '../caution';
import styles from './start.module.css';
import { startWords as w } from './words';

export type OuterProps = {
  readonly title: string;
  readonly main: 'spread';
  readonly ways: readonly BarAction[];
  readonly actions: ComponentChildren;
  readonly children: ComponentChildren;
};

type WelcomeProps = {
  readonly outer: ComponentType<OuterProps>;
  /** The invented workshop is being laid out. */
  readonly laying: boolean;
  /** Opens the invented workshop; null where it is open. */
  readonly look: (() => void) | null;
};

export const WelcomePage = ({ outer: Outer, laying, look }: WelcomeProps) => (
  <Outer
    title={w.title}
    main="spread"
    ways={[{ label: w.about, href: '#/record/about' }]}
    actions={
      <Buttons>
        <Button look="primary" voice="serif" href="#/start/workshop" second={w.beginSecond}>
          {w.begin}
        </Button>
        {look && (
          <Button onTap={look} disabled={laying} second={laying ? w.laying : w.lookSecond}>
            {w.look}
          </Button>
        )}
        {look && (
          <Button href="#/record/restore" second={w.restoreSecond}>
            {w.restore}
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
      <p class={styles.quiet}>{caution}</p>
    </Part>
  </Outer>
);
