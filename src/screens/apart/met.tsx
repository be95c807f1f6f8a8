/** On a container's page: what has met in it and must not have, with the way to the emergency card. */
import type { Flag } from '../../ledger/flags';
import { cardOf, flagsOfMeetings } from '../../ledger/flags-of-meetings';
import type { ContainerState, State } from '../../ledger/state';
import { flagsOfAmmonia } from '../../ledger/treatment-flags';
import { saidBy } from '../../safety/must-not-meet/words';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { flagWords } from '../today/words';
import { thingInside, thingName } from '../words';
import { cardThen } from './refused';
import { apartWords as w } from './words';

type Props = { readonly state: State; readonly container: ContainerState };

function titleOf(flag: Flag, code: string): string {
  if (flag.code === 'met-what-it-must-not') return w.met(thingName(flag.a), thingInside(flag.b));
  if (flag.code === 'container-does-not-hold') return w.doesNotHold(thingName(flag.a), thingInside(flag.b));
  return flagWords(flag, code).title;
}

const secondOf = (flag: Flag, code: string): string =>
  'by' in flag ? saidBy(flag.by) : flagWords(flag, code).second;

export function Met({ state, container }: Props) {
  const { containerId } = container.body;
  const code = unbroken(container.body.code);
  const all = [...flagsOfMeetings(state, container), ...flagsOfAmmonia(state, container)];
  const open = all.find((flag) => flag.code === 'material-not-determined');
  return (
    <>
      {all.map((flag) => {
        const card = cardOf(flag);
        if (card === null) return null;
        return (
          <div key={flag.code}>
            <Notice mark="stop" second={secondOf(flag, code)}>
              {titleOf(flag, code)}
            </Notice>
            <Part>
              <Button href={`#/${cardThen(card, containerId)}`}>{w.whatNow}</Button>
            </Part>
          </div>
        );
      })}
      {open && (
        <Notice mark="unknown" second={w.lacks[open.lacks]}>
          {w.notDetermined}
        </Notice>
      )}
    </>
  );
}
