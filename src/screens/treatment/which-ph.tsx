/** At which pH least stays dissolved against the limits. For planning: it writes nothing. */
import { useMemo } from 'preact/hooks';
import type { WhichPh } from '../../chemistry/treatment/which-ph';
import { whichPhFor } from '../../ledger/before-treatment';
import { referenceIds, residuals } from '../../reference/residual-tables';
import { baseIds, bases } from '../../reference/tables';
import { Button } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Plot } from '../../ui/plot/plot';
import { Row, Rows } from '../../ui/row';
import { SelectField } from '../../ui/select-field';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { sourceText } from '../source-text';
import { words } from '../words';
import { emptyTreatment, TreatmentDraft, treatmentDraftName } from './draft';
import { LocalPh } from './local-ph';
import { Coming } from './pot-figure';
import { aimText, phText } from './pot-plot';
import { useLater } from './use-worked-out';
import { whichPhPlot } from './which-ph-plot';
import { notCountedTexts } from './which-ph-rows';
import { AtBest, Warnings, type WhichProps } from './which-ph-said';
import { type Pot, withPot } from './with-pot';
import { treatmentWords as w } from './words';

/** Something of it can be drawn. */
const isPredicted = ({ curve }: WhichPh): boolean => curve.metals.some((m) => !curve.unpredicted.has(m));

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
    <Notice mark="confirmed" second={limits.title}>
      {w.limitsLocal}
    </Notice>
  ) : (
    <Rows>
      <Row
        mark={<Mark kind="unknown" />}
        title={w.limitsNone}
        second={w.limitsReference(limits.title)}
        href="#/record/rules/discharge-limits"
      />
    </Rows>
  );

function Window({ which }: { readonly which: WhichPh }) {
  const { sign } = useShell();
  const { window } = which;
  if (!window) return <Notice mark="unknown">{w.whichNone}</Notice>;
  const [low, high] = [phText(window.low, sign.value), phText(window.high, sign.value)];
  return (
    <>
      <Part>
        <p>{w.windowIs(low, high, aimText(window.best, sign.value))}</p>
      </Part>
      {notCountedTexts(which, sign.value).map((text) => (
        <Notice key={text} mark="unknown">
          {text}
        </Notice>
      ))}
    </>
  );
}

type AimProps = WhichProps & { readonly form: Form<TreatmentDraft> };

/** Takes the pH of the window as the one that is wanted from now on. */
function Aim({ which: { window }, containerId, form }: AimProps) {
  const { sign, go } = useShell();
  if (!window) return null;
  const best = aimText(window.best, sign.value);
  const aim = (): void => {
    form.change({ target: { typed: best, unit: '1' } });
    go(`containers/${containerId}/treatment`);
  };
  return (
    <Button look="primary" onTap={aim}>
      {w.aimAt(best)}
    </Button>
  );
}

function WhichPhPage({ id, code }: Pot) {
  const { state } = useShell();
  const now = state.value;
  const form = useForm(treatmentDraftName(id), TreatmentDraft, emptyTreatment);
  const { base, reference } = form.value;
  const of = useMemo(() => ({ now, id, base, reference }), [now, id, base, reference]);
  const found = useLater(() => ({ which: whichPhFor(now, id, base, reference) }), of);
  const which = found?.which;
  return (
    <Frame
      title={w.whichTitle}
      second={w.whichOf(code, bases[base].name.toLowerCase())}
      ways={[{ label: words.back, href: `#/containers/${id}/treatment` }]}
      actions={which?.window ? <Aim which={which} form={form} containerId={id} /> : undefined}
    >
      {!found && <Coming />}
      {found && !which && <Notice mark="unknown">{w.modelFailed}</Notice>}
      {which && isPredicted(which) && <Drawn which={which} />}
      {which && <Window which={which} />}
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
        {which?.limits.of === 'reference' && (
          <SelectField
            label={w.reference}
            hint={`${w.referenceHint} ${sourceText(residuals.reference[reference])}.`}
            value={reference}
            options={referenceIds.map((value) => ({ value, label: residuals.reference[value].title }))}
            onChoose={(chosen) => form.change({ reference: chosen })}
          />
        )}
      </Part>
      {which && <Warnings which={which} containerId={id} />}
      <Part rule>
        <p>{w.whichHow}</p>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export const WhichPhScreen = withPot(WhichPhPage);
