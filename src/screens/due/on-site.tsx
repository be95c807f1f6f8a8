/** All that stands here now, container by container, and what of it has no mass. */
import { onSiteNow } from '../../ledger/quantities-now';
import { FigureValue } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { contentsTitle, shown, streamTitle } from '../amounts';
import { FigureRow } from '../figure-row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { WorkingPage } from '../working';
import { useAgainstText } from './due';
import { codeIn } from './rows';
import { dueWords as w } from './words';

export function OnSiteScreen() {
  const { state, sign } = useShell();
  const againstText = useAgainstText();
  const { total, parts, against, unweighed } = onSiteNow(state.value);
  return (
    <Frame title={w.onSiteTitle} second={w.onSiteSecond} ways={[{ label: words.back, href: '#/due' }]}>
      <Part rule width="edge">
        <Rows label={w.onSiteTitle}>
          <FigureRow
            title={w.inAll}
            second={againstText(against) + (unweighed.length > 0 ? ` ${w.atLeast(unweighed.length)}.` : '')}
            figure={total}
            href="#/due/on-site/working"
          />
          {parts.map(({ of, id, mass }) => (
            <Row
              key={id}
              title={of === 'container' ? codeIn({ state }, id) : streamTitle(state.value, id)}
              second={of === 'container' ? contentsTitle(state.value, id) : w.inNone}
              figure={
                mass ? <FigureValue {...shown(mass, sign.value)} /> : <span>{words.notDetermined}</span>
              }
              href={of === 'container' ? `#/containers/${id}` : `#/due/wastes/${id}`}
            />
          ))}
        </Rows>
      </Part>
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function OnSiteWorking({ at: { steps = '' } }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  return (
    <WorkingPage
      root={onSiteNow(state.value).total}
      steps={steps}
      here="due/on-site/working"
      subject={w.onSiteSecond}
      back="due/on-site"
    />
  );
}
