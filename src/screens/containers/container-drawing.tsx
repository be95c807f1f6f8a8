/** The drawn container with a line from each thing to its word, and the days it may still stand. */
import type { ContainerFigures } from '../../ledger/container-figures';
import { capacityOf, fillLimitPercent, fillPercent } from '../../ledger/fill';
import type { ContainerState, State } from '../../ledger/state';
import { formatNumber } from '../../quantities/format';
import { storageClock } from '../../rules/clocks/storage-clock';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { VesselWithLeaders } from '../../ui/vessel-with-leaders';
import { amountText, calendarDayText, heldText } from '../amounts';
import { useShell } from '../shell';
import { vesselDrawing } from '../vessel-drawing';
import { capWords, vesselWords, containerWords as w } from './words';

/** Days left in the corner, once the workshop's own storage limit is entered. */
export function StorageAside({
  state,
  container,
}: {
  readonly state: State;
  readonly container: ContainerState;
}) {
  const { now, zone } = useShell();
  const rule = state.rules.get('storage-days')?.body.stated;
  if (container.firstWasteIn === null) return null;
  if (rule?.rule !== 'storage-days') return <span>{w.storageUnknown}</span>;
  const clock = storageClock(container.firstWasteIn, Number(rule.value.value), now.value, zone);
  const over = clock.daysLeft < 0;
  return (
    <Notice
      mark={over ? 'overdue' : 'due'}
      share={clock.shareLeft}
      size="small"
      second={
        over
          ? w.since(calendarDayText(clock.lastDay, now.value))
          : w.until(calendarDayText(clock.lastDay, now.value))
      }
    >
      {over ? null : <FigureValue value={String(clock.daysLeft)} unit={w.days(clock.daysLeft)} />}
    </Notice>
  );
}

type Props = {
  readonly state: State;
  readonly container: ContainerState;
  readonly figures: ContainerFigures;
};

export function ContainerDrawing({ state, container, figures }: Props) {
  const { sign } = useShell();
  const { code, capacity, cap, vessel } = container.body;
  const capacityL = capacityOf(container);
  const percent = formatNumber(fillPercent(container), 0, sign.value);
  const drawing = vesselDrawing(state, container, figures);
  const limit = fillLimitPercent(state).percent;
  const level = formatNumber(container.holds.volume, 2, sign.value);
  const dry = container.holds.volume.isZero() && !container.holds.mass.isZero();
  const solids = container.holds.mass.isZero()
    ? w.noSolids
    : w.solids(`${formatNumber(container.holds.mass, 0, sign.value)}\u2009g`);
  const unknown = drawing.tint === 'unknown';
  const colour = unknown ? w.contentsUnknown : drawing.tint === 'not-computed' ? w.colourNot : w.colourWorked;
  const name = [
    code,
    `${amountText(capacity, sign.value)} ${vesselWords[vessel]}`,
    capWords[cap],
    heldText(container.holds, sign.value),
    w.limit(limit),
    colour,
    solids,
  ].join(', ');
  return (
    <VesselWithLeaders
      vessel={drawing}
      name={name}
      tickEveryL={capacityL.gte(4) ? 1 : 0.25}
      cap={capWords[cap]}
      limit={w.limit(limit)}
      level={
        dry ? (
          <>
            <span>{w.noLiquid}</span>
            <small>{w.solidsFill(amountText(capacity, sign.value), percent)}</small>
          </>
        ) : (
          <>
            <FigureValue value={level} unit="L" size="large" />
            <small>{w.of(amountText(capacity, sign.value), percent)}</small>
          </>
        )
      }
      contents={
        <>
          <span>{colour}</span>
          <small>{solids}</small>
        </>
      }
    />
  );
}
