/** A container to tick as leaving: the drawn vessel, how much by the record, and another amount where the collector has one. */

import { useMemo } from 'preact/hooks';
import { isDoubted } from '../../ledger/container-life';
import type { ContainerState } from '../../ledger/state';
import { seenIn } from '../../ledger/whole-of';
import { Tick } from '../../ui/choices';
import { unbroken } from '../../ui/figure-value';
import { Vessel } from '../../ui/vessel';
import { amountText, heldText } from '../amounts';
import { contentsText } from '../containers/contents-text';
import type { Typed } from '../form';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { vesselDrawing } from '../vessel-drawing';
import { emptyTheirs, readTheirs, unitsTheirs } from './draft';
import styles from './hand-overs.module.css';
import { handOverWords as w } from './words';

/** One scale for all, small: what is larger looks larger. */
const scale = 0.16;

/** Of what nobody knows: the level that was read. */
function useByRecord(container: ContainerState): string {
  const { state, sign } = useShell();
  if (!isDoubted(state.value, container)) return w.byRecord(heldText(container.holds, sign.value));
  const seen = seenIn(container).map((amount) => amountText(amount, sign.value));
  return seen.length === 0 ? w.unknownAmount : w.byRecord(seen.join(', '));
}

type Props = {
  readonly container: ContainerState;
  readonly chosen: boolean;
  readonly onChoose: (chosen: boolean) => void;
  /** Missing where both agree. */
  readonly theirs: Typed | undefined;
  readonly onTheirs: (theirs: Typed | undefined) => void;
  readonly tried: boolean;
};

export function Leaving({ container, chosen, onChoose, theirs, onTheirs, tried }: Props) {
  const { state } = useShell();
  const now = state.value;
  // A key typed anywhere in the form draws all of them.
  const drawing = useMemo(() => vesselDrawing(now, container), [now, container]);
  const code = unbroken(container.body.code);
  const aside = container.leavingSince === null ? '' : `, ${w.setAside}`;
  return (
    <li class={styles.choice}>
      <span class={styles.vessel}>
        <Vessel {...drawing} code={undefined} scale={scale} />
      </span>
      <Tick
        label={`${code}${aside}`}
        second={`${contentsText(now, container)}. ${useByRecord(container)}`}
        checked={chosen}
        onChange={onChoose}
      />
      {chosen && (
        <div class={styles.below}>
          <Tick
            label={
              <>
                <span class="visually-hidden">{code}: </span>
                {w.differs}
              </>
            }
            second={theirs ? undefined : w.differsSecond}
            checked={theirs !== undefined}
            onChange={(differs) => onTheirs(differs ? emptyTheirs(container) : undefined)}
          />
          {theirs && (
            <NumberField
              label={w.theirs(code)}
              field={theirs}
              units={unitsTheirs}
              onChange={onTheirs}
              read={readTheirs(theirs)}
              tried={tried}
            />
          )}
        </div>
      )}
    </li>
  );
}
