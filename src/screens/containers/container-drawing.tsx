/** The drawn container with a line from each thing to its word. */
import { isNothing } from '../../ledger/amounts';
import type { ContainerFigures } from '../../ledger/container-figures';
import { capacityOf, fillLimitPercent, fillPercent } from '../../ledger/fill';
import type { ContainerState, State } from '../../ledger/state';
import { seenIn } from '../../ledger/whole-of';
import { formatNumber, formatWritten } from '../../quantities/format';
import { FigureValue } from '../../ui/figure-value';
import { VesselWithLeaders } from '../../ui/vessel-with-leaders';
import { amountText, heldText } from '../amounts';
import { useShell } from '../shell';
import { vesselDrawing } from '../vessel-drawing';
import { words } from '../words';
import { capWords, vesselWords, containerWords as w } from './words';

type Props = {
  readonly state: State;
  readonly container: ContainerState;
  readonly figures: ContainerFigures;
};

/** How much stands in it; of what nobody knows the level that was read, or what the record had, or nothing at all. */
function Level({ container }: Pick<Props, 'container'>) {
  const { sign } = useShell();
  const { holds, doubtfulSince, levels, body } = container;
  const capacity = amountText(body.capacity, sign.value);
  const percent = formatNumber(fillPercent(container), 0, sign.value);
  const [read] = levels.length === 0 ? [] : seenIn(container);
  if (doubtfulSince !== null && read)
    return (
      <>
        <FigureValue value={formatWritten(read, sign.value)} unit={read.unit} size="large" />
        <small>{w.asRead(capacity)}</small>
      </>
    );
  if (doubtfulSince !== null && isNothing(holds)) return <span>{words.notDetermined}</span>;
  if (holds.volume.isZero() && !holds.mass.isZero())
    return (
      <>
        <span>{w.noLiquid}</span>
        <small>{w.solidsFill(capacity, percent)}</small>
      </>
    );
  return (
    <>
      <FigureValue value={formatNumber(holds.volume, 2, sign.value)} unit="L" size="large" />
      <small>{w.of(capacity, percent)}</small>
    </>
  );
}

export function ContainerDrawing({ state, container, figures }: Props) {
  const { sign } = useShell();
  const { code, capacity, cap, vessel } = container.body;
  const capacityL = capacityOf(container);
  const drawing = vesselDrawing(state, container, figures);
  const limit = fillLimitPercent(state).percent;
  const solids = container.holds.mass.isZero()
    ? w.noSolids
    : w.solids(`${formatNumber(container.holds.mass, 0, sign.value)}\u2009g`);
  const unknown = drawing.tint === 'unknown';
  const colour = unknown ? w.contentsUnknown : drawing.tint === 'not-computed' ? w.colourNot : w.colourWorked;
  const name = [
    code,
    `${amountText(capacity, sign.value)} ${vesselWords[vessel]}`,
    capWords[cap],
    container.doubtfulSince === null ? heldText(container.holds, sign.value) : words.notDetermined,
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
      level={<Level container={container} />}
      contents={
        <>
          <span>{colour}</span>
          <small>{solids}</small>
        </>
      }
    />
  );
}
