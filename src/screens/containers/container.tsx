/** One container: the drawing, what is in it, what it takes to neutralise it, and what went in and out. */

import { type ContainerFigures, containerFigures } from '../../ledger/container-figures';
import { capacityOf, fillLimitPercent, fillPercent } from '../../ledger/fill';
import type { ContainerMovement, ContainerState, State } from '../../ledger/state';
import { wasteKinds } from '../../ledger/waste-kinds';
import { formatNumber } from '../../quantities/format';
import { storageClock } from '../../rules/storage-clock';
import { neverFor } from '../../safety/never-rules';
import { Button, Buttons } from '../../ui/button';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { VesselWithLeaders } from '../../ui/vessel-with-leaders';
import {
  amountText,
  calendarDayText,
  contentsTitle,
  dayText,
  heldText,
  shown,
  streamTitle,
} from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { vesselDrawing } from '../vessel-drawing';
import { words } from '../words';
import { BaseRows } from './base-rows';
import { LoadTable } from './load-table';
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

function Drawing({ state, container, figures }: Props) {
  const { sign } = useShell();
  const { code, capacity, cap, vessel } = container.body;
  const capacityL = capacityOf(container);
  const percent = formatNumber(fillPercent(container), 0, sign.value);
  const drawing = vesselDrawing(state, container, figures);
  const limit = fillLimitPercent(state).percent;
  const level = formatNumber(container.holds.volume, 2, sign.value);
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
        <>
          <FigureValue value={level} unit="L" size="large" />
          <small>{w.of(amountText(capacity, sign.value), percent)}</small>
        </>
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

function Never({ state, container }: Omit<Props, 'figures'>) {
  const rules = neverFor(wasteKinds(state, container.body.containerId).kinds);
  if (rules.length === 0) return null;
  const first = rules.slice(0, 3);
  return (
    <Part rule>
      <Notice mark="stop">{`${first.map((r) => r.short).join('. ')}.`}</Notice>
      <details>
        <summary>{w.allNever(rules.length)}</summary>
        <ul>
          {rules.map((r) => (
            <li key={r.id}>
              <b>{r.short}.</b> {r.happens}
            </li>
          ))}
        </ul>
      </details>
    </Part>
  );
}

function movementTitle(state: State, m: ContainerMovement): string {
  const other = m.otherId === null ? undefined : state.containers.get(m.otherId)?.body.code;
  if (m.way === 'in')
    return m.streamId === null ? w.pouredFrom(unbroken(other ?? '')) : streamTitle(state, m.streamId);
  if (m.purpose === 'placed') return '';
  return other === undefined ? w.out[m.purpose] : `${w.out[m.purpose]} ${unbroken(other)}`;
}

function Ledger({ state, container }: Omit<Props, 'figures'>) {
  const { sign, now } = useShell();
  const movements = container.movements.toReversed();
  return (
    <Part rule title={w.ledgerTitle} width="edge">
      <Rows>
        {movements.length === 0 && <Row title={w.ledgerNone} />}
        {movements.map((m) => (
          <Row
            key={`${m.entryId}${m.way}`}
            lead={dayText(m.at, now.value)}
            title={movementTitle(state, m)}
            second={m === container.movements[0] ? w.firstIn : undefined}
            figure={`${m.way === 'in' ? '+' : '−'}${amountText(m.amount, sign.value)}`}
            href={`#/record/entry/${m.entryId}`}
          />
        ))}
      </Rows>
    </Part>
  );
}

/** Residues: their wet mass, and the liquor each still holds. */
function Residues({ state, container, figures }: Props) {
  const { sign } = useShell();
  const { residues } = figures.contents;
  if (residues.length === 0) return null;
  const base = `#/containers/${container.body.containerId}/working`;
  return (
    <Part rule width="edge">
      <Rows>
        {residues.flatMap((r, i) => [
          <Row
            key={`residue ${i}`}
            title={w.holds}
            second={streamTitle(state, r.streamId)}
            figure={<FigureValue {...shown(r.wetMass, sign.value)} />}
            href={`${base}/residue-${i + 1}`}
          />,
          r.held ? (
            <Row
              key={`held ${i}`}
              title={w.held}
              figure={<FigureValue {...shown(r.held.volume, sign.value)} />}
              href={`${base}/held-${i + 1}`}
              equals
            />
          ) : (
            <Row key={`held ${i}`} mark={<Mark kind="unknown" />} title={w.silent} />
          ),
        ])}
      </Rows>
    </Part>
  );
}

function Volumes({ container, figures }: Omit<Props, 'state'>) {
  const { sign } = useShell();
  const base = `#/containers/${container.body.containerId}/working`;
  if (!figures.load || !figures.density) return null;
  return (
    <Rows>
      <Row
        title={w.volume}
        figure={<FigureValue {...shown(figures.load.volume, sign.value)} />}
        href={`${base}/volume`}
        equals={figures.load.volume.how === 'worked-out'}
      />
      <Row
        title={w.density}
        figure={<FigureValue {...shown(figures.density, sign.value)} />}
        href={`${base}/density`}
        equals={figures.density.how === 'worked-out'}
      />
    </Rows>
  );
}

export function ContainerScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.id ?? '');
  if (!container)
    return (
      <Frame place="containers" title={w.title}>
        <Part>
          <p>{w.gone}</p>
        </Part>
      </Frame>
    );
  const { containerId, code } = container.body;
  const figures = containerFigures(state.value, containerId);
  const props = { state: state.value, container, figures };
  return (
    <Frame
      place="containers"
      title={w.container(unbroken(code))}
      second={contentsTitle(state.value, containerId) || w.empty}
      aside={<StorageAside {...props} />}
      actions={
        <Buttons side>
          <Button look="primary" centred href={`#/containers/${containerId}/in`}>
            {w.putIn}
          </Button>
          <Button centred href={`#/containers/${containerId}/out`}>
            {w.takeOut}
          </Button>
          <Button look="plain" centred href={`#/containers/${containerId}/more`}>
            {w.more}
          </Button>
        </Buttons>
      }
    >
      <Part>
        <Drawing {...props} />
      </Part>
      {container.doubtfulSince !== null && <Notice mark="unknown">{w.doubtful}</Notice>}
      {figures.contents.unaccounted && <Notice mark="unknown">{w.unaccounted}</Notice>}
      <Never {...props} />
      {figures.load && (
        <Part rule>
          <LoadTable figures={figures} containerId={containerId} />
          <Volumes {...props} />
        </Part>
      )}
      <Residues {...props} />
      {figures.load && <BaseRows {...props} />}
      <Ledger {...props} />
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
