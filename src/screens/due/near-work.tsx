/** What stands beside the work, against the limit that the local rules have for it. */
import { standsNearWork } from '../../ledger/accumulation';
import { dues } from '../../ledger/due';
import { nearWork, nearWorkLimit } from '../../ledger/near-work';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { contentsTitle, heldText } from '../amounts';
import { FigureRow } from '../figure-row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { WorkingPage } from '../working';
import { DueRow, useAmountText } from './rows';
import { dueWords as w } from './words';

export function NearWorkScreen() {
  const { state, now, zone, sign } = useShell();
  const text = useAmountText();
  const limit = nearWorkLimit(state.value);
  const level = nearWork(state.value, now.value, zone)?.now?.volume;
  const excess = dues(state.value, now.value, zone).find(({ kind }) => kind === 'move-excess');
  const there = [...state.value.containers.values()].filter(
    (container) => container.goneSince === null && standsNearWork(state.value, container),
  );
  return (
    <Frame
      title={w.nearTitle}
      second={limit ? w.against(text(limit)) : w.nearNotEntered}
      ways={[{ label: words.back, href: '#/due' }]}
    >
      <Part rule width="edge">
        <Rows label={w.nearThere}>
          {excess && <DueRow due={excess} opens="count" />}
          {there.length > 0 && level && (
            <FigureRow title={w.inAll} figure={level} href="#/due/near-work/working" />
          )}
          {there.map((container) => (
            <Row
              key={container.body.containerId}
              title={unbroken(container.body.code)}
              second={
                container.doubtfulSince === null
                  ? contentsTitle(state.value, container.body.containerId)
                  : w.nearUnknown
              }
              figure={<span>{heldText(container.holds, sign.value)}</span>}
              href={`#/containers/${container.body.containerId}/change`}
            />
          ))}
          {there.length === 0 && <Row title={w.nearWorkEmpty} />}
          {!limit && <Row title={w.enter} href="#/record/rules/near-work-limit" />}
        </Rows>
      </Part>
      <Part rule>
        {there.length > 0 && <p>{w.nearMove}</p>}
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function NearWorkWorking({ at: { steps = '' } }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now, zone } = useShell();
  return (
    <WorkingPage
      root={nearWork(state.value, now.value, zone)?.now?.volume}
      steps={steps}
      here="due/near-work/working"
      subject={w.nearTitle}
      back="due/near-work"
    />
  );
}
