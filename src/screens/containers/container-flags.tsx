/** What is wrong with a container, on its own page: each row leads to where it is put right. */
import { type Flag, flags } from '../../ledger/flags';
import { cardOf } from '../../ledger/flags-of-meetings';
import type { ContainerState, State } from '../../ledger/state';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { useShell } from '../shell';
import { markOf } from '../today/rows';
import { flagWords } from '../today/words';
import { lifeWords as w } from './life-words';

/** Shown elsewhere on the page: as its state, as what has met, as the treatment. */
const shownElsewhere: ReadonlySet<Flag['code']> = new Set([
  'contents-doubtful',
  'material-not-determined',
  'treatment-running',
  'treatment-for-planning-only',
]);

/** Where it is put right. */
function hrefOf(flag: Flag, containerId: string): string {
  const { about } = flag;
  const page = (name: string): string => `#/containers/${containerId}/${name}`;
  switch (flag.code) {
    case 'finding-open':
      return `#/findings/${flag.findingId}`;
    case 'answer-stale':
      return page('candidates');
    case 'container-damaged':
      return page('move-all');
    case 'level-disagrees':
      return page('level/why');
    case 'over-fill-limit':
    case 'said-empty-yet-holds':
      return page('out');
    case 'over-capacity':
      return page('level');
    case 'tight-cap-on-gassing-waste':
      return page('change');
    default:
      if (about.treatmentId !== undefined) return `#/treatment/${about.treatmentId}`;
      if (about.handOverId !== undefined) return `#/hand-overs/${about.handOverId}`;
      return about.entryId === undefined ? page('history') : `#/record/entry/${about.entryId}`;
  }
}

export function ContainerFlags({
  state,
  container,
}: {
  readonly state: State;
  readonly container: ContainerState;
}) {
  const { sign } = useShell();
  const { containerId, code } = container.body;
  const own = flags(state).filter(
    (flag) =>
      flag.about.containerId === containerId && cardOf(flag) === null && !shownElsewhere.has(flag.code),
  );
  if (own.length === 0) return null;
  return (
    <Part rule width="edge">
      <Rows label={w.wrong}>
        {own.map((flag, i) => {
          const { title, second } = flagWords(flag, unbroken(code), sign.value);
          return (
            <Row
              key={`${flag.code}${i}`}
              mark={<Mark kind={markOf(flag)} />}
              title={title}
              second={second}
              marked={markOf(flag) === 'wrong'}
              href={hrefOf(flag, containerId)}
            />
          );
        })}
      </Rows>
    </Part>
  );
}
