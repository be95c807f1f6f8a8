/** All hand-overs: those whose proof is awaited first, the newest first. */
import { useMemo } from 'preact/hooks';
import { awaited } from '../../ledger/due';
import type { HandOverState } from '../../ledger/state';
import { Button } from '../../ui/button';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row } from '../../ui/row';
import { dayText } from '../amounts';
import { markOfDue } from '../due/rows';
import { dueWords } from '../due/words';
import { LongAgo } from '../find/door';
import { Frame } from '../frame';
import { LongRows } from '../long-rows';
import { useShell } from '../shell';
import { words } from '../words';
import { codesOf, inOrder, proofDueOf } from './load';
import { handOverWords as w } from './words';

/** With its last day where one runs, as on Today. */
function LoadRow({ handOver }: { readonly handOver: HandOverState }) {
  const { state, now, zone } = useShell();
  const { handOverId, collector, containers } = handOver.body;
  const open = awaited(state.value, handOver);
  const due = proofDueOf(state.value, handOverId, now.value, zone);
  const codes = codesOf(
    state.value,
    containers.map(({ containerId }) => containerId),
  );
  return (
    <Row
      {...(open.length === 0
        ? { start: 'text' as const }
        : { mark: <Mark kind={due ? markOfDue(due) : 'due'} share={due?.shareLeft} /> })}
      title={w.load(collector.name, dayText(handOver.at, now.value))}
      second={open.length === 0 ? codes : `${codes}. ${w.awaits(codesOf(state.value, open))}`}
      figure={
        due && due.daysLeft > 0 ? (
          <FigureValue value={dueWords.count(due.daysLeft)} unit={dueWords.days(due.daysLeft)} />
        ) : undefined
      }
      href={`#/hand-overs/${handOverId}`}
    />
  );
}

const loadRow = (handOver: HandOverState) => <LoadRow key={handOver.body.handOverId} handOver={handOver} />;

export function HandOverList() {
  const { state } = useShell();
  const all = useMemo(() => inOrder(state.value), [state.value]);
  const open = all.filter((handOver) => awaited(state.value, handOver).length > 0).length;
  return (
    <Frame
      place="papers"
      title={w.title}
      second={all.length === 0 ? w.second : w.openProofs(open)}
      actions={
        <Button look="primary" voice="serif" href="#/hand-overs/new" second={w.makeSecond}>
          {w.make}
        </Button>
      }
    >
      {all.length === 0 ? (
        <Part>
          <p>{w.none}</p>
        </Part>
      ) : (
        <Part rule width="edge">
          <LongRows of={all} row={loadRow} label={w.title} />
          <LongAgo is="hand-over" />
        </Part>
      )}
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
