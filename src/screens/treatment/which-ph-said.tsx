/** What stays at the best pH against the limits, and what else is to be known of it. */
import type { WhichPh } from '../../chemistry/treatment/which-ph';
import { type Minded, minded, treatable } from '../../ledger/before-treatment';
import type { Metal } from '../../reference/tables';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { streamTitle } from '../amounts';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { workingOf } from './comes-of';
import { mindedText } from './minded-text';
import { aimText } from './pot-plot';
import { neverText, warningTexts, whichRows } from './which-ph-rows';
import { treatmentWords as w } from './words';

export type WhichProps = { readonly which: WhichPh; readonly containerId: string };

export function AtBest({ which, containerId }: WhichProps) {
  const { sign } = useShell();
  const rows = whichRows(which, sign.value);
  const best = (which.window ?? which.ofAll)?.best;
  if (best === undefined) return null;
  return (
    <>
      <Part rule title={w.atBest(aimText(best, sign.value))} width="edge">
        <Rows>
          {rows.map(({ key, title, second, figure, over, most }) => (
            <Row
              key={key}
              title={title}
              second={second}
              marked={over}
              figure={<FigureValue {...figure} />}
              {...(most ? { href: workingOf(containerId, `${key}-most`), equals: true } : {})}
            />
          ))}
        </Rows>
      </Part>
      <Part>
        <details>
          <summary>{w.lowerEnds}</summary>
          <Rows>
            {rows.map(
              ({ key, title, least }) =>
                least && (
                  <FigureRow
                    key={key}
                    title={title}
                    figure={least}
                    href={workingOf(containerId, `${key}-least`)}
                  />
                ),
            )}
          </Rows>
        </details>
      </Part>
    </>
  );
}

/** A metal that never comes under its limit is told of once, with that. */
const said: ReadonlyMap<Minded, Metal> = new Map([
  ['silver', 'Ag'],
  ['lead', 'Pb'],
  ['barium', 'Ba'],
]);

export function Warnings({ which, containerId }: WhichProps) {
  const { state, sign } = useShell();
  const load = treatable(state.value, containerId);
  const best = (which.window ?? which.ofAll)?.best;
  const open = which.curve.openIn.map((id) => streamTitle(state.value, id)).join('; ');
  return (
    <>
      {load &&
        minded(load, which.base)
          .filter((what) => said.has(what) && !which.neverUnder.some(({ metal }) => said.get(what) === metal))
          .map((what) => (
            <Notice key={what} mark="unknown">
              {mindedText(what, which, best, sign.value)}
            </Notice>
          ))}
      {which.neverUnder.map((never) => (
        <Notice key={never.metal} mark="wrong">
          {neverText(never, which, sign.value)}
        </Notice>
      ))}
      {open !== '' && (
        <Notice mark="unknown" second={w.missing(open)}>
          {w.moreMayStay}
        </Notice>
      )}
      <Part>
        {warningTexts(which, sign.value).map((text) => (
          <p key={text}>{text}</p>
        ))}
      </Part>
    </>
  );
}
