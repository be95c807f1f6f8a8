/** Levels that were read on a container, the newest first, with the way to read one more. */
import { levelAgainst } from '../../ledger/level-against';
import type { ContainerState } from '../../ledger/state';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, heldText, leadDayText } from '../amounts';
import { useShell } from '../shell';
import { doingWords, lifeWords as w } from './life-words';

/** As many as are read at a glance; all of them stand in the history. */
const atOnce = 3;

export function ContainerLevels({ container }: { readonly container: ContainerState }) {
  const { sign, now } = useShell();
  const { levels, doubtfulSince, body } = container;
  if (levels.length === 0) return null;
  const last = levels.at(-1);
  const agrees = levelAgainst(container)?.agrees;
  const told = (level: (typeof levels)[number]): string | undefined => {
    if (doubtfulSince !== null) return undefined;
    return level === last && agrees ? w.levelAgrees : w.levelNot(heldText(level.held, sign.value));
  };
  return (
    <Part rule title={w.levels} width="edge">
      <Rows>
        {levels
          .toReversed()
          .slice(0, atOnce)
          .map((level) => (
            <Row
              key={level.entryId}
              lead={leadDayText(level.at, now.value)}
              title={amountText(level.body.level, sign.value)}
              second={told(level)}
              href={`#/record/entry/${level.entryId}`}
            />
          ))}
        <Row title={doingWords['read-level'].short} href={`#/containers/${body.containerId}/level`} />
      </Rows>
    </Part>
  );
}
