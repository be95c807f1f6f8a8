/** At which pH least stays dissolved against the limits. For planning: it writes nothing. */
import { useMemo } from 'preact/hooks';
import type { WhichPh } from '../../chemistry/treatment/which-ph';
import { whichPhFor } from '../../ledger/before-treatment';
import { baseIds, bases } from '../../reference/tables';
import { Button, Buttons } from '../../ui/button';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Plot } from '../../ui/plot/plot';
import { Row, Rows } from '../../ui/row';
import { SelectField } from '../../ui/select-field';
import { streamTitle } from '../amounts';
import { FigureRow } from '../figure-row';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { workingOf } from './comes-of';
import { emptyTreatment, TreatmentDraft, treatmentDraftName } from './draft';
import { LocalPh } from './local-ph';
import { Coming } from './pot-figure';
import { aimText, phText } from './pot-plot';
import { useLater } from './use-worked-out';
import { whichPhPlot } from './which-ph-plot';
import { neverText, warningText, whichRows } from './which-ph-rows';
import { type Pot, withPot } from './with-pot';
import { treatmentWords as w } from './words';

type Props = { readonly which: WhichPh; readonly containerId: string };

function Drawn({ which }: { readonly which: WhichPh }) {
  const { sign } = useShell();
  const decimal = sign.value;
  const spec = useMemo(() => whichPhPlot(which, decimal), [which, decimal]);
  return (
    <Part>
      <Plot spec={spec} />
    </Part>
  );
}

/** Whose limits these are. */
const Limits = ({ which: { limits } }: { readonly which: WhichPh }) =>
  limits.of === 'local' ? (
    <Notice mark="confirmed">{w.limitsLocal(limits.title)}</Notice>
  ) : (
    <Notice mark="unknown" second={w.limitsReference(limits.title)}>
      {w.limitsNone}
    </Notice>
  );

/** The window, and the pH in it as the one that is aimed at from now on. */
function Window({ which, form, containerId }: Props & { readonly form: Form<TreatmentDraft> }) {
  const { sign, go } = useShell();
  const { window } = which;
  if (!window) return <Notice mark="unknown">{w.whichNone}</Notice>;
  const best = aimText(window.best, sign.value);
  const aim = (): void => {
    form.change({ target: { typed: best, unit: '1' } });
    go(`containers/${containerId}/treatment`);
  };
  return (
    <Part>
      <p>{w.windowIs(phText(window.low, sign.value), phText(window.high, sign.value), best)}</p>
      <Buttons>
        <Button onTap={aim}>{w.aimAt(best)}</Button>
      </Buttons>
    </Part>
  );
}

function AtBest({ which, containerId }: Props) {
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

function Warnings({ which }: { readonly which: WhichPh }) {
  const { state, sign } = useShell();
  const open = which.curve.openIn.map((id) => streamTitle(state.value, id)).join('; ');
  return (
    <>
      {which.neverUnder.map((never) => (
        <Notice key={never.metal} mark="wrong">
          {neverText(never, which.base, sign.value)}
        </Notice>
      ))}
      {open !== '' && (
        <Notice mark="unknown" second={w.missing(open)}>
          {w.moreMayStay}
        </Notice>
      )}
      <Part>
        {which.warnings.flatMap((warning) => {
          const text = warningText(warning, sign.value);
          return text === null ? [] : [<p key={text}>{text}</p>];
        })}
      </Part>
    </>
  );
}

function WhichPhPage({ id, code }: Pot) {
  const { state } = useShell();
  const now = state.value;
  const form = useForm(treatmentDraftName(id), TreatmentDraft, emptyTreatment);
  const { base } = form.value;
  const of = useMemo(() => ({ now, id, base }), [now, id, base]);
  const found = useLater(() => ({ which: whichPhFor(now, id, base) }), of);
  const which = found?.which;
  return (
    <Frame
      title={w.whichTitle}
      second={w.whichOf(code, bases[base].name.toLowerCase())}
      ways={[{ label: words.back, href: `#/containers/${id}/treatment` }]}
    >
      {!found && <Coming />}
      {found && !which && <Notice mark="unknown">{w.modelFailed}</Notice>}
      {which && <Drawn which={which} />}
      {which && <Window which={which} form={form} containerId={id} />}
      {which && <Limits which={which} />}
      <LocalPh pH={which?.window?.best} />
      {which && <AtBest which={which} containerId={id} />}
      <Part>
        <SelectField
          label={w.base}
          value={base}
          options={baseIds.map((value) => ({ value, label: bases[value].name }))}
          onChoose={(chosen) => form.change({ base: chosen })}
        />
      </Part>
      {which && <Warnings which={which} />}
      <Part rule>
        <p>{w.whichHow}</p>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export const WhichPhScreen = withPot(WhichPhPage);
