/** A reading: entered on our own pad, for gloves. What is wanted is not shown before it is entered. */
import { lastReading } from '../../ledger/last-reading';
import type { ReadingItem } from '../../safety/checklist-item';
import { stepped } from '../../safety/stepped-reading';
import { FigureValue } from '../../ui/figure-value';
import { Pad } from '../../ui/pad';
import { useShell } from '../shell';
import styles from './checklist.module.css';
import { dayOf, words, written } from './words';

/** What has been keyed, and beside it what the meter showed the last time. */
export function KeyedFigure(props: {
  readonly item: ReadingItem;
  readonly list: string;
  readonly keyed: string;
}) {
  const { state, sign } = useShell();
  const last = props.item.last ? lastReading(state.value, props.list, props.item.id) : null;
  return (
    <div class={styles.figure}>
      <output aria-label={props.item.ask}>
        <FigureValue
          size="main"
          value={props.keyed === '' ? words.reading.none : props.keyed.replace('-', '−')}
          unit={props.item.unit}
        />
      </output>
      {last && (
        <p class={styles.last}>
          <span>{words.reading.last(written(last.answer, last.unit, sign.value))}</span>
          <span>{dayOf(last.at)}</span>
        </p>
      )}
    </div>
  );
}

export function ReadingPad(props: {
  readonly item: ReadingItem;
  readonly keyed: string;
  readonly onKeyed: (keyed: string) => void;
  readonly onEnter: () => void;
}) {
  const { sign } = useShell();
  return (
    <Pad
      value={props.keyed}
      onChange={props.onKeyed}
      onEnter={props.onEnter}
      decimalSign={sign.value}
      maxLength={7}
      enterDisabled={props.keyed === ''}
      enterLabel={words.reading
        .enter(props.keyed === '' ? '' : written(props.keyed.replace(',', '.'), props.item.unit, sign.value))
        .trim()}
      clearLabel={words.reading.clear}
      decimalLabel={words.reading.decimal}
      backLabel={words.reading.backDigit}
      label={words.reading.pad}
      onStep={(direction) => props.onKeyed(stepped(props.keyed, direction))}
      stepLabels={{ up: words.reading.up, down: words.reading.down }}
    />
  );
}
