/** How long a container may still stand: from when it counts, both last days, and where it stands. */
import { accumulationStart } from '../../ledger/accumulation';
import { duesOf, recordsKept } from '../../ledger/due';
import type { ContainerState, State } from '../../ledger/state';
import { withoutLimit } from '../../ledger/without-limit';
import { calendarDay } from '../../rules/clocks/calendar-day';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { calendarDayText, dayText } from '../amounts';
import { DueRow } from '../due/rows';
import { dueWords, keptText } from '../due/words';
import { useShell } from '../shell';
import { containerWords as w } from './words';

type Props = { readonly state: State; readonly container: ContainerState };

/** Days left in the corner, to the careful last day, once the workshop's own storage limit is entered. */
export function StorageAside({ state, container }: Props) {
  const { now, zone } = useShell();
  if (container.goneSince !== null) return null;
  const due = duesOf(state, container, now.value, zone).find(({ kind }) => kind === 'leave');
  if (!due && accumulationStart(state, container) !== null) return <span>{w.storageUnknown}</span>;
  if (!due) return container.firstWasteIn === null ? null : <span>{w.nearHere}</span>;
  const over = due.daysLeft < 0;
  const day = calendarDayText(due.day, now.value);
  return (
    <Notice
      mark={over ? 'overdue' : 'due'}
      share={due.shareLeft}
      size="small"
      second={over ? w.since(day) : w.until(day)}
    >
      {over ? null : <FigureValue value={String(due.daysLeft)} unit={w.days(due.daysLeft)} />}
    </Notice>
  );
}

/** Where it stands matters only where the local rules know a place beside the work. */
function AreaRow({ state, container }: Props) {
  const { now, zone } = useShell();
  if (!state.rules.has('near-work-limit')) return null;
  const href = `#/containers/${container.body.containerId}/change`;
  const last = container.areas.at(-1);
  if (!last) return <Row title={w.standsNot} second={w.standsNotSecond} href={href} />;
  const since = w.standsSince(calendarDayText(calendarDay(last.since, zone), now.value));
  const stopped = last.is === 'near-work' && accumulationStart(state, container) === null;
  return (
    <Row title={w.standsAt[last.is]} second={stopped ? `${since}. ${w.timeStopped}.` : since} href={href} />
  );
}

/** Counted up while nobody has said how long it may stand. */
function UncountedRow({ state, container }: Props) {
  const { now, zone } = useShell();
  const { containerId } = container.body;
  const one = withoutLimit(state, now.value, zone).find(
    (found) => found.kind === 'leave' && found.containerId === containerId,
  );
  if (!one) return null;
  return (
    <Row
      title={dueWords.notEntered.leave}
      second={one.reference ? dueWords.comparison(one.reference) : undefined}
      figure={<FigureValue value={String(one.days)} unit={w.days(one.days)} />}
      href="#/record/rules/storage-days"
    />
  );
}

/** The proof that was filed of one that is gone: the paper's number, and the day. */
function ProofRow({ container: { proofFiledAt, marks } }: Props) {
  const { now } = useShell();
  const filed = marks.findLast(({ body, at }) => body.mark === 'proof-filed' && at === proofFiledAt);
  if (!filed) return null;
  return (
    <Row
      title={w.proofFiled}
      second={[filed.body.document, dayText(filed.at, now.value)].filter(Boolean).join(', ')}
      href={`#/record/entry/${filed.entryId}`}
    />
  );
}

/** Until when what the record tells of one that is gone is kept. */
function KeptRow({ state, container }: Props) {
  const { now, zone } = useShell();
  const kept = recordsKept(state, container, now.value, zone);
  return (
    <Row
      title={dueWords.kept}
      second={keptText(kept, now.value)}
      href={kept === null ? '#/record/rules/retention-years' : undefined}
    />
  );
}

export function ContainerClock({ state, container }: Props) {
  const { now, zone } = useShell();
  const { firstWasteIn, goneSince } = container;
  const all = duesOf(state, container, now.value, zone);
  const start = accumulationStart(state, container);
  const here = goneSince === null;
  if (here && all.length === 0 && start === null && firstWasteIn === null) return null;
  const title = here ? w.storage : w.afterLeaving;
  const countedFrom = (moment: string): string => calendarDayText(calendarDay(moment, zone), now.value);
  return (
    <Part rule width="edge" title={title}>
      <Rows label={title}>
        {start !== null && <Row title={w.storageFrom} figure={<span>{countedFrom(start)}</span>} />}
        {start === null && firstWasteIn !== null && here && (
          <Row title={w.storageFirst} figure={<span>{countedFrom(firstWasteIn)}</span>} />
        )}
        {all.map((due) => (
          <DueRow key={due.id} due={due} opens="count" both />
        ))}
        <UncountedRow state={state} container={container} />
        {here ? (
          <AreaRow state={state} container={container} />
        ) : (
          <>
            <ProofRow state={state} container={container} />
            <KeptRow state={state} container={container} />
          </>
        )}
      </Rows>
    </Part>
  );
}
