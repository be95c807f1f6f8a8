/** What of the base chosen is needed, and what comes of it. */

import { minded, treatable } from '../../ledger/before-treatment';
import { containerFigures } from '../../ledger/container-figures';
import type { State } from '../../ledger/state';
import { formatWritten } from '../../quantities/format';
import { bases, metals } from '../../reference/tables';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { amountText, streamTitle } from '../amounts';
import { MassBar } from '../containers/mass-bar';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { type Chosen, comesRows } from './choice';
import { mindedText } from './minded-text';
import { phText } from './pot-plot';
import { runWords } from './run-words';
import { treatmentWords as w } from './words';

type Props = { readonly chosen: Chosen; readonly containerId: string };

export const workingOf = (containerId: string, key: string): string =>
  `#/containers/${containerId}/treatment/working/${key}`;

/** It ends before the pH wanted, or the model gave up. */
function NotReached({ chosen: { to, base } }: { readonly chosen: Chosen }) {
  const { sign } = useShell();
  if (!to || to.ok) return null;
  if (to.why.code !== 'stalls') return <Notice mark="unknown">{w.modelFailed}</Notice>;
  const { pH, aired }: { readonly pH: number; readonly aired?: number } = to.why;
  const airs = aired === undefined ? '' : `${w.airedEnd(phText(aired, sign.value))} `;
  return (
    <Notice mark="unknown" second={`${airs}${w.stallsSecond}`}>
      {w.stalls(bases[base].name, phText(pH, sign.value))}
    </Notice>
  );
}

/** What was counted is the least: some liquors do not tell. */
export function AtLeast({ openIn }: { readonly openIn: readonly string[] }) {
  const { state } = useShell();
  const names = openIn.map((streamId) => streamTitle(state.value, streamId)).join('; ');
  return (
    <Notice mark="unknown" second={w.missing(names)}>
      {w.moreNeeded}
    </Notice>
  );
}

function Amount({ chosen: { to, base }, containerId }: Props) {
  if (!to?.ok) return null;
  const { mass, openIn } = to.needed;
  return (
    <>
      {openIn.length > 0 ? (
        <AtLeast openIn={openIn} />
      ) : (
        <Part>
          <MassBar mass={mass} />
        </Part>
      )}
      <Rows>
        <FigureRow title={w.needed(bases[base].name)} figure={mass} href={workingOf(containerId, base)} />
      </Rows>
    </>
  );
}

/** What a sample took, beside it: the pH it was brought to is its own. */
function Bench({ chosen: { bench }, containerId }: Props) {
  const { sign } = useShell();
  const mass = bench?.estimate.fromTest;
  if (!mass) return null;
  const { endPh, sampleVolume } = bench.test.body;
  const second = w.byBenchSecond(formatWritten(endPh, sign.value), amountText(sampleVolume, sign.value));
  return (
    <>
      <Rows>
        <FigureRow title={w.byBench} second={second} figure={mass} href={workingOf(containerId, 'bench')} />
      </Rows>
      {bench.estimate.disagree && (
        <Notice mark="wrong" second={runWords.benchDisagreeSecond}>
          {runWords.benchDisagree}
        </Notice>
      )}
    </>
  );
}

export const Needed = (props: Props) => (
  <>
    <NotReached chosen={props.chosen} />
    <Amount {...props} />
    <Bench {...props} />
  </>
);

export function ComesOf({ chosen: { comes }, containerId }: Props) {
  if (!comes) return null;
  return (
    <Part rule title={comes.openIn.length > 0 ? w.comesOfAtLeast : w.comesOf} width="edge">
      <Rows>
        {comesRows(comes).map(([key, title, figure]) => (
          <FigureRow key={key} title={title} figure={figure} href={workingOf(containerId, key)} />
        ))}
      </Rows>
    </Part>
  );
}

/** What base alone does not do, and what was not counted. */
export function Minded({ chosen, containerId, state }: Props & { readonly state: State }) {
  const { sign } = useShell();
  const { to, base, which, pH } = chosen;
  const load = treatable(state, containerId);
  const leaves = to?.ok ? to.needed.leaves : [];
  return (
    <>
      {leaves.length > 0 && (
        <Notice mark="wrong">{w.leaves(leaves.map((m) => metals[m].name).join(', '))}</Notice>
      )}
      {load &&
        minded(load, base).map((what) => (
          <Notice key={what} mark="unknown">
            {mindedText(what, which, pH, sign.value)}
          </Notice>
        ))}
      {containerFigures(state, containerId).silent.length > 0 && <Notice mark="unknown">{w.silent}</Notice>}
    </>
  );
}
