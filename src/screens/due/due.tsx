/** All last days in order, how much there is, and until when records are kept. */

import { dues, recordsKept } from '../../ledger/due';
import { nearWork, nearWorkLimit } from '../../ledger/near-work';
import { type MonthHeld, monthHeld, onSiteNow } from '../../ledger/quantities-now';
import type { ContainerState } from '../../ledger/state';
import { monthOf } from '../../rules/clocks/calendar-day';
import { Button } from '../../ui/button';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { shown } from '../amounts';
import { LongAgo } from '../find/door';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { DueRow, useAmountText, WithoutLimitRows } from './rows';
import { keptText, monthText, dueWords as w } from './words';

/** How an amount stands: against the workshop's own limit, or with what laws say beside it. */
export function useAgainstText(): (against: MonthHeld['against']) => string {
  const text = useAmountText();
  return ({ own, reference }) => {
    if (own) return `${w.against(text(own.limit))}. ${w.standing[own.standing]}.`;
    return reference ? `${w.reference(text(reference.limit))}.` : `${w.noReference}.`;
  };
}

function Amounts() {
  const { state, now, zone, sign } = useShell();
  const againstText = useAgainstText();
  const month = monthOf(now.value, zone);
  const held = monthHeld(state.value, month, zone);
  const site = onSiteNow(state.value);
  const unweighed = (n: number): string => (n === 0 ? '' : ` ${w.atLeast(n)}.`);
  return (
    <Rows label={w.amounts}>
      <Row
        title={w.month(monthText(month))}
        second={againstText(held.against) + unweighed(held.month.unweighed.length)}
        figure={<FigureValue {...shown(held.month.nonAcute, sign.value)} />}
        href={`#/due/months/${month}`}
      />
      <Row
        title={w.onSite}
        second={againstText(site.against) + unweighed(site.unweighed.length)}
        figure={<FigureValue {...shown(site.total, sign.value)} />}
        href="#/due/on-site"
      />
      <NearWorkRow />
      <Row title={w.all} second={w.allSecond} href="#/due/months" />
    </Rows>
  );
}

/** Only where the local rules know such a place. */
function NearWorkRow() {
  const { state, now, zone, sign } = useShell();
  const text = useAmountText();
  const limit = nearWorkLimit(state.value);
  const near = nearWork(state.value, now.value, zone);
  if (!limit || !near) return null;
  const empty = near.now === null || near.now.volume.value.isZero();
  return (
    <Row
      title={w.nearWork}
      second={[w.against(text(limit)), empty ? w.nearWorkEmpty : ''].filter(Boolean).join('. ')}
      figure={near.now && !empty ? <FigureValue {...shown(near.now.volume, sign.value)} /> : undefined}
      href="#/due/near-work"
    />
  );
}

function KeptRow({ container }: { readonly container: ContainerState }) {
  const { state, now, zone } = useShell();
  const { containerId, code } = container.body;
  const kept = recordsKept(state.value, container, now.value, zone);
  return (
    <Row
      title={w.keptOf(unbroken(code))}
      second={keptText(kept, now.value)}
      href={kept === null ? '#/record/rules/retention-years' : `#/containers/${containerId}`}
    />
  );
}

export function DueScreen() {
  const { state, now, zone } = useShell();
  const all = dues(state.value, now.value, zone);
  const gone = [...state.value.containers.values()].filter(({ goneSince }) => goneSince !== null);
  return (
    <Frame
      place="record"
      title={w.title}
      second={w.second}
      actions={
        <Button href="#/due/calendar" second={w.calendarSecond}>
          {w.calendar}
        </Button>
      }
    >
      <Part rule width="edge" title={w.dates}>
        <Rows label={w.dates}>
          {all.length === 0 && <Row title={w.none} />}
          {all.map((due) => (
            <DueRow key={due.id} due={due} opens="count" both />
          ))}
          <WithoutLimitRows />
        </Rows>
      </Part>
      <Part rule width="edge" title={w.amounts}>
        <Amounts />
      </Part>
      {(gone.length > 0 || state.value.earlier !== null) && (
        <Part rule width="edge" title={w.kept}>
          <Rows label={w.kept}>
            {gone.map((container) => (
              <KeptRow key={container.body.containerId} container={container} />
            ))}
          </Rows>
          <LongAgo is="container" />
        </Part>
      )}
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}
