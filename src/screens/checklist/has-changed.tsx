/** Before the first question of a list that is other than the last time: nobody answers it from memory. */
import type { ListChange } from '../../safety/list-changes';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { useTapGuard } from '../../ui/tap-guard';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { rangeText, words } from './words';

/** "new: 5 to 30, before: 5 to 40" and the like. */
function useSecond(): (change: ListChange) => string {
  const { sign } = useShell();
  return (change) => {
    const w = words.changed;
    switch (change.is) {
      case 'new':
        return change.own ? w.newOwn : w.new;
      case 'gone':
        return w.gone;
      case 'reworded':
        return w.before(change.before);
      case 'range':
        return w.range(rangeText(change.now, sign.value), rangeText(change.before, sign.value));
    }
  };
}

export function HasChanged(props: {
  readonly title: string;
  readonly changes: readonly ListChange[];
  readonly home: string;
  readonly onRead: () => void;
}) {
  const { moment } = useShell();
  const guard = useTapGuard('has changed', moment);
  const second = useSecond();
  return (
    <Frame
      title={words.changed.title}
      second={props.title}
      focusKey="has changed"
      ways={[{ label: words.back, href: `#/${props.home}` }]}
      actions={
        <Button look="primary" onTap={guard(props.onRead)}>
          {words.changed.read}
        </Button>
      }
    >
      <Part width="edge">
        <Rows label={words.changed.title}>
          {props.changes.map((change) => (
            <Row key={`${change.item} ${change.is}`} title={change.ask} second={second(change)} />
          ))}
        </Rows>
      </Part>
    </Frame>
  );
}
