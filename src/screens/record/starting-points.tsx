/** What laws say of a rule, to take over one by one. Taking one over fills the form; nothing is written by it. */

import { lawNames } from '../../paperwork/rule-words';
import { type StartingPoint, startingPointsFor } from '../../rules/starting-points';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import styles from './record.module.css';
import type { RuleFields } from './rule-fields';
import { ruleFormWords as w } from './words';

type Props = {
  readonly rule: string;
  readonly taken: RuleFields['taken'];
  readonly onTake: (point: StartingPoint) => void;
};

const isTaken = (taken: Props['taken'], { cite, value }: StartingPoint): boolean =>
  taken !== null && taken.cite === cite && taken.value === value;

export function StartingPoints({ rule, taken, onTake }: Props) {
  const points = startingPointsFor(rule);
  if (points.length === 0) return null;
  return (
    <Part rule title={w.startsTitle}>
      <p class={styles.quiet}>{w.startsSecond}</p>
      <Buttons>
        {points.map((point) => (
          <Button
            key={`${point.start} ${point.forWhom} ${point.value}`}
            onTap={() => onTake(point)}
            second={w.startSecond(lawNames[point.start], point)}
          >
            {isTaken(taken, point)
              ? w.startTaken(point.value, point.unit)
              : w.startValue(point.value, point.unit)}
          </Button>
        ))}
      </Buttons>
    </Part>
  );
}
